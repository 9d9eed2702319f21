#include "core/terrain/inner_side.h"

#include <gtest/gtest.h>

namespace crosstick::terrain {
namespace {

using Line = std::vector<geodesy::PlanePoint>;

geodesy::PlanePoint at(double east, double north) {
    return {Metres(650000 + east), Metres(5100000 + north)};
}

/// Our ground lies between two boundaries that run north, 4 km apart; the eastern one has a bend.
plan::Plan bounded() {
    plan::Heading heading;
    heading.unit = "2/C UTB";
    plan::PlanBuilder builder{plan::Plan{}};
    builder.heading(heading);
    const auto put = [&](std::uint8_t id, Line points, const char* left, const char* right) {
        plan::Measure measure;
        measure.id.bytes[0] = id;
        measure.kind = "boundary";
        measure.points = std::move(points);
        measure.fields = {{"left_unit", left}, {"right_unit", right}};
        builder.put(std::move(measure));
    };
    put(1, {at(0, 0), at(0, 9000)}, "A", "2/C");
    put(2, {at(4000, 9000), at(4500, 4000), at(4000, 0)}, "3/C", "2/C");
    put(3, {at(2000, 0), at(2000, 9000)}, "D", "E");
    return std::move(builder).build();
}

TEST(InnerSide, TellsHowFarAPlaceIsInsideOurBoundaries) {
    const plan::Plan plan = bounded();
    EXPECT_EQ(insideBoundaries(plan, at(300, 5000)), Metres(300));
    EXPECT_EQ(insideBoundaries(plan, at(-200, 5000)), Metres(-200));
    EXPECT_GT(*insideBoundaries(plan, at(3900, 4000)), Metres(500));
    EXPECT_LT(*insideBoundaries(plan, at(4700, 4000)), Metres(0)) << "past the bend of the boundary";
    EXPECT_FALSE(insideBoundaries(plan::Plan{}, at(0, 0)));
}

TEST(InnerSide, IsTheOneThatLeadsAwayFromTheBoundaryInside) {
    const plan::Plan plan = bounded();
    const auto side = [&](double east, bool northward) {
        const Line line = northward ? Line{at(east, 2000), at(east, 6000)} : Line{at(east, 6000), at(east, 2000)};
        return innerSide(plan, *handrail(line, Metres(100), Side::Left), *handrail(line, Metres(100), Side::Right));
    };
    EXPECT_EQ(side(0, true), Side::Right);
    EXPECT_EQ(side(0, false), Side::Left);
    EXPECT_EQ(side(600, true), Side::Right);
    EXPECT_EQ(side(3500, true), Side::Left);
    EXPECT_FALSE(innerSide(plan::Plan{}, {at(0, 0), at(1, 1)}, {at(0, 0), at(1, 1)}));
}

// Nobody has said yet whose plan it is, but all boundaries name one unit in common.
TEST(InnerSide, WithoutAUnitInTheHeadingOursIsTheOneThatAllBoundariesName) {
    plan::PlanBuilder builder(bounded());
    plan::Heading heading;
    builder.heading(heading);
    const plan::Plan three = std::move(builder).build();
    EXPECT_FALSE(insideBoundaries(three, at(300, 5000))) << "the third boundary parts others";
    plan::PlanBuilder fewer(three);
    plan::ItemId third;
    third.bytes[0] = 3;
    fewer.removeMeasure(third);
    const plan::Plan two = std::move(fewer).build();
    EXPECT_EQ(insideBoundaries(two, at(300, 5000)), Metres(300));
    EXPECT_EQ(insideBoundaries(two, at(-200, 5000)), Metres(-200));
}

}  // namespace
}  // namespace crosstick::terrain
