#include "ui/tools/contour_tool.h"

#include <gtest/gtest.h>

#include "core/plan/route_edits.h"

namespace crosstick::tools {
namespace {

geodesy::PlanePoint at(double east, double north) {
    return {Metres(655000 + east), Metres(5100000 + north)};
}

class ContourHand : public ::testing::Test {
  protected:
    plan::Plan plan_;
    plan::ItemId route_{{7}};
    std::vector<geodesy::PlanePoint> asked_;
    ContourTool tool_{route_, [this](geodesy::PlanePoint place) { asked_.push_back(place); }};

    void SetUp() override {
        plan::Route route;
        route.id = route_;
        route.vertices = {at(0, 0), at(1000, 0)};
        plan_ = std::move(plan::PlanBuilder(plan::Plan{}).put(route)).build();
    }
    Reply take(Event::Kind kind, geodesy::PlanePoint place = at(0, 0)) {
        return tool_.take({kind, place}, Ground{plan_, {}, {}, {}, Metres(20), [] { return Uuid{}; }});
    }
};

TEST_F(ContourHand, AsksForTheHeightAtThePlaceOfTheRouteNearestToTheClick) {
    EXPECT_FALSE(take(Event::Kind::Press, at(300, 40)).done);
    ASSERT_EQ(asked_.size(), 1U);
    EXPECT_EQ(asked_[0], at(300, 0));
    EXPECT_EQ(tool_.wet().line, plan::Points{at(300, 0)});
}

TEST_F(ContourHand, ADoubleClickIsOnePlace) {
    (void)take(Event::Kind::Press, at(300, 0));
    (void)take(Event::Kind::Release, at(300, 0));
    const Reply reply = take(Event::Kind::Again, at(300, 0));
    EXPECT_EQ(asked_.size(), 1U);
    EXPECT_FALSE(reply.commit);
    EXPECT_FALSE(reply.done);
}

TEST_F(ContourHand, TakesTheLastContourBackAndShowsThoseThatWereRead) {
    plan_ = plan::withContour(plan_, route_, {at(100, 0), Metres(40)});
    plan_ = plan::withContour(plan_, route_, {at(500, 0), Metres(50)});
    (void)take(Event::Kind::Move, at(700, 5));
    EXPECT_EQ(tool_.wet().marks, (plan::Points{at(100, 0), at(500, 0), at(700, 0)})) << "and the one under the hand";
    const Reply reply = take(Event::Kind::TakeBack);
    ASSERT_TRUE(reply.commit);
    EXPECT_EQ(reply.commit->plan.route(route_)->contours.size(), 1U);
}

TEST_F(ContourHand, EnterAndEscapeLayItDownAndSoDoesTheRoutesEnd) {
    EXPECT_TRUE(take(Event::Kind::Finish).done);
    EXPECT_TRUE(take(Event::Kind::Cancel).done);
    plan_ = std::move(plan::PlanBuilder(plan_).removeRoute(route_)).build();
    EXPECT_TRUE(take(Event::Kind::Press).done);
    EXPECT_TRUE(asked_.empty());
}

}  // namespace
}  // namespace crosstick::tools
