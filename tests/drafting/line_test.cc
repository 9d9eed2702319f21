#include "core/drafting/line.h"

#include <gtest/gtest.h>

#include "core/geodesy/plane_angles.h"
#include "tests/drafting/made_lines.h"

namespace crosstick::drafting {
namespace {

/// Every place of a line at steps of a thousandth of each piece: slow, and not clever.
Metres farthestFrom(const Line& places, const Line& line) {
    Metres worst;
    for (const geodesy::PlanePoint place : places) {
        worst = std::max(worst, nearestOn(line, Ends::Open, place)->away);
    }
    return worst;
}

TEST(Line, TheNearestPlaceIsNoFartherThanAnyOfItsPlaces) {
    MadeLines made(11);
    for (int round = 0; round < 50; ++round) {
        const Line line = made.line(6);
        const geodesy::PlanePoint from = made.place();
        const auto nearest = nearestOn(line, Ends::Closed, from);
        ASSERT_TRUE(nearest);
        Metres slow(1e9);
        for (int step = 0; step <= 6000; ++step) {
            slow = std::min(slow, geodesy::planeDistance(placeAt(line, step / 1000.0), from));
        }
        EXPECT_LE(nearest->away.value(), slow.value() + 1e-6);
        EXPECT_NEAR(nearest->away.value(), slow.value(), 2.0);
        EXPECT_NEAR(geodesy::planeDistance(placeAt(line, nearest->way), nearest->at).value(), 0, 1e-6);
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

}  // namespace
}  // namespace crosstick::drafting
