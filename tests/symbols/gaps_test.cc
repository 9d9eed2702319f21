// Clear spaces round letters (engraving A4, A10, A12), by geometry of the ink that was drawn.
#include <algorithm>
#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include "core/drawing/path.h"
#include "core/drawing/text_ruler.h"
#include "symbols/specimen/samples.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/made_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using drawing::Points;
using drawing::TurnedBox;
using drawing::Vector;
using testing::Made;
using testing::MadeFilm;
using testing::MadeRoute;

constexpr double kGap = 0.05;

std::vector<double> clearances(const drawing::Drawing& drawing) {
    std::vector<double> all;
    for (const TurnedBox& box : testing::letterBoxes(drawing)) {
        all.push_back(testing::clearance(box, drawing));
    }
    return all;
}

TEST(Gaps, BeyondBothEndsOfALineAreOne) {
    for (const double rise : {0.0, 20.0, -45.0}) {
        for (const plan::Standing standing : {plan::Standing::Present, plan::Standing::Planned}) {
            MadeFilm film;
            film.add(Made{
                .kind = "phase-line", .points = {{60, 75}, {140, 75 + rise}}, .name = "FLINT", .standing = standing});
            const auto gaps = clearances(film.drawn());
            ASSERT_EQ(gaps.size(), 2U);
            EXPECT_NEAR(gaps[0], 1.0, kGap) << rise;
            EXPECT_NEAR(gaps[1], 1.0, kGap) << rise;
        }
    }
}

// Where the line leaves the window a stub of 3.0 runs on to the edge, then the gap and the letters.
TEST(Gaps, InALineThatLeavesTheWindowAreOneAfterAStubOfThree) {
    for (const plan::Standing standing : {plan::Standing::Present, plan::Standing::Planned}) {
        MadeFilm film;
        film.add(Made{.kind = "phase-line", .points = {{-30, 75}, {230, 75}}, .name = "FLINT", .standing = standing});
        const drawing::Drawing drawn = film.drawn();
        const auto boxes = testing::letterBoxes(drawn);
        ASSERT_EQ(boxes.size(), 2U);
        for (const TurnedBox& box : boxes) {
            EXPECT_NEAR(testing::clearance(box, drawn), 1.0, kGap);
        }
        EXPECT_NEAR(boxes[0].middle.x - boxes[0].width / 2, 3 + 1, kGap);
        EXPECT_NEAR(boxes[1].middle.x + boxes[1].width / 2, 200 - 3 - 1, kGap);
        const auto ink = testing::inkLines(drawn);
        // A dashed stub ends on ink beside the letters; its far end may be a blank at the window's edge.
        const bool isSolid = standing == plan::Standing::Present;
        const bool hasStub = std::any_of(ink.begin(), ink.end(), [&](const testing::InkLine& line) {
            return (!isSolid || std::abs(line.from.x) < 1e-6) && std::abs(line.to.x - 3) < 1e-6;
        });
        EXPECT_TRUE(hasStub);
    }
}

TEST(Gaps, BesideASymbolAreNine) {
    for (const double symbol : {4.0, 6.0, 8.0}) {
        MadeFilm film;
        film.gauge({.symbol = symbol}).add(testing::sample("coordination-point", {100, 75}));
        const drawing::Drawing drawn = film.drawn();
        ASSERT_FALSE(testing::letterBoxes(drawn).empty());
        const TurnedBox box = testing::letterBoxes(drawn).front();
        const double edge = testing::reach(drawn, {100, 75}, {1, 0}, 10);
        EXPECT_NEAR(box.middle.x - box.width / 2 - 100 - edge, 0.9, kGap) << symbol;
    }
}

// B1: in the upper right quadrant of its cross, 1.9 from the middle, and 0.9 beside a larger square.
TEST(Gaps, OfATargetReferencePointStandInAQuadrantOfItsCross) {
    for (const double symbol : {4.0, 6.0, 8.0}) {
        MadeFilm film;
        film.gauge({.symbol = symbol}).add(testing::sample("target-reference-point", {100, 75}));
        const drawing::Drawing drawn = film.drawn();
        ASSERT_EQ(testing::letterBoxes(drawn).size(), 1U) << symbol;
        const TurnedBox box = testing::letterBoxes(drawn).front();
        EXPECT_NEAR(box.middle.x - box.width / 2 - 100, std::max(1.9, 0.2 * symbol + 0.9), 1e-6) << symbol;
        EXPECT_NEAR(box.middle.y - 75, -2.7, 1e-6) << symbol;
        EXPECT_GT(testing::clearance(box, drawn), 0.5) << symbol;
    }
}

