// Units in a row on one extension line, and lines that end on edges (engraving A13).
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/drawing/path.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/random_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using testing::Made;
using testing::MadeFilm;
using testing::MadeRoute;

Made unit(Point at, const char* words) {
    return {.kind = "unit", .points = {at}, .fields = {{"unit", words}}};
}

Made follower(std::size_t leader, const char* words) {
    Made made = unit({150, 20}, words);
    made.standsWith = leader;
    return made;
}

const EngravedItem& itemOf(const EngravedFilm& film, std::size_t n) {
    return film.items.at(n);
}

drawing::Box symbolOf(const EngravedItem& item) {
    for (const Part& part : item.parts) {
        if (part.what == Part::What::Symbol) {
            return part.box.bounds();
        }
    }
    return {};
}

/// Ends of thin ink within reach of a place.
bool inkEndsAt(const drawing::Drawing& drawing, Point place) {
    for (const testing::InkLine& line : testing::inkLines(drawing)) {
        if (drawing::length(line.to - place) < 0.01 || drawing::length(line.from - place) < 0.01) {
            return true;
        }
    }
    return false;
}

TEST(Rows, StandTwoMillimetresApartOverOneLevelRail) {
    MadeFilm film;
    film.add(unit({100, 90}, "inf sqd")).add(follower(0, "mor sec")).add(follower(0, "eng sqd"));
    const EngravedFilm drawn = film.engraved();
    ASSERT_EQ(drawn.items.size(), 3U);
    for (std::size_t n = 0; n + 1 < 3; ++n) {
        EXPECT_NEAR(symbolOf(itemOf(drawn, n + 1)).left - symbolOf(itemOf(drawn, n)).right, 2.0, 1e-6);
    }
    // The rail is the one level line of the leader; all stems end on it, and the line leaves its middle for the spot.
    std::vector<testing::InkLine> level;
    for (const testing::InkLine& line : testing::inkLines(itemOf(drawn, 0).drawing)) {
        if (line.width < 0.3 && std::abs(line.from.y - line.to.y) < 1e-9 && std::abs(line.from.x - line.to.x) > 15) {
            level.push_back(line);
        }
    }
    ASSERT_EQ(level.size(), 1U);
    const double rail = level[0].from.y;
    for (std::size_t n = 0; n < 3; ++n) {
        const auto lines = testing::inkLines(itemOf(drawn, n).drawing);
        EXPECT_TRUE(std::any_of(lines.begin(), lines.end(),
                                [&](const testing::InkLine& line) {
                                    return line.width < 0.3 && std::abs(line.from.x - line.to.x) < 1e-9 &&
                                           std::abs(std::max(line.from.y, line.to.y) - rail) < 1e-9;
                                }))
            << "stem of " << n;
        EXPECT_TRUE(itemOf(drawn, n).isAside);
    }
    EXPECT_TRUE(inkEndsAt(itemOf(drawn, 0).drawing, (level[0].from + level[0].to) * 0.5));
    EXPECT_TRUE(inkEndsAt(itemOf(drawn, 0).drawing, {100, 90}));
}

TEST(Rows, NoUnitIsDrawnTwiceOrLeftOut) {
    MadeFilm film;
    film.add(unit({100, 90}, "1/2 inf sqd")).add(follower(0, "2/2 inf sqd"));
    const EngravedFilm drawn = film.engraved();
    for (const EngravedItem& item : drawn.items) {
        EXPECT_EQ(std::count_if(item.parts.begin(), item.parts.end(),
                                [](const Part& part) { return part.what == Part::What::Symbol; }),
                  1);
    }
    EXPECT_TRUE(film.remarks().empty());
}

TEST(Rows, WhereTheLeaderIsNotShownAUnitStandsByItself) {
    MadeFilm film;
    Made alone = unit({100, 90}, "inf sqd");
    film.add(Made{.kind = "checkpoint", .points = {{20, 20}}, .number = "1"});
    alone.standsWith = 0;  // no unit at all
    film.add(alone);
    const EngravedFilm drawn = film.engraved();
    EXPECT_FALSE(drawn.items[1].isAside);
    EXPECT_NEAR(symbolOf(drawn.items[1]).middle().x, 100, 1.0);
}

