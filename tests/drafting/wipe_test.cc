#include "core/drafting/wipe.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "tests/drafting/made_lines.h"

namespace crosstick::drafting {
namespace {

TEST(Wipe, AStretchLeavesTheTwoEnds) {
    const Line line{at(0, 0), at(100, 0), at(200, 0)};
    EXPECT_EQ(restOf(line, {0.5, 1.5}), (std::vector<Stretch>{{0, 0.5}, {1.5, 2}}));
    EXPECT_EQ(restOf(line, {1.5, 0.5}), restOf(line, {0.5, 1.5}));
    EXPECT_EQ(restOf(line, {0, 1}), (std::vector<Stretch>{{1, 2}}));
    EXPECT_TRUE(restOf(line, {0, 2}).empty());
}

// The three laws of the declaration; what lies inside is found by wiping with a ring that has the region as its hole.
TEST(Wipe, WhatIsLeftOfALineIsAllThatLiesOutside) {
    MadeLines made(21);
    for (int round = 0; round < 200; ++round) {
        const Line line = made.line(7);
        const Line region = made.ring(9);
        Metres outside;
        for (const Stretch part : stretchesOutside(line, region)) {
            const Line rest = lineOf(line, part);
            outside += lengthOf(rest);
            for (double share = 0.001; share < 1; share += 0.0473) {
                EXPECT_FALSE(isInside(placeAt(line, part.from + (part.to - part.from) * share), region));
            }
        }
        Metres inside;  // by many small steps
        constexpr int kSteps = 60000;
        for (int step = 0; step < kSteps; ++step) {
            const double way = (step + 0.5) * 6 / kSteps;
            const auto piece = static_cast<std::size_t>(way);
            if (isInside(placeAt(line, way), region)) {
                inside += geodesy::lengthOf({line[piece], line[piece + 1]}) * (6.0 / kSteps);
            }
        }
        EXPECT_NEAR((outside + inside).value(), lengthOf(line).value(), 5);
    }
}

TEST(Wipe, ALineThatTheRegionDoesNotMeetStaysWhole) {
    const Line region{at(0, 0), at(100, 0), at(100, 100), at(0, 100)};
    EXPECT_EQ(stretchesOutside({at(0, 200), at(100, 150), at(300, 0)}, region), (std::vector<Stretch>{{0, 2}}));
    EXPECT_TRUE(stretchesOutside({at(10, 10), at(50, 90)}, region).empty());
}

TEST(Wipe, AnAreaKeepsWhatLiesOutsideAndNothingElse) {
    MadeLines made(22);
    int several = 0;
    for (int round = 0; round < 100; ++round) {
        const Line ring = made.ring(8);
        const Line region = made.ring(7);
        const std::vector<Line> rest = ringsOutside(ring, region);
        several += rest.size() > 1 ? 1 : 0;
        for (int n = 0; n < 200; ++n) {
            const geodesy::PlanePoint place = made.place();
            const auto holds =
                std::count_if(rest.begin(), rest.end(), [&](const Line& one) { return isInside(place, one); });
            EXPECT_EQ(holds == 1, isInside(place, ring) && !isInside(place, region)) << round;
        }
    }
    EXPECT_GT(several, 0);
}

TEST(Wipe, ARegionInsideAnAreaWipesNothingAndOneRoundItAll) {
    const Line area{at(0, 0), at(300, 0), at(300, 300), at(0, 300)};
    const Line small{at(100, 100), at(200, 100), at(200, 200)};
    EXPECT_EQ(ringsOutside(area, small), (std::vector<Line>{area}));
    EXPECT_TRUE(ringsOutside(small, area).empty());
}

TEST(Wipe, ARegionThatCrossesItselfIsTakenAsItEncloses) {
    const Line bow{at(-50, -50), at(350, 350), at(350, -50), at(-50, 350)};
    const Line area{at(0, 0), at(300, 0), at(300, 300), at(0, 300)};
    EXPECT_EQ(ringsOutside(area, bow).size(), 2U);
}

}  // namespace
}  // namespace crosstick::drafting
