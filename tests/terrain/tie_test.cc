#include "core/terrain/tie.h"

#include <gtest/gtest.h>

namespace crosstick::terrain {
namespace {

geodesy::PlanePoint at(double east, double north) {
    return {Metres(650000 + east), Metres(5100000 + north)};
}

// By hand: the point lies from the thing, to 10 m, towards the nearest of sixteen winds of 22.5 degrees.
TEST(Tie, SaysHowFarAndWhereFromAThing) {
    EXPECT_EQ(tieWords("the road junction", at(0, 0), at(28, 28)), "40 m NE of the road junction");
    EXPECT_EQ(tieWords("chapel", at(0, 0), at(0, -1234)), "1230 m S of the chapel");
    EXPECT_EQ(tieWords("weir", at(0, 0), at(-100, 3)), "100 m W of the weir");
    EXPECT_EQ(tieWords("weir", at(0, 0), at(38, 92)), "100 m NNE of the weir");
    EXPECT_EQ(tieWords("weir", at(0, 0), at(-1, 200)), "200 m N of the weir");
}

TEST(Tie, WhatIsNearerThanFiveMetresIsAtTheThing) {
    EXPECT_EQ(tieWords("the ford", at(0, 0), at(3, 3)), "at the ford");
    EXPECT_EQ(tieWords("the ford", at(0, 0), at(0, 0)), "at the ford");
}

TEST(Tie, ANameHasNoArticle) {
    EXPECT_EQ(tieWords("Road B", {Metres(0), Metres(0)}, {Metres(180), Metres(0)}), "180 m E of Road B");
    EXPECT_EQ(tieWords("Crale Farm", {Metres(0), Metres(0)}, {Metres(1), Metres(0)}), "at Crale Farm");
}

TEST(Tie, StaysWithThePoint) {
    plan::Measure point;
    point.id = Uuid{{1}};
    point.kind = "checkpoint";
    point.points = {at(0, 0)};
    const plan::Plan plan = std::move(plan::PlanBuilder({}).put(point)).build();
    EXPECT_EQ(withTie(plan, point.id, "at the ford").measure(point.id)->tie, "at the ford");
    EXPECT_EQ(withTie(plan, Uuid{{2}}, "at the ford"), plan);
}

}  // namespace
}  // namespace crosstick::terrain
