// Routes: patterns, dots, stretches that two of them share (engraving E).
#include <algorithm>
#include <cmath>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/drawing/path.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/made_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using drawing::Points;
using ::testing::Contains;
using testing::MadeFilm;
using testing::MadeRoute;
using ::testing::Not;

/// Height on the film of a route's own line above a place of a level leg: where its ink crosses that easting.
std::vector<double> linesAt(const drawing::Drawing& drawing, double x) {
    std::vector<double> heights;
    for (const testing::InkLine& line : testing::inkLines(drawing)) {
        if (line.width == 0.55 && std::min(line.from.x, line.to.x) <= x && std::max(line.from.x, line.to.x) >= x) {
            const double share = (x - line.from.x) / (line.to.x - line.from.x);
            heights.push_back(line.from.y + (line.to.y - line.from.y) * share);
        }
    }
    return heights;
}

/// The one height that holds between dashes too: asked at several places.
double lineNear(const drawing::Drawing& drawing, double x) {
    for (const double aside : {0.0, 1.0, -1.0, 2.0, -2.0}) {
        if (const auto heights = linesAt(drawing, x + aside); !heights.empty()) {
            return heights.front();
        }
    }
    return std::nan("");
}

std::vector<std::string> words(const drawing::Drawing& drawing) {
    std::vector<std::string> all;
    for (const drawing::Text& text : testing::texts(drawing)) {
        all.push_back(text.text);
    }
    return all;
}

TEST(Routes, EveryPointHasADotOfOneOnTheLine) {
    MadeFilm film;
    const Points vertices{{40, 80}, {80, 60}, {120, 90}};
    film.add(MadeRoute{.vertices = vertices, .stops = {0, 1, 2}, .name = "QUILL"});
    for (std::size_t n = 0; n < vertices.size(); ++n) {
        EXPECT_NEAR(testing::reach(film.drawn(n), vertices[n], {1, 0}, 0.51), 0.5, 1e-6);
        EXPECT_NEAR(testing::reach(film.drawn(n), vertices[n], {0, 1}, 0.51), 0.5, 1e-6);
    }
}

// What lies before the start point is an administrative move, whatever stands on it: legs are lettered from there on.
TEST(Routes, LegsBeginAtTheStartPointWhereverItStandsAmongTheStops) {
    Stage stage(MadeFilm::kWindow, drawing::Gauge(), PenMode::Colour);
    stage.add(Exhibit{.kind = "checkpoint", .points = {{30, 75}}, .number = "1"});
    stage.add(Exhibit{.kind = "start-point", .points = {{80, 75}}, .number = "1"});
    stage.add(Exhibit{.kind = "checkpoint", .points = {{180, 75}}, .number = "2"});
    stage.add(ExhibitRoute{.vertices = {{30, 75}, {80, 75}, {180, 75}}, .stops = {{0, 0}, {1, 1}, {2, 2}}});
    std::vector<double> figures;
    for (const EngravedItem& item : stage.film().items) {
        for (const Part& part : item.parts) {
            if (part.leg) {
                figures.push_back(part.box.middle.x);
            }
        }
    }
    ASSERT_EQ(figures.size(), 1U);
    EXPECT_GT(figures.front(), 80);
}

// A vehicle's way is told from an alternate without colour: a short stroke stands in each gap between its dashes.
TEST(Routes, AVehiclesWayHasAShortStrokeInEachGapAndSaysVeh) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .name = "GROAT", .use = plan::Use::Vehicle});
    std::vector<std::pair<double, double>> strokes;
    for (const testing::InkLine& line : testing::inkLines(film.drawn(0))) {
        if (line.width == 0.55 && line.from.y == line.to.y) {
            strokes.emplace_back(std::min(line.from.x, line.to.x), std::max(line.from.x, line.to.x));
        }
    }
    std::sort(strokes.begin(), strokes.end());
    ASSERT_GT(strokes.size(), 15U);
    EXPECT_EQ(strokes.size() % 2, 1U);
    for (std::size_t n = 1; n < strokes.size(); ++n) {
        EXPECT_GT(strokes[n].first, strokes[n - 1].second + 0.5);
        const double length = strokes[n].second - strokes[n].first;
        EXPECT_TRUE(n % 2 == 1 ? length < 0.7 : length > 4) << length;
    }
    EXPECT_THAT(words(film.drawn(0)), Contains("RTE GROAT  VEH"));
}

