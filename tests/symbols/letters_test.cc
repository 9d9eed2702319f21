// What holds for all letters of a film, whatever is drawn on it (engraving A2 to A4, A14).
#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/drawing/path.h"
#include "core/measures/catalogue.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/random_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using drawing::TurnedBox;
using testing::Made;
using testing::MadeFilm;

constexpr std::uint64_t kFilms = 60;

TEST(Letters, AreNeverUpsideDownNorSmallerThanTheLeast) {
    for (std::uint64_t seed = 1; seed <= kFilms; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        for (const drawing::Text& text : testing::texts(testing::randomFilm(seed, 25).engraved().all())) {
            EXPECT_GT(text.angle.value(), -90) << text.text;
            EXPECT_LE(text.angle.value(), 90) << text.text;
            EXPECT_GE(text.capHeight, 1.8) << text.text;
            EXPECT_NE(text.text, "");
        }
    }
}

TEST(Letters, StandTwoMillimetresInsideTheWindow) {
    const drawing::Box most = MadeFilm::kWindow.grown(-2.0 + 1e-6);
    for (std::uint64_t seed = 1; seed <= kFilms; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const drawing::Drawing all = testing::randomFilm(seed, 25).engraved().all();
        const auto texts = testing::texts(all);
        const auto boxes = testing::letterBoxes(all);
        for (std::size_t n = 0; n < boxes.size(); ++n) {
            EXPECT_TRUE(boxes[n].inside(most)) << texts[n].text;
        }
    }
}

TEST(Letters, OfOneLabelNeverOverlapThoseOfAnother) {
    for (std::uint64_t seed = 1; seed <= kFilms; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const drawing::Drawing all = testing::randomFilm(seed, 40).engraved().all();
        const auto texts = testing::texts(all);
        const auto boxes = testing::letterBoxes(all);
        for (std::size_t a = 0; a < boxes.size(); ++a) {
            for (std::size_t b = a + 1; b < boxes.size(); ++b) {
                EXPECT_FALSE(boxes[a].meets(boxes[b])) << texts[a].text << " and " << texts[b].text;
            }
        }
    }
}

/// Middles of what an item draws as a closed symbol: action boxes, circles, triangles, squares.
std::vector<drawing::Polyline> symbolsOf(const drawing::Drawing& drawing) {
    std::vector<drawing::Polyline> closed;
    for (const drawing::Mark& mark : drawing.marks) {
        if (const auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
            for (const drawing::Polyline& piece : stroke->pieces) {
                if (piece.closed) {
                    closed.push_back(piece);
                }
            }
        }
    }
    return closed;
}

bool isPoint(const std::string& kind) {
    const measures::Entry* entry = measures::find(kind);
    return entry != nullptr && entry->shape == measures::Shape::Point;
}

/// Do letters of one drawing cross a closed line of another?
bool standsOn(const drawing::Drawing& letters, const drawing::Drawing& symbol) {
    for (const drawing::Polyline& ring : symbolsOf(symbol)) {
        for (const TurnedBox& box : testing::letterBoxes(letters)) {
            for (std::size_t n = 0; n < ring.points.size(); ++n) {
                if (box.meets(ring.points[n], ring.points[(n + 1) % ring.points.size()])) {
                    return true;
                }
            }
        }
    }
    return false;
}

TEST(Letters, NeverStandOnASymbolOfAnother) {
    for (std::uint64_t seed = 1; seed <= kFilms; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        drawing::testing::RandomLines random(seed);
        MadeFilm film;
        std::map<plan::ItemId, std::string> kindOf;
        for (int n = 0; n < 30; ++n) {
            const auto all = measures::catalogue();
            const auto kind = all[static_cast<std::size_t>(random.below(static_cast<int>(all.size())))].kind;
            Made made = testing::randomMeasure(random, kind);
            made.standing = plan::Standing::Present;  // dashes are no rings
            film.add(made);
            kindOf[film.item()] = made.kind;
        }
        const auto items = film.engraved().items;
        for (const EngravedItem& one : items) {
            const std::string& kind = kindOf.at(one.item);
            for (const EngravedItem& other : items) {
                if (one.item != other.item && isPoint(kind)) {
                    EXPECT_FALSE(standsOn(other.drawing, one.drawing)) << kind << " and " << kindOf.at(other.item);
                }
            }
        }
    }
}