// The second outline of an enemy's square stands where its letters would begin.
TEST(Gaps, OfAnEnemysTargetReferencePointAreNineFromItsSecondOutline) {
    Made made{.kind = "target-reference-point", .points = {{100, 75}}, .number = "3"};
    made.whose = plan::Whose::Enemy;
    MadeFilm film;
    film.onePen().add(made);
    const drawing::Drawing drawn = film.drawn();
    ASSERT_EQ(testing::letterBoxes(drawn).size(), 1U);
    EXPECT_GT(testing::clearance(testing::letterBoxes(drawn).front(), drawn), 0.5);
}

// A staff hangs beside the stem to the next in the order of march: the interval stays where that is, clear of the mark.
TEST(Gaps, OfAnOrderOfMarchAreTheSameBehindAHeadquarters) {
    plan::Force force = marching();
    Stage stage(MadeFilm::kWindow, drawing::Gauge(), PenMode::Colour);
    stage.add(force).add(Exhibit{.kind = "order-of-march", .points = {{20, 20}}});
    const drawing::Drawing drawn = stage.engraved();
    std::vector<double> heights;
    for (const drawing::Text& text : testing::texts(drawn)) {
        if (text.text == "20 m") {
            heights.push_back(text.start.y);
        }
    }
    ASSERT_EQ(heights.size(), 3U);
    EXPECT_NEAR(heights[1] - heights[0], 14, 1e-6);
    EXPECT_NEAR(heights[2] - heights[1], 14, 1e-6);
}

// Teeth reach off their line: letters keep clear of them, too.
TEST(Gaps, OfALegsFiguresAreClearOfTheTeethOfAnObstacle) {
    for (double y = 50; y < 100; y += 2.5) {
        MadeFilm film;
        film.add(Made{.kind = "obstacle-line", .points = {{70, y}, {130, y}}});
        film.add(MadeRoute{.vertices = {{100, 40}, {100, 110}}, .stops = {0, 1}});
        const drawing::Drawing teeth = film.drawn(0);
        for (const drawing::TurnedBox& box : testing::letterBoxes(film.drawn())) {
            EXPECT_GT(testing::clearance(box, teeth), 0) << y;
        }
    }
}

TEST(Gaps, BesideAnObservationPostAreNineFromItsFoot) {
    for (const double pen : {0.25, 0.4, 0.7}) {
        MadeFilm film;
        film.gauge({.pen = pen}).add(testing::sample("observation-post", {100, 75}));
        const drawing::Drawing drawn = film.drawn();
        const TurnedBox box = testing::letterBoxes(drawn).front();
        EXPECT_NEAR(box.middle.x - box.width / 2 - 100 - testing::reach(drawn, {100, 75}, {1, 0}, 10), 0.9, kGap)
            << pen;
    }
}

TEST(Gaps, BesideAnActionBoxAreNineForANameTooLongForIt) {
    MadeFilm film;
    film.add(Made{.kind = "rally-point", .points = {{100, 75}}, .name = "SORREL"});
    const drawing::Drawing drawn = film.drawn();
    for (const TurnedBox& box : testing::letterBoxes(drawn)) {
        if (box.height == 2.0) {
            EXPECT_NEAR(testing::clearance(box, drawn), 0.9, kGap);
        }
    }
}

