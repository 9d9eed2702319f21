#include "core/movement/checklist.h"

#include <gtest/gtest.h>

#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

plan::Event event(const char* what, const char* place, plan::WhichMan man, const char* reporter) {
    plan::Event one;
    one.id = kettleId(what);
    one.what = what;
    one.place = kettleId(place);
    one.route = kettleId("RTE QUILL");
    one.man = man;
    one.reporter = kettleId(reporter);
    return one;
}

/// The events of the exercise that come from its march table, and a fixed one.
plan::Plan withEvents() {
    plan::Plan plan = kettlePlan();
    plan::Force force = plan.force();
    force.elements[0].callSign = "P11";
    force.events = {event("tail over LD", "LD TRIVET", plan::WhichMan::Last, "HQ rear"),
                    event("head over PL BODKIN", "PL BODKIN", plan::WhichMan::First, "1 Sqd"),
                    event("head over PL LADLE", "PL LADLE", plan::WhichMan::First, "1 Sqd"),
                    event("closed in ORP SORREL", "ORP SORREL", plan::WhichMan::Last, "HQ rear")};
    plan::Event fixed;
    fixed.id = kettleId("taken");
    fixed.what = "OBJ taken";
    fixed.planned = *parseDateTimeGroup("140600OMAR27");
    force.events.push_back(fixed);
    return std::move(plan::PlanBuilder(plan).force(force)).build();
}

std::vector<ChecklistRow> rowsOf(const plan::Plan& plan) {
    const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
    const auto figures = routeFigures(plan, *plan.routeNamed("QUILL"), &model.value(), nullptr);
    return *executionChecklist(plan, {*marchTable(plan, *figures, plan.force().columnNamed(""))});
}

std::string clock(const std::optional<Instant>& when) {
    return when ? clockTime(*when, *timeZone('O')) : "none";
}

// Exercise SLOW KETTLE, worked by hand: 2123, 2210, 2335, 0042.
TEST(Checklist, TakesTheTimesOfTheMarchTable) {
    const auto rows = rowsOf(withEvents());
    ASSERT_EQ(rows.size(), 5U);
    EXPECT_EQ(clock(rows[0].planned), "2123");
    EXPECT_EQ(clock(rows[1].planned), "2210");
    EXPECT_EQ(clock(rows[2].planned), "2335");
    EXPECT_EQ(clock(rows[3].planned), "0042");
    EXPECT_EQ(clock(rows[4].planned), "0600");
    EXPECT_EQ(rows[1].place, "PL BODKIN");
    EXPECT_EQ(rows[1].grid, "");
    EXPECT_EQ(rows[3].grid, "FM 5670 0268");
    EXPECT_EQ(rows[1].reporter, "1 Sqd, P11");
    EXPECT_EQ(rows[4].place, "");
}

TEST(Checklist, OfOneElementItIsItsOwnMan) {
    plan::Plan plan = withEvents();
    plan::Force force = plan.force();
    force.events[1].element = kettleId("WPN");
    const auto rows = rowsOf(std::move(plan::PlanBuilder(plan).force(force)).build());
    EXPECT_EQ(clock(rows[1].planned), "2214");
}

// By hand: PL BODKIN twelve minutes late, so that LADLE is at 2347 and ORP at 0054.
TEST(Checklist, WhatHasHappenedMovesWhatFollows) {
    plan::Plan plan = withEvents();
    plan::Force force = plan.force();
    const Instant planned = *rowsOf(plan)[1].planned;
    force.events[0].actual = planned;  // something before it, which does not count any more
    force.events[1].actual = planned + std::chrono::minutes(12);
    const auto rows = rowsOf(std::move(plan::PlanBuilder(plan).force(force)).build());
    EXPECT_EQ(clock(rows[1].expected), "2222");
    EXPECT_EQ(clock(rows[2].expected), "2347");
    EXPECT_EQ(clock(rows[3].expected), "0054");
    EXPECT_EQ(clock(rows[4].expected), "0612");
    EXPECT_EQ(clock(rows[2].planned), "2335");
}

TEST(Checklist, AnEventWithoutItsTableHasTheTimeThatWasGiven) {
    plan::Plan plan = withEvents();
    const auto rows = *executionChecklist(plan, {});
    EXPECT_FALSE(rows[0].planned);
    EXPECT_FALSE(rows[0].expected);
    EXPECT_EQ(clock(rows[4].planned), "0600");
}

}  // namespace
}  // namespace crosstick::movement