// A box never stands over its own route: where a leg leaves to the north it is set aside.
TEST(Routes, BoxStandsAsideWhereALegLeavesNorth) {
    MadeFilm north;
    north.add(MadeRoute{.vertices = {{100, 90}, {105, 40}}, .stops = {0}});
    EXPECT_GT(testing::inkLines(north.drawn(0)).size(), 0U);
    const drawing::Box box = drawing::extent(north.drawn(0));
    EXPECT_GT(box.width(), 8);  // dot, extension line and box beside it
    MadeFilm south;
    south.add(MadeRoute{.vertices = {{100, 90}, {105, 140}}, .stops = {0}});
    EXPECT_LT(drawing::extent(south.drawn(0)).width(), 7);
}

TEST(Routes, PrimaryIsSolidAndAlternateDashed) {
    MadeFilm primary;
    primary.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .stops = {}});
    EXPECT_EQ(std::get<drawing::Stroke>(primary.drawn().marks.front()).pieces.size(), 1U);
    MadeFilm alternate;
    alternate.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .stops = {}, .use = plan::Use::Alternate});
    const drawing::Drawing drawn = alternate.drawn();
    const auto& pieces = std::get<drawing::Stroke>(drawn.marks.front()).pieces;
    ASSERT_GT(pieces.size(), 2U);
    const double on = drawing::Path(pieces[0].points).length();
    EXPECT_NEAR(on / (pieces[1].points.front().x - pieces[0].points.back().x), 5.0 / 1.5, 1e-6);
    EXPECT_NEAR(on, 5, 0.5);
}

TEST(Routes, BeforeTheFirstPointIsAdministrativeAndDotted) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{30, 75}, {70, 75}, {140, 75}}, .stops = {1, 2}, .name = "QUILL"});
    const drawing::Drawing drawn = film.drawn();
    EXPECT_THAT(words(drawn), Contains("ADMIN"));
    const auto& dots = std::get<drawing::Stroke>(drawn.marks.front());
    EXPECT_EQ(dots.cap, drawing::Cap::Round);
    EXPECT_EQ(dots.width, 0.5);
    EXPECT_NEAR(dots.pieces[1].points.front().x - dots.pieces[0].points.front().x, 1.2, 0.05);
    EXPECT_NEAR(dots.pieces.back().points.front().x, 70, 1e-6);
}

TEST(Routes, SharedLegsRunBesideEachOtherWithThePrimaryOnTheLeft) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .stops = {}, .name = "QUILL"});
    film.add(MadeRoute{.vertices = {{40, 75}, {140, 75}, {150, 110}}, .stops = {}, .use = plan::Use::Alternate});
    EXPECT_NEAR(lineNear(film.drawn(0), 90), 75 - 0.6, 1e-6);
    EXPECT_NEAR(lineNear(film.drawn(1), 90), 75 + 0.6, 1e-6);
    // Both begin and end at the true points, by transitions 3.0 long.
    for (const std::size_t item : {0U, 1U}) {
        EXPECT_NEAR(lineNear(film.drawn(item), 40), 75, 0.3);
        EXPECT_NEAR(std::abs(lineNear(film.drawn(item), 44) - 75), 0.6, 1e-6);
    }
}

TEST(Routes, SharedInOppositeDirectionsEachKeepsToItsOwnLeft) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .stops = {}, .name = "QUILL"});
    film.add(MadeRoute{.vertices = {{140, 75}, {40, 75}}, .stops = {}, .use = plan::Use::Alternate});
    EXPECT_NEAR(lineNear(film.drawn(0), 90), 75 - 0.6, 1e-6);
    EXPECT_NEAR(lineNear(film.drawn(1), 90), 75 + 0.6, 1e-6);
}

TEST(Routes, TwoOfTheSameUseAreNeverDrawnOverEachOther) {
    for (const plan::Use use : {plan::Use::Primary, plan::Use::Alternate}) {
        MadeFilm film;
        film.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .stops = {}, .name = "QUILL", .use = use});
        film.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .stops = {}, .name = "MITTEN", .use = use});
        EXPECT_NEAR(lineNear(film.drawn(1), 90) - lineNear(film.drawn(0), 90), 1.2, 1e-6);
    }
}

TEST(Routes, OfThreeTheFirstPrimaryIsInTheMiddle) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .stops = {}, .use = plan::Use::Alternate});
    film.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .stops = {}, .name = "QUILL"});
    film.add(MadeRoute{.vertices = {{140, 75}, {40, 75}}, .stops = {}, .use = plan::Use::Alternate});
    EXPECT_NEAR(lineNear(film.drawn(1), 90), 75, 1e-6);
    std::vector<double> others{lineNear(film.drawn(0), 90), lineNear(film.drawn(2), 90)};
    std::sort(others.begin(), others.end());
    EXPECT_NEAR(others[0], 75 - 1.2, 1e-6);
    EXPECT_NEAR(others[1], 75 + 1.2, 1e-6);
}