// B2: the designations' nearest ink lies half the mark's height and 0.8 from the axis; the mark's gap is 1.0 each side.
TEST(Gaps, OfABoundaryRoundItsMark) {
    MadeFilm film;
    Made made = testing::sample("boundary", {100, 75});
    made.points = {{40, 75}, {160, 75}};
    film.add(made);
    const drawing::Drawing drawn = film.drawn();
    const double e = 0.4 * film.gauge().symbol;
    const auto boxes = testing::letterBoxes(drawn);
    ASSERT_EQ(boxes.size(), 2U);
    for (const TurnedBox& box : boxes) {
        EXPECT_NEAR(std::abs(box.middle.y - 75) - box.height / 2, e / 2 + 0.8, 1e-6);
        EXPECT_NEAR(box.middle.x, 100, 1e-6);
    }
    const double half = (2 * 0.87 + 0.53) * e / 2 + 1.0;  // three dots
    const auto ink = testing::inkLines(drawn);
    for (const double side : {-1.0, 1.0}) {
        const bool endsThere = std::any_of(ink.begin(), ink.end(), [&](const testing::InkLine& line) {
            const Point end = side < 0 ? line.to : line.from;
            return drawing::length(end - Point{100 + side * half, 75}) < 1e-6;
        });
        EXPECT_TRUE(endsThere);
    }
}

TEST(Gaps, BesideAMainAttackAreNineWhereverItBends) {
    for (const double rise : {0.0, 8.0, -8.0, 20.0, -20.0}) {
        MadeFilm film;
        film.add(Made{
            .kind = "direction-of-main-attack", .points = {{60, 75}, {100, 75}, {140, 75 + rise}}, .name = "FLINT"});
        const auto gaps = clearances(film.drawn());
        ASSERT_EQ(gaps.size(), 1U);
        EXPECT_GE(gaps[0], 0.9 - kGap) << rise;
        EXPECT_LE(gaps[0], 1.4) << rise;
    }
}

// On a line steeper than 60 degrees the designations are level, each wholly on its own side.
TEST(Gaps, OfASteepBoundaryLeaveLevelLettersOnTheirOwnSide) {
    MadeFilm film;
    Made made = testing::sample("boundary", {100, 75});
    made.points = {{96, 130}, {104, 20}};
    film.add(made);
    const drawing::Drawing drawn = film.drawn();
    const auto texts = testing::texts(drawn);
    const auto boxes = testing::letterBoxes(drawn);
    ASSERT_EQ(boxes.size(), 2U);
    for (std::size_t n = 0; n < 2; ++n) {
        EXPECT_EQ(texts[n].angle.value(), 0);
        EXPECT_EQ(texts[n].text == "2/C", boxes[n].middle.x < 100);  // travel is up: left is west
        EXPECT_GE(testing::clearance(boxes[n], drawn), 0.8 - kGap);
    }
}

TEST(Gaps, OfALegsLabelAreOneAndThreeTenthsFromTheAxis) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{30, 75}, {130, 75}}, .stops = {0, 1}, .name = "QUILL"});
    bool found = false;
    for (const TurnedBox& box : testing::letterBoxes(film.drawn())) {
        if (box.height == 1.8) {
            EXPECT_NEAR(75 - box.middle.y - 0.9, 1.3, kGap);
            EXPECT_NEAR(box.middle.x, 80, 1e-6);
            found = true;
        }
    }
    EXPECT_TRUE(found);
}

// A line shorter than two names and 8 carries one, at the end nearer the window's right side; under 6 it stands aside.
TEST(Gaps, OfShortLines) {
    const double name = drawing::textWidth("PL FLINT", 2.0);
    MadeFilm two;
    two.add(Made{.kind = "phase-line", .points = {{80, 75}, {80 + 2 * name + 8.1, 75}}, .name = "FLINT"});
    EXPECT_EQ(testing::letterBoxes(two.drawn()).size(), 2U);
    MadeFilm one;
    one.add(Made{.kind = "phase-line", .points = {{80, 75}, {80 + 2 * name + 7.9, 75}}, .name = "FLINT"});
    ASSERT_EQ(testing::letterBoxes(one.drawn()).size(), 1U);
    EXPECT_GT(testing::letterBoxes(one.drawn()).front().middle.x, 80 + 2 * name + 7.9);
    MadeFilm aside;
    aside.add(Made{.kind = "phase-line", .points = {{80, 75}, {85, 75}}, .name = "FLINT"});
    const auto ink = testing::inkLines(aside.drawn());
    EXPECT_TRUE(std::any_of(ink.begin(), ink.end(), [](const testing::InkLine& line) { return line.width < 0.3; }));
}

}  // namespace
}  // namespace crosstick::symbols
