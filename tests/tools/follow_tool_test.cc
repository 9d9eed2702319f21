#include "ui/tools/follow_tool.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/terrain/faults.h"
#include "tests/tools/asked_table.h"

namespace crosstick::tools {
namespace {

using Kind = Event::Kind;

/// A table on which printed lines bulge by 50 m in the middle.
class FollowTable : public AskedTable {
  protected:
    Reply send(FollowTool& tool, Kind kind, geodesy::PlanePoint where = {}, bool second = false, bool held = false) {
        return take(tool, {kind, where, held, second});
    }
    static terrain::FollowedGround bulging(const Asked& asked) {
        const geodesy::PlanePoint middle{(asked.from.easting + asked.to.easting) / 2,
                                         (asked.from.northing + asked.to.northing) / 2 + Metres(50)};
        return {{asked.from, middle, asked.to}, terrain::Vein{}};
    }
    void answer(std::size_t n) { asked_[n].then(bulging(asked_[n])); }
};

TEST_F(FollowTable, TwoClicksAndEnterMakeALineOfWhatIsPrinted) {
    FollowTool follow = tool();
    (void)send(follow, Kind::Press, at(0, 0));
    EXPECT_TRUE(asked_.empty());
    (void)send(follow, Kind::Press, at(1000, 0));
    ASSERT_EQ(asked_.size(), 1U);
    EXPECT_EQ(follow.hint(), "looking for the line");
    answer(0);
    (void)send(follow, Kind::Move, at(1000, 0));
    EXPECT_EQ(follow.wet().line.size(), 4U);  // three points and the hand
    const Reply reply = send(follow, Kind::Finish);
    ASSERT_TRUE(reply.commit.has_value());
    EXPECT_TRUE(reply.done);
    const auto made = reply.commit->plan.measure(**reply.select);
    ASSERT_TRUE(made);
    EXPECT_EQ(made->kind, "free-line");
    EXPECT_EQ(made->points, (plan::Points{at(0, 0), at(500, 50), at(1000, 0)}));
}

TEST_F(FollowTable, EnterBeforeTheAnswerEndsItWhenTheAnswerComes) {
    FollowTool follow = tool();
    (void)send(follow, Kind::Press, at(0, 0));
    (void)send(follow, Kind::Press, at(1000, 0));
    EXPECT_FALSE(send(follow, Kind::Finish).commit.has_value());
    answer(0);
    EXPECT_TRUE(send(follow, Kind::Move, at(5, 5)).commit.has_value());
}

TEST_F(FollowTable, AFurtherClickGoesOnWithWhatWasFollowed) {
    FollowTool follow = tool();
    (void)send(follow, Kind::Press, at(0, 0));
    (void)send(follow, Kind::Press, at(1000, 0));
    answer(0);
    (void)send(follow, Kind::Move, at(0, 0));
    (void)send(follow, Kind::Press, at(2000, 0));
    ASSERT_EQ(asked_.size(), 2U);
    EXPECT_EQ(asked_[1].from, at(1000, 0));
    EXPECT_TRUE(asked_[1].like.has_value());
    answer(1);
    const Reply reply = send(follow, Kind::Finish);
    ASSERT_TRUE(reply.commit.has_value());
    EXPECT_EQ(reply.commit->plan.measure(**reply.select)->points.size(), 5U);  // the shared point once
}

TEST_F(FollowTable, WhatIsNotFoundIsSaidAndItsClickTakenBack) {
    FollowTool follow = tool();
    (void)send(follow, Kind::Press, at(0, 0));
    (void)send(follow, Kind::Press, at(1000, 0));
    asked_[0].then(fail(terrain::kBreaksOff));
    const Reply reply = send(follow, Kind::Move, at(0, 0));
    ASSERT_TRUE(reply.refused.has_value());
    EXPECT_EQ(reply.refused->fault, terrain::kBreaksOff);
    EXPECT_TRUE(follow.isBusy());
    (void)send(follow, Kind::Press, at(800, 0));
    EXPECT_EQ(asked_[1].from, at(0, 0));
}

TEST_F(FollowTable, WithTheSecondKeyAPieceIsStraight) {
    FollowTool follow = tool();
    (void)send(follow, Kind::Press, at(0, 0));
    (void)send(follow, Kind::Press, at(300, 0), true);
    EXPECT_TRUE(asked_.empty());
    const Reply reply = send(follow, Kind::Finish);
    ASSERT_TRUE(reply.commit.has_value());
    EXPECT_EQ(reply.commit->plan.measure(**reply.select)->points, (plan::Points{at(0, 0), at(300, 0)}));
}

TEST_F(FollowTable, AHandrailRunsBesideWhatIsPrinted) {
    Metres wished(100);
    FollowTool follow = tool(Rail{[&wished] { return wished; }, terrain::Side::Right});
    (void)send(follow, Kind::Press, at(0, 0));
    (void)send(follow, Kind::Press, at(1000, 0), true);
    ASSERT_EQ(follow.wet().others.size(), 1U) << "it is shown before it is made";
    wished = Metres(150);
    const Reply reply = send(follow, Kind::Finish);
    ASSERT_TRUE(reply.commit.has_value());
    EXPECT_EQ(reply.said, "Handrail: 150 m right of the line.");
    const plan::Points points = reply.commit->plan.measure(**reply.select)->points;
    ASSERT_EQ(points.size(), 2U);
    EXPECT_NEAR(points[0].northing.value(), 5100000 - 150, 1e-6);
    EXPECT_NEAR(points[1].easting.value(), 651000, 1e-6);
}

TEST_F(FollowTable, AHandrailKeepsInsideOurBoundaryAndSaysHowFar) {
    plan::Heading heading;
    heading.unit = "2/C UTB";
    plan::Measure boundary;
    boundary.id.bytes[0] = 77;
    boundary.kind = "boundary";
    boundary.points = {at(-5000, 30), at(5000, 30)};
    boundary.fields = {{"left_unit", "2/C"}, {"right_unit", "3/C"}};
    plan_ = std::move(plan::PlanBuilder(plan_).heading(heading).put(boundary)).build();
    FollowTool follow = tool(Rail{[] { return terrain::kUsualHandrail; }});
    (void)send(follow, Kind::Press, at(0, 0));
    (void)send(follow, Kind::Press, at(1000, 0), true);
    ASSERT_TRUE(follow.wet().told);
    EXPECT_EQ(follow.wet().told->first, "100 m left of the line, 70 m inside our boundary");
    EXPECT_EQ(send(follow, Kind::Finish).said, "Handrail: 100 m left of the line, 70 m inside our boundary.");
    FollowTool bare = tool(Rail{[] { return Metres(100); }});
    plan_ = std::move(plan::PlanBuilder(plan_).removeMeasure(boundary.id)).build();
    (void)send(bare, Kind::Press, at(0, 0));
    (void)send(bare, Kind::Press, at(1000, 0), true);
    EXPECT_EQ(send(bare, Kind::Finish).said,
              "Handrail: 100 m right of the line: no boundary tells our side, name our unit on the plan's card.");
}

TEST_F(FollowTable, AKindNamedOnTheWayIsWhatItBecomes) {
    FollowTool follow = tool();
    (void)send(follow, Kind::Press, at(0, 0));
    const Ground ground{plan_, film_, plan_.films(), std::nullopt, Metres(10), [] { return Uuid{{5}}; }};
    EXPECT_FALSE(follow.endAs(*measures::find("phase-line"), ground)) << "there is no line yet";
    (void)send(follow, Kind::Press, at(1000, 0));
    EXPECT_FALSE(follow.endAs(*measures::find("phase-line"), ground)) << "it is still looked for";
    answer(0);
    (void)send(follow, Kind::Move, at(1000, 0));
    EXPECT_FALSE(follow.endAs(*measures::find("checkpoint"), ground));
    const auto reply = follow.endAs(*measures::find("phase-line"), ground);
    ASSERT_TRUE(reply);
    EXPECT_EQ(reply->commit->plan.measure(**reply->select)->kind, "phase-line");
    EXPECT_EQ(reply->commit->plan.measure(**reply->select)->points.size(), 3U);
    EXPECT_TRUE(reply->done);
}

TEST_F(FollowTable, TakeBackAndCancelLeaveNothingAndLateAnswersHarmNobody) {
    auto follow = std::make_unique<FollowTool>(tool());
    (void)send(*follow, Kind::Press, at(0, 0));
    (void)send(*follow, Kind::Press, at(1000, 0));
    (void)send(*follow, Kind::TakeBack);
    answer(0);
    (void)send(*follow, Kind::Move, at(10, 10));
    EXPECT_EQ(follow->wet().line.size(), 2U);  // the start and the hand
    (void)send(*follow, Kind::Press, at(1000, 0));
    EXPECT_FALSE(send(*follow, Kind::Cancel).done);
    EXPECT_TRUE(send(*follow, Kind::Cancel).done);
    follow.reset();
    answer(1);
}

}  // namespace
}  // namespace crosstick::tools
