#include "core/files/stale_traces.h"

#include <gtest/gtest.h>

#include "core/files/plan_store.h"

namespace crosstick::files {
namespace {

geodesy::PlanePoint at(double east, double north) {
    return {Metres(east), Metres(north)};
}

Uuid id(std::uint8_t number) {
    return Uuid{{number}};
}

/// PL CHALK of higher's film, traced onto ours.
class Watched : public ::testing::Test {
  protected:
    plan::ItemId copy;
    plan::Plan plan = [this] {
        plan::Plan made = plan::withFilm(plan::withFilm({}, id(100), "HIGHER", {}), id(101), "MOVE", {});
        plan::Measure line;
        line.id = id(1);
        line.kind = "phase-line";
        line.name = "CHALK";
        line.points = {at(0, 0), at(1000, 0)};
        made = plan::withMeasure(made, line, id(100));
        plan::Traced traced =
            plan::traced(made, {{id(1), id(100), contentHash(line), {}}}, id(101), [] { return id(200); });
        copy = traced.copies.front();
        return traced.plan;
    }();
    TraceWatch watch;
};

TEST_F(Watched, ACopyOfASourceThatStayedIsNotStale) {
    EXPECT_TRUE(watch.look(plan).empty());
    EXPECT_TRUE(watch.look(plan::movedBy(plan, copy, Metres(50), Metres(0))).empty()) << "we may change our own";
}

TEST_F(Watched, TellsHowFarHighersLineLiesFromOurs) {
    const plan::Plan moved = plan::movedBy(plan, id(1), Metres(0), Metres(120));
    const auto& stale = watch.look(moved);
    ASSERT_EQ(stale.size(), 1U);
    EXPECT_EQ(stale[0].copy, copy);
    EXPECT_NEAR(stale[0].moved.value(), 120, 1e-9);
    EXPECT_EQ(stale[0].now, (plan::Points{at(0, 120), at(1000, 120)}));
    EXPECT_TRUE(watch.look(plan).empty()) << "and back";
    EXPECT_TRUE(watch.look(plan::renewedTrace(moved, copy, contentHash(*moved.measure(id(1))))).empty());
}

TEST_F(Watched, OtherWordsMakeItStaleToo) {
    plan::Measure renamed = *plan.measure(id(1));
    renamed.name = "SLATE";
    plan::PlanBuilder builder(plan);
    builder.put(renamed);
    const auto& stale = watch.look(std::move(builder).build());
    ASSERT_EQ(stale.size(), 1U);
    EXPECT_EQ(stale[0].moved, Metres(0));
}

TEST_F(Watched, ASourceThatIsGoneIsTold) {
    const auto& stale = watch.look(plan::without(plan, id(1)));
    ASSERT_EQ(stale.size(), 1U);
    EXPECT_EQ(stale[0].source, nullptr);
}

}  // namespace
}  // namespace crosstick::files