// A4: letters beside a line stand clear of its ink, teeth, half circles and ticks included.
TEST(Letters, StandClearOfTheirOwnInk) {
    for (const measures::Entry& entry : measures::catalogue()) {
        MadeFilm film;
        film.add(testing::sample(entry.kind, {100, 75}));
        const drawing::Drawing drawn = film.drawn();
        for (const TurnedBox& box : testing::letterBoxes(drawn)) {
            for (const testing::InkLine& line : testing::inkLines(drawn)) {
                EXPECT_FALSE(box.grown(-0.3).meets(line.from, line.to)) << entry.kind;
            }
        }
    }
}

TEST(Letters, AreTheSameWhenAFilmIsEngravedAgain) {
    const MadeFilm film = testing::randomFilm(3, 40);
    EXPECT_EQ(film.engraved().all(), film.engraved().all());
}

/// Ink of the thin pen in one drawing that runs through letters of another.
bool runsThrough(const drawing::Drawing& lines, const drawing::Drawing& letters) {
    for (const testing::InkLine& line : testing::inkLines(lines)) {
        for (const TurnedBox& box : testing::letterBoxes(letters)) {
            if (line.width == 0.25 && box.meets(line.from, line.to)) {
                return true;
            }
        }
    }
    return false;
}

// A13: an extension line may cross lines, never letters. The box that was set aside by hand stands in the way of the
// checkpoint's first choice, whichever of them comes first on the film.
TEST(Letters, AreNotCrossedByExtensionLines) {
    const Made near{.kind = "checkpoint", .points = {{100, 75}}, .number = "1"};
    const Made far{.kind = "checkpoint", .points = {{100.5, 75}}, .number = "2"};
    const Made byHand{.kind = "rally-point", .points = {{130, 90}}, .number = "3", .symbolAt = Point{106, 80.2}};
    for (const auto& order : {std::array{near, far, byHand}, std::array{byHand, far, near}}) {
        MadeFilm film;
        for (const Made& made : order) {
            film.add(made);
        }
        for (std::size_t a = 0; a < 3; ++a) {
            for (std::size_t b = 0; b < 3; ++b) {
                EXPECT_FALSE(a != b && runsThrough(film.drawn(a), film.drawn(b))) << a << ' ' << b;
            }
        }
    }
}

// Words begin at their spot; where that is taken they move a row, and in the last resort they stand aside.
TEST(Letters, OfFreeTextAreLeftOutOnlyWhereThereIsNoRoomAtAll) {
    MadeFilm film;
    for (int n = 0; n < 12; ++n) {
        film.add(Made{.kind = "text", .points = {{100, 75}}, .name = "3 SQD BLOCKS ROAD B"});
    }
    EXPECT_EQ(testing::texts(film.engraved().all()).size(), 12U);
    EXPECT_TRUE(film.remarks().empty());
}

// Words whose spot lies on a steep line stand beside it, near and without an extension line.
TEST(Letters, OfFreeTextStandClearOfALineThatRunsThroughTheirSpot) {
    const Point spot{100, 75};
    for (int degrees = -60; degrees <= 60; degrees += 3) {
        const double turn = degrees * std::numbers::pi / 180;
        const drawing::Vector up{std::sin(turn), -std::cos(turn)};
        MadeFilm film;
        film.add(Made{.kind = "obstacle-line", .points = {spot - up * 40, spot + up * 40}});
        film.add(Made{.kind = "text", .points = {spot}, .name = "3 SQD BLOCKS ROAD B"});
        const auto boxes = testing::letterBoxes(film.drawn(1));
        ASSERT_EQ(boxes.size(), 1U) << degrees;
        EXPECT_FALSE(boxes.front().grown(0.3).meets(spot - up * 40, spot + up * 40)) << degrees;
        EXPECT_TRUE(testing::inkLines(film.drawn(1)).empty()) << degrees;
        EXPECT_LT(std::abs(boxes.front().middle.x - spot.x), boxes.front().width / 2 + 3) << degrees;
    }
}

