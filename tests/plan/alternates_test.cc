#include "core/plan/alternates.h"

#include <gtest/gtest.h>

#include "core/plan/edits.h"

namespace crosstick::plan {
namespace {

Uuid id(std::uint8_t number) {
    return Uuid{{number}};
}

Measure point(std::uint8_t item, const char* kind) {
    Measure measure;
    measure.id = id(item);
    measure.kind = kind;
    measure.number = std::to_string(item);
    measure.points = {{Metres(item * 100.0), Metres(0)}};
    return measure;
}

Route way(std::uint8_t item, Use use, const std::vector<std::uint8_t>& points) {
    Route route;
    route.id = id(item);
    route.use = use;
    for (const std::uint8_t stop : points) {
        Stop one;
        one.vertex = route.vertices.size();
        one.measure = id(stop);
        route.stops.push_back(std::move(one));
        route.vertices.push_back({Metres(stop * 100.0), Metres(0)});
    }
    return route;
}

/// Start point 1, checkpoints 2 to 5, release points 8 and 9; the primary route runs 1, 2, 3, 8.
class Alternates : public ::testing::Test {
  protected:
    Plan plan = [] {
        PlanBuilder builder{Plan{}};
        builder.put(point(1, "start-point")).put(point(8, "release-point")).put(point(9, "release-point"));
        for (std::uint8_t item = 2; item <= 5; ++item) {
            builder.put(point(item, "checkpoint"));
        }
        return std::move(builder.put(way(50, Use::Primary, {1, 2, 3, 8}))).build();
    }();
};

TEST_F(Alternates, LeaveThePrimaryRouteAtTheLastPointThatBothPass) {
    const auto division = divisionOf(plan, way(51, Use::Alternate, {1, 2, 4, 8}));
    ASSERT_TRUE(division);
    EXPECT_EQ(division->at, id(2));
    EXPECT_EQ(division->primary->id, id(50));
    EXPECT_FALSE(divisionOf(plan, way(51, Use::Alternate, {4, 5, 8}))) << "it begins elsewhere";
    EXPECT_FALSE(divisionOf(plan, way(51, Use::Alternate, {1, 2, 3, 8}))) << "it never leaves";
    EXPECT_FALSE(divisionOf(plan, way(51, Use::Primary, {1, 2, 4, 8})));
}

TEST_F(Alternates, EndAtACheckpointRejoinOrShareTheReleasePoint) {
    const auto end = [&](const std::vector<std::uint8_t>& points) {
        return endOf(plan, way(51, Use::Alternate, points));
    };
    EXPECT_EQ(end({1, 2, 4}), AlternateEnd::AtCheckpoint);
    EXPECT_EQ(end({1, 4, 3}), AlternateEnd::Rejoins);
    EXPECT_EQ(end({1, 4, 8}), AlternateEnd::SharesReleasePoint);
    EXPECT_EQ(end({1, 4, 9}), AlternateEnd::OwnReleasePoint);
    Route open = way(51, Use::Alternate, {1, 4});
    open.vertices.push_back({Metres(900), Metres(0)});
    EXPECT_EQ(endOf(plan, open), AlternateEnd::Open);
    EXPECT_FALSE(endsWell(AlternateEnd::OwnReleasePoint));
    EXPECT_FALSE(endsWell(AlternateEnd::Open));
    EXPECT_TRUE(endsWell(AlternateEnd::Rejoins));
}

TEST_F(Alternates, AreDecidedOnlyWithACriterionAndSomebodyWhoDecides) {
    Route route = way(51, Use::Alternate, {1, 4, 8});
    EXPECT_FALSE(isDecided(route));
    route.decision = Decision{"the weir is guarded", "", ""};
    EXPECT_FALSE(isDecided(route));
    route.decision->decider = "Plt Ldr";
    EXPECT_TRUE(isDecided(route)) << "a code word is needed only where somebody has to be told by radio";
}

}  // namespace
}  // namespace crosstick::plan