TEST(Rows, TheLineOfAUnitEndsOnTheEdgeOfItsAreaWithATick) {
    MadeFilm film;
    film.add(Made{.kind = "assembly-area", .points = {{80, 60}, {120, 60}, {120, 90}, {80, 90}}, .name = "TIN"});
    Made inside = unit({100, 75}, "inf plt");
    inside.pointsTo = 0;
    film.add(inside);
    const EngravedFilm drawn = film.engraved();
    const EngravedItem& item = drawn.items.at(1);
    EXPECT_TRUE(item.isAside);
    const drawing::Box symbol = symbolOf(item);
    EXPECT_FALSE(symbol.meets(drawing::Box{80, 60, 120, 90})) << "outside the area it points to";
    // No ink of the line inside the area: an end there would claim a place in it.
    for (const testing::InkLine& line : testing::inkLines(item.drawing)) {
        if (line.width < 0.3) {
            for (const Point p : {line.from, line.to}) {
                EXPECT_FALSE(drawing::Box({81, 61, 119, 89}).contains(p)) << p.x << ' ' << p.y;
            }
        }
    }
}

TEST(Rows, AHandsPlaceIsTheLeadersFrameWhereverTheRowStands) {
    MadeFilm film;
    Made leader = unit({40, 120}, "inf sqd");
    leader.symbolAt = Point{90, 60};
    film.add(leader).add(follower(0, "mor sec"));
    const EngravedFilm drawn = film.engraved();
    for (const EngravedItem& item : drawn.items) {
        ASSERT_TRUE(item.handle);
        EXPECT_NEAR(item.handle->x, 90, 1e-6);
        EXPECT_NEAR(item.handle->y, 60, 1e-6);
    }
}

// Below its spot a row's line leaves by an elbow round its end: it never runs through its own symbols.
TEST(Rows, NoExtensionLineRunsThroughTheRowItBelongsTo) {
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        drawing::testing::RandomLines random(seed);
        MadeFilm film;
        Made leader = unit({random.between(30, 170), random.between(30, 120)}, "inf sqd");
        if (seed % 2 == 0) {
            leader.symbolAt = Point{random.between(40, 140), random.between(20, 130)};
        }
        film.add(leader);
        for (int n = random.below(3); n >= 0; --n) {
            film.add(follower(0, n % 2 == 0 ? "2/B mor sec" : "inf plt (+)"));
        }
        const EngravedFilm drawn = film.engraved();
        const Point spot = leader.points[0];
        for (const testing::InkLine& line : testing::inkLines(drawn.items[0].drawing)) {
            if (line.width > 0.3 || drawing::length(line.to - spot) > 0.01) {
                continue;
            }
            for (const EngravedItem& item : drawn.items) {
                const drawing::Box box = symbolOf(item).grown(-0.5);
                // A hand may lay a row on its own spot: then the line has nowhere else to go.
                if (!box.grown(3).contains(spot)) {
                    EXPECT_FALSE(drawing::TurnedBox({box.middle(), box.width(), box.height(), Degrees(0)})
                                     .meets(line.from, line.to))
                        << "to " << spot.x << ' ' << spot.y;
                }
            }
        }
    }
}

plan::Column columnOf(const std::vector<plan::Element>& elements) {
    plan::Column column;
    column.id = Uuid{{200}};
    column.name = "Approach";
    for (const plan::Element& element : elements) {
        column.serials.push_back({element.id, element.name == "HQ fwd" ? "HQ" : "", std::nullopt});
    }
    return column;
}

std::vector<plan::Element> elements(std::size_t count) {
    std::vector<plan::Element> all;
    for (std::size_t n = 0; n < count; ++n) {
        const bool isHq = n == 1;
        all.push_back({Uuid{{static_cast<std::uint8_t>(n + 1)}}, isHq ? "hq 2/C inf plt" : "1/2/C inf sqd",
                       isHq ? "HQ fwd" : std::to_string(n + 1) + " Sqd", "", isHq ? 3 : 9});
    }
    return all;
}

std::vector<std::string> wordsOf(const drawing::Drawing& drawing) {
    std::vector<std::string> words;
    for (const drawing::Text& text : testing::texts(drawing)) {
        words.push_back(text.text);
    }
    return words;
}

