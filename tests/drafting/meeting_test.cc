#include "core/drafting/meeting.h"

#include <gtest/gtest.h>

#include "core/drafting/faults.h"
#include "tests/drafting/made_lines.h"

namespace crosstick::drafting {
namespace {

const Line kWall{at(1000, -500), at(1000, 500)};

TEST(Meeting, ALineIsDrawnOnToAnother) {
    const auto ended = endedOn({at(0, 0), at(400, 100)}, End::Last, kWall, Ends::Open);
    ASSERT_TRUE(ended);
    EXPECT_EQ(*ended, (Line{at(0, 0), at(1000, 250)}));
    const auto first = endedOn({at(400, 100), at(0, 0)}, End::First, kWall, Ends::Open);
    ASSERT_TRUE(first);
    EXPECT_EQ(*first, (Line{at(1000, 250), at(0, 0)}));
}

TEST(Meeting, ALineThatCrossesIsCutAtTheCrossingNearestToTheEnd) {
    const auto ended =
        endedOn({at(0, 0), at(1500, 0), at(1500, 100), at(500, 100), at(1800, 200)}, End::Last, kWall, Ends::Open);
    ASSERT_TRUE(ended);
    EXPECT_EQ(ended->size(), 5U);
    EXPECT_NEAR(ended->back().easting.value(), at(1000, 0).easting.value(), 1e-6);
}

TEST(Meeting, WhatLeadsPastTheOtherLineIsRefused) {
    EXPECT_EQ(endedOn({at(0, 0), at(-400, 0)}, End::Last, kWall, Ends::Open).error().fault, kNeverMeets);
    EXPECT_EQ(endedOn({at(0, 0), at(100, 100)}, End::Last, kWall, Ends::Open).error().fault, kNeverMeets);
    EXPECT_EQ(endedOn({at(0, 0)}, End::Last, kWall, Ends::Open).error().fault, kNoLine);
    EXPECT_EQ(endedOn({at(0, 0), at(0, 0)}, End::Last, kWall, Ends::Open).error().fault, kNoLine);
}

// The laws: on the other line, the rest as it was, done twice the same.
TEST(Meeting, TheNewEndLiesOnTheOtherAndTheRestStays) {
    MadeLines made(31);
    int met = 0;
    for (int round = 0; round < 300; ++round) {
        const Line line = made.line(4);
        const Line ring = made.ring(6);
        for (const End end : {End::First, End::Last}) {
            const auto ended = endedOn(line, end, ring, Ends::Closed);
            if (!ended) {
                continue;
            }
            ++met;
            const auto place = end == End::Last ? ended->back() : ended->front();
            EXPECT_LT(nearestOn(ring, Ends::Closed, place)->away, Metres(0.001));
            EXPECT_EQ(end == End::Last ? ended->front() : ended->back(), end == End::Last ? line.front() : line.back());
            const auto again = endedOn(*ended, end, ring, Ends::Closed);
            ASSERT_TRUE(again);
            EXPECT_EQ(*again, *ended);
        }
    }
    EXPECT_GT(met, 200);
}

}  // namespace
}  // namespace crosstick::drafting