TEST(Routes, SharedOverLessThanTenIsOneLine) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{40, 75}, {49, 75}, {90, 40}}, .stops = {}, .name = "QUILL"});
    film.add(MadeRoute{.vertices = {{40, 75}, {49, 75}, {90, 110}}, .stops = {}, .use = plan::Use::Alternate});
    EXPECT_NEAR(lineNear(film.drawn(0), 44.5), 75, 1e-6);
    EXPECT_NEAR(lineNear(film.drawn(1), 44.5), 75, 1e-6);
}

// E4: a leg shorter than its label and 4 has its number only, one under 4 has it by an extension line.
TEST(Routes, ShortLegsCarryTheirNumberOnly) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{40, 75}, {50, 75}, {53, 75}, {53, 75}, {120, 75}}, .stops = {0, 1, 2, 3, 4}});
    const auto labels = words(film.drawn());
    EXPECT_THAT(labels, Contains("1"));
    EXPECT_THAT(labels, Contains("2"));
    EXPECT_THAT(labels, Not(Contains("3")));  // of no length: in the card only
    EXPECT_THAT(labels, Contains(::testing::ContainsRegex("4  [0-9]{3}  1680 m")));
    const auto ink = testing::inkLines(film.drawn());
    EXPECT_TRUE(std::any_of(ink.begin(), ink.end(), [](const testing::InkLine& line) { return line.width == 0.25; }));
}

TEST(Routes, LabelsLieLeftOfTravelAndElseRight) {
    MadeFilm east;
    east.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .stops = {}});
    EXPECT_LT(testing::letterBoxes(east.drawn()).front().middle.y, 75);
    MadeFilm west;
    west.add(MadeRoute{.vertices = {{140, 75}, {40, 75}}, .stops = {}});
    EXPECT_GT(testing::letterBoxes(west.drawn()).front().middle.y, 75);
}

TEST(Routes, SharedLegIsLabelledOnThePrimaryOnly) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .stops = {0, 1}, .name = "QUILL"});
    film.add(MadeRoute{
        .vertices = {{40, 75}, {140, 75}, {150, 120}}, .stops = {}, .name = "MITTEN", .use = plan::Use::Alternate});
    const auto primary = words(film.drawn(2));
    EXPECT_THAT(primary, Contains(::testing::StartsWith("1  ")));
    for (const drawing::Mark& mark : film.drawn(3).marks) {
        if (const auto* head = std::get_if<drawing::Fill>(&mark)) {
            EXPECT_GT(head->rings.front().front().y, 76);  // its head is on the leg of its own
        }
    }
}

// On a leg that two routes share a name stands on its own route's side, and on a leg of its own rather than there.
TEST(Routes, ANameNeverStandsBesideTheLineOfTheOtherRoute) {
    MadeFilm shared;
    shared.add(MadeRoute{.vertices = {{20, 75}, {140, 75}}, .stops = {}, .name = "QUILL"});
    shared.add(MadeRoute{.vertices = {{20, 75}, {140, 75}, {170, 130}}, .name = "EGRET", .use = plan::Use::Alternate});
    const auto rows = [](const drawing::Drawing& drawn, const std::string& name) {
        std::vector<drawing::TurnedBox> boxes;
        const auto all = testing::texts(drawn);
        for (std::size_t n = 0; n < all.size(); ++n) {
            if (all[n].text.starts_with(name)) {
                boxes.push_back(testing::letterBoxes(drawn)[n]);
            }
        }
        return boxes;
    };
    const auto names = rows(shared.drawn(0), "RTE QUILL");
    ASSERT_EQ(names.size(), 1U);
    EXPECT_LT(names.front().middle.y, 75) << "left of travel, where the primary runs";
    const auto alternates = rows(shared.drawn(1), "RTE EGRET");
    ASSERT_EQ(alternates.size(), 1U);
    EXPECT_GT(alternates.front().middle.x, 140) << "on the leg that is its own";
    MadeFilm apart;
    apart.add(MadeRoute{.vertices = {{20, 75}, {120, 75}, {150, 40}}, .stops = {}, .name = "QUILL"});
    apart.add(MadeRoute{.vertices = {{20, 75}, {120, 75}, {150, 130}}, .name = "EGRET", .use = plan::Use::Alternate});
    ASSERT_EQ(rows(apart.drawn(0), "RTE QUILL").size(), 1U);
    EXPECT_GT(rows(apart.drawn(0), "RTE QUILL").front().middle.x, 120) << "the longer leg is shared";
}

}  // namespace
}  // namespace crosstick::symbols