bool says(const drawing::Drawing& drawing, const std::string& words) {
    const auto all = wordsOf(drawing);
    return std::find(all.begin(), all.end(), words) != all.end();
}

TEST(OrderOfMarch, SaysWhoFollowsWhomAtWhatInterval) {
    MadeFilm film;
    film.add(columnOf(elements(3)), elements(3));
    film.add(Made{.kind = "order-of-march", .points = {{10, 10}}, .fields = {{"direction", "42"}}});
    const drawing::Drawing drawn = film.drawn();
    for (const char* words : {"ORDER OF MARCH  APPROACH", "1", "2", "3", "1 SQD", "HQ FWD", "HQ", "20 m", "042 GRID"}) {
        EXPECT_TRUE(says(drawn, words)) << words;
    }
    // 21 people at 5.4 m and two intervals of 20 m.
    EXPECT_TRUE(says(drawn, "21 PEOPLE, 153 m, 5 m APART")) << ::testing::PrintToString(wordsOf(drawn));
    EXPECT_FALSE(says(drawn, "2/C")) << "what stands in the row is not said beside the symbol again";
}

TEST(OrderOfMarch, OverSevenRowsStandInTwoStacks) {
    MadeFilm film;
    film.add(columnOf(elements(9)), elements(9));
    film.add(Made{.kind = "order-of-march", .points = {{10, 10}}});
    double seventh = 0;
    double eighth = 0;
    double first = 0;
    for (const drawing::Text& text : testing::texts(film.drawn())) {
        first = text.text == "1 SQD" ? text.start.x : first;
        seventh = text.text == "7 SQD" ? text.start.x : seventh;
        eighth = text.text == "8 SQD" ? text.start.x : eighth;
    }
    EXPECT_NEAR(first, seventh, 1e-9);
    EXPECT_GT(eighth, seventh + 50);
}

TEST(OrderOfMarch, LiesInTheWindowWhereverItWasPut) {
    for (const Point corner : {Point{-50, -50}, Point{190, 140}, Point{60, 20}}) {
        MadeFilm film;
        film.add(columnOf(elements(4)), elements(4));
        film.add(Made{.kind = "order-of-march", .points = {corner}});
        EXPECT_TRUE(MadeFilm::kWindow.contains(drawing::extent(film.drawn())));
    }
}

TEST(OrderOfMarch, NothingIsWrittenUnderIt) {
    MadeFilm film;
    film.add(Made{.kind = "checkpoint", .points = {{40, 40}}, .number = "7"});
    film.add(columnOf(elements(4)), elements(4));
    film.add(Made{.kind = "order-of-march", .points = {{10, 10}}});
    const EngravedFilm drawn = film.engraved();
    EXPECT_FALSE(symbolOf(drawn.items[0]).meets(symbolOf(drawn.items[1])));
}

TEST(OrderOfMarch, WithoutItsColumnItSaysSo) {
    MadeFilm film;
    film.add(Made{.kind = "order-of-march", .points = {{10, 10}}, .fields = {{"column", "Return"}}});
    EXPECT_TRUE(says(film.drawn(), "NO COLUMN OF THIS NAME"));
    EXPECT_EQ(film.remarks(), std::vector<std::string>{"symbols/no-column"});
}

TEST(OrderOfMarch, TiedToARouteItsLineEndsOnTheRouteAndItsArrowSaysTheFirstLegsAzimuth) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{120, 140}, {120, 60}, {160, 30}}, .stops = {0, 2}, .name = "QUILL"});
    film.add(columnOf(elements(2)), elements(2));
    Made block{.kind = "order-of-march", .points = {{10, 10}}};
    block.pointsTo = 2;  // after its two checkpoints
    film.add(block);
    EXPECT_TRUE(says(film.drawn(), "000 GRID")) << ::testing::PrintToString(wordsOf(film.drawn()));
    const auto lines = testing::inkLines(film.drawn());
    EXPECT_TRUE(std::any_of(lines.begin(), lines.end(), [](const testing::InkLine& line) {
        return std::abs(line.to.x - 120) < 0.3 && line.from.x < 80;
    }));
}

}  // namespace
}  // namespace crosstick::symbols