// A name that says its abbreviation itself is not given it twice.
TEST(Letters, SayAnAbbreviationOnce) {
    for (const auto& [kind, name] : {std::pair{"phase-line", "PL FLINT"}, std::pair{"objective", "OBJ FLINT"},
                                     std::pair{"assembly-area", "AA FLINT"}, std::pair{"line-of-departure", "LD FLINT"},
                                     std::pair{"line-of-departure", "PL FLINT"}}) {
        MadeFilm film;
        Made made = testing::sample(kind, {100, 75});
        made.name = name;
        film.add(made);
        std::string all;
        for (const drawing::Text& text : testing::texts(film.drawn())) {
            all += text.text + ' ';
        }
        const std::string abbreviation = std::string(name).substr(0, std::string(name).find(' '));
        EXPECT_EQ(all.find(abbreviation + ' ' + abbreviation), std::string::npos) << all;
        EXPECT_NE(all.find("FLINT"), std::string::npos) << all;
    }
}

// What the remark about a name without room asks for: "Place the name by hand."
TEST(Letters, PlacedByHandKeepTheirPlace) {
    for (const char* kind :
         {"phase-line", "line-of-departure", "assembly-area", "coordination-point", "observation-post",
          "target-reference-point", "support-by-fire", "direction-of-main-attack", "text"}) {
        Made made = testing::sample(kind, {100, 75});
        made.labelAt = Point{60, 40};
        MadeFilm film;
        film.add(made);
        const auto rows = testing::letterBoxes(film.drawn());
        Point middle;
        for (const TurnedBox& row : rows) {
            middle = middle + row.middle * (1.0 / static_cast<double>(rows.size()));
        }
        EXPECT_NEAR(middle.x, 60, 1e-6) << kind;
        EXPECT_NEAR(middle.y, 40, 1e-6) << kind;
    }
}

TEST(Letters, PlacedByHandOutsideMoveIntoTheWindow) {
    Made made = testing::sample("assembly-area", {100, 75});
    made.labelAt = Point{230, -40};
    MadeFilm film;
    film.add(made);
    for (const TurnedBox& row : testing::letterBoxes(film.drawn())) {
        EXPECT_TRUE(row.inside(MadeFilm::kWindow.grown(-2.0 + 1e-6)));
    }
}

TEST(Letters, OfALineThatIsLetteredByHandBreakItUnderThem) {
    MadeFilm film;
    film.add(Made{.kind = "phase-line", .points = {{30, 75}, {170, 75}}, .name = "FLINT", .labelAt = Point{100, 75}});
    const drawing::Drawing drawn = film.drawn();
    ASSERT_EQ(testing::letterBoxes(drawn).size(), 1U);
    EXPECT_NEAR(testing::clearance(testing::letterBoxes(drawn).front(), drawn), 1.0, 0.05);
}

// A boundary's mark stays on its line: where that is nearest to the hand, and only there.
TEST(Letters, OfABoundaryPlacedByHandStandOnceWhereTheLineIsNearest) {
    Made made{.kind = "boundary",
              .points = {{5, 75}, {195, 75}},
              .fields = {{"left_unit", "1/2"}, {"right_unit", "2/2"}, {"left_echelon", "sqd"}},
              .labelAt = Point{60, 90}};
    MadeFilm film;
    film.add(made);
    const auto rows = testing::letterBoxes(film.drawn());
    ASSERT_EQ(rows.size(), 2U);
    for (const TurnedBox& row : rows) {
        EXPECT_NEAR(row.middle.x, 60, 0.3);
    }
    made.labelAt = Point{400, 75};
    MadeFilm beyond;
    beyond.add(made);
    for (const TurnedBox& row : testing::letterBoxes(beyond.drawn())) {
        EXPECT_TRUE(row.inside(MadeFilm::kWindow));
    }
}

}  // namespace
}  // namespace crosstick::symbols
