#include "core/geodesy/plane_line.h"

#include <gtest/gtest.h>

#include "core/geodesy/plane_angles.h"
#include "tests/drafting/made_lines.h"

namespace crosstick::geodesy {
namespace {

using drafting::at;
using drafting::MadeLines;

/// Every place of a line at steps of a thousandth of each piece: slow, and not clever.
Metres farthestFrom(const Line& places, const Line& line) {
    Metres worst;
    for (const PlanePoint place : places) {
        worst = std::max(worst, nearestOn(line, Ends::Open, place)->away);
    }
    return worst;
}

TEST(Line, TheNearestPlaceIsNoFartherThanAnyOfItsPlaces) {
    MadeLines made(11);
    for (int round = 0; round < 50; ++round) {
        const Line line = made.line(6);
        const PlanePoint from = made.place();
        const auto nearest = nearestOn(line, Ends::Closed, from);
        ASSERT_TRUE(nearest);
        Metres slow(1e9);
        for (int step = 0; step <= 6000; ++step) {
            slow = std::min(slow, planeDistance(placeAt(line, step / 1000.0), from));
        }
        EXPECT_LE(nearest->away.value(), slow.value() + 1e-6);
        EXPECT_NEAR(nearest->away.value(), slow.value(), 2.0);
        EXPECT_NEAR(planeDistance(placeAt(line, nearest->way), nearest->at).value(), 0, 1e-6);
    }
}

TEST(Line, FewerPointsLieWithinTheToleranceOfAllThatAreLeftOut) {
    MadeLines made(12);
    for (const double tolerance : {2.0, 10.0, 60.0}) {
        Line line{at(0, 0)};
        for (int n = 0; n < 400; ++n) {
            line.push_back(
                {line.back().easting + Metres(made.any(0, 8)), line.back().northing + Metres(made.any(-6, 6))});
        }
        const Line fewer = simplified(line, Metres(tolerance));
        EXPECT_LT(fewer.size(), line.size());
        EXPECT_EQ(fewer.front(), line.front());
        EXPECT_EQ(fewer.back(), line.back());
        EXPECT_LE(farthestFrom(line, fewer), Metres(tolerance));
    }
    EXPECT_EQ(simplified({at(0, 0), at(50, 0), at(100, 0)}, Metres(1)), (Line{at(0, 0), at(100, 0)}));
}

TEST(Line, AStretchHasItsEndsAndWhatLiesBetween) {
    const Line line{at(0, 0), at(100, 0), at(100, 100), at(200, 100)};
    EXPECT_EQ(lineOf(line, {0.5, 2.25}), (Line{at(50, 0), at(100, 0), at(100, 100), at(125, 100)}));
    EXPECT_EQ(lineOf(line, {0, 3}), line);
    EXPECT_EQ(lineOf(line, {1, 2}), (Line{at(100, 0), at(100, 100)}));
    EXPECT_EQ(lengthOf(line), Metres(300));
}

TEST(Line, PiecesCrossWhereBothSharesSay) {
    const auto met = crossing(at(0, 0), at(100, 100), at(0, 100), at(100, 0));
    ASSERT_TRUE(met);
    EXPECT_DOUBLE_EQ(met->ofFirst, 0.5);
    EXPECT_DOUBLE_EQ(met->ofSecond, 0.5);
    EXPECT_FALSE(crossing(at(0, 0), at(100, 0), at(0, 10), at(100, 10)));
    EXPECT_FALSE(crossing(at(0, 0), at(0, 0), at(0, 10), at(100, 10)));
}

// 3, 4, 5: the first piece is 500 m long, the second 700 m.
const Line& bent() {
    static const Line kBent{at(0, 0), at(300, 400), at(1000, 400)};
    return kBent;
}

TEST(Line, TheNearestPlaceIsTheFootOrACorner) {
    EXPECT_EQ(lengthOf(bent()), Metres(1200));
    const auto foot = nearestOn(bent(), Ends::Open, at(650, 520));
    EXPECT_NEAR(foot->way, 1.5, 1e-12);
    EXPECT_NEAR(foot->away.value(), 120, 1e-9);
    EXPECT_EQ(foot->at, at(650, 400));
    EXPECT_EQ(nearestOn(bent(), Ends::Open, at(-30, -40))->at, at(0, 0));
    EXPECT_EQ(nearestOn(bent(), Ends::Open, at(2000, 400))->at, at(1000, 400));
    EXPECT_FALSE(nearestOn({}, Ends::Open, at(0, 0)));
}

TEST(Line, APartKeepsTheCornersBetweenItsEndsAndTheLinesDirection) {
    EXPECT_EQ(partBetween(bent(), at(800, 450), at(150, 200)), (Line{at(150, 200), at(300, 400), at(800, 400)}));
    EXPECT_EQ(partBetween(bent(), at(300, 400), at(700, 300)), (Line{at(300, 400), at(700, 400)}));
    EXPECT_EQ(partBetween(bent(), at(-50, 0), at(9999, 0)), bent());
    EXPECT_TRUE(partBetween({}, at(0, 0), at(1, 1)).empty());
}

// The laws in the header, over lines drawn at random, with corners that fall on each other among them.
TEST(Line, LawOfPartsHolds) {
    MadeLines made(20270314);
    for (int round = 0; round < 300; ++round) {
        Line line;
        for (int n = 0; n < 2 + round % 9; ++n) {
            line.push_back(n % 4 == 3 ? line.back() : made.place());
        }
        const auto last = static_cast<double>(line.size() - 1);
        const PlanePoint a = placeAt(line, made.any(0, last));
        const PlanePoint b = placeAt(line, made.any(0, last));
        const Line part = partBetween(line, a, b);
        EXPECT_NEAR(farthestFrom({part.front(), part.back()}, line).value(), 0, 1e-6);
        EXPECT_NEAR(farthestFrom(part, line).value(), 0, 1e-6);
        EXPECT_NEAR((lengthOf(lineOf(line, {0, nearestOn(line, Ends::Open, a)->way})) +
                     lengthOf(lineOf(line, {nearestOn(line, Ends::Open, a)->way, last})))
                        .value(),
                    lengthOf(line).value(), 1e-6);
        EXPECT_NEAR(farthestApart(line, partBetween(line, line.front(), line.back())).value(), 0, 1e-9);
    }
}

// PL BODKIN's left end moves from 653700 5099900 to 653780 5100350 (the demo's amendment): 457.1 m.
TEST(Line, LinesLieApartByTheirFarthestCorner) {
    const auto place = [](double east, double north) { return PlanePoint{Metres(east), Metres(north)}; };
    EXPECT_NEAR(farthestApart({place(653700, 5099900)}, {place(653780, 5100350)}).value(), 457.1, 0.05);
    EXPECT_EQ(farthestApart({}, bent()), Metres(0));
    EXPECT_NEAR(farthestApart(bent(), {at(0, 0), at(300, 400)}).value(), 700, 1e-9);
}

}  // namespace
}  // namespace crosstick::geodesy
