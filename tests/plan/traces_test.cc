#include "core/plan/traces.h"

#include <gtest/gtest.h>

namespace crosstick::plan {
namespace {

geodesy::PlanePoint at(double east, double north) {
    return {Metres(east), Metres(north)};
}

Uuid id(std::uint8_t number) {
    return Uuid{{number}};
}

/// Film 100 of higher's with phase line 1 and area 2, film 101 of ours.
class Traces : public ::testing::Test {
  protected:
    Plan plan = [] {
        Plan made = withFilm(withFilm(Plan{}, id(100), "HIGHER", {}), id(101), "MOVE", {});
        Measure line;
        line.id = id(1);
        line.kind = "phase-line";
        line.name = "CHALK";
        line.points = {at(0, 0), at(1000, 0), at(2000, 500)};
        Measure area;
        area.id = id(2);
        area.kind = "objective";
        area.points = {at(0, 1000), at(500, 1000), at(500, 1500)};
        return withMeasure(withMeasure(made, line, id(100)), area, id(100));
    }();
    std::uint8_t fresh = 200;
    std::function<Uuid()> newId = [this] { return id(fresh++); };

    Traced trace(std::uint8_t item, std::optional<Points> part = std::nullopt) {
        return traced(plan, {{id(item), id(100), "v1", std::move(part)}}, id(101), newId);
    }
    Plan moved(const Plan& from, Metres east) { return movedBy(from, id(1), east, Metres(0)); }
};

TEST_F(Traces, ACopyIsOursAndRemembersItsSource) {
    const Traced once = trace(1);
    ASSERT_EQ(once.copies.size(), 1U);
    const MeasurePtr copy = once.plan.measure(once.copies[0]);
    Measure expected = *plan.measure(id(1));
    expected.id = copy->id;
    expected.tracedFrom = TraceSource{"HIGHER", text(id(1)), "v1", {}};
    EXPECT_EQ(*copy, expected);
    EXPECT_TRUE(isShownOn(*once.plan.film(id(101)), copy->id));
    EXPECT_EQ(once.plan.film(id(100)), plan.film(id(100)));
    EXPECT_EQ(sourceOf(*copy)->item, id(1));
    EXPECT_FALSE(sourceOf(*copy)->isPart);
}

TEST_F(Traces, TracingAWholeTwiceShowsTheFirstCopy) {
    plan = withFilm(trace(1).plan, id(102), "LOOK", {});
    const Traced again = traced(plan, {{id(1), id(100), "v1", {}}}, id(102), newId);
    ASSERT_EQ(again.copies.size(), 1U);
    EXPECT_TRUE(isShownOn(*again.plan.film(id(102)), again.copies[0]));
    EXPECT_TRUE(isShownOn(*again.plan.film(id(101)), again.copies[0]));
    EXPECT_EQ(again.plan.measures().size(), plan.measures().size());
}

TEST_F(Traces, AStretchIsACopyOfItsOwnAndOnlyLinesHaveStretches) {
    const Points part{at(200, 0), at(1000, 0)};
    const Traced once = trace(1, part);
    ASSERT_EQ(once.copies.size(), 1U);
    EXPECT_EQ(once.plan.measure(once.copies[0])->points, part);
    EXPECT_TRUE(sourceOf(*once.plan.measure(once.copies[0]))->isPart);
    EXPECT_TRUE(trace(2, part).copies.empty());
    EXPECT_TRUE(traced(plan, {{id(1), id(101), "v1", {}}}, id(101), newId).copies.empty()) << "from itself";
}

TEST_F(Traces, RenewedFromASourceThatStayedItStaysAsItIs) {
    const Traced once = trace(1);
    EXPECT_TRUE(renewedTrace(once.plan, once.copies[0], "v1") == once.plan);
    const Traced part = trace(1, Points{at(200, 0), at(1000, 0), at(1400, 200)});
    EXPECT_TRUE(renewedTrace(part.plan, part.copies[0], "v1") == part.plan);
}

TEST_F(Traces, RenewedItLiesWhereTheSourceLiesNowAndKeepsWhatWeSaidOfIt) {
    Traced once = trace(1);
    Measure own = *once.plan.measure(once.copies[0]);
    own.why = "report halfway";
    PlanBuilder builder(once.plan);
    builder.put(own);
    const Plan renewed = renewedTrace(moved(std::move(builder).build(), Metres(120)), own.id, "v2");
    EXPECT_EQ(renewed.measure(own.id)->points, renewed.measure(id(1))->points);
    EXPECT_EQ(renewed.measure(own.id)->why, "report halfway");
    EXPECT_EQ(renewed.measure(own.id)->tracedFrom->version, "v2");
}

TEST_F(Traces, ARenewedStretchRunsBetweenThePlacesNearestToItsEnds) {
    const Traced part = trace(1, Points{at(200, 0), at(800, 0)});
    const Plan north = movedBy(part.plan, id(1), Metres(0), Metres(50));
    EXPECT_EQ(renewedTrace(north, part.copies[0], "v2").measure(part.copies[0])->points,
              (Points{at(200, 50), at(800, 50)}));
}

TEST_F(Traces, ACopyWhoseSourceIsGoneStays) {
    const Traced once = trace(1);
    const Plan gone = without(once.plan, id(1));
    EXPECT_TRUE(renewedTrace(gone, once.copies[0], "v2") == gone);
    Measure foreign = *gone.measure(once.copies[0]);
    foreign.tracedFrom->item = "area-overlay/7";
    EXPECT_FALSE(sourceOf(foreign)) << "a source that is no measure of a plan";
}

}  // namespace
}  // namespace crosstick::plan
