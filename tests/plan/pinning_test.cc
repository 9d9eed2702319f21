#include "core/plan/pinning.h"

#include <random>

#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "core/plan/showings.h"

namespace crosstick::plan {
namespace {

geodesy::PlanePoint at(double east, double north) {
    return {Metres(654000 + east), Metres(5098000 + north)};
}

constexpr Uuid kArea{{1}}, kScheme{{2}}, kLine{{3}}, kPoint{{4}}, kOwn{{5}}, kRoute{{6}};

Measure measureOf(const Uuid& id, std::vector<geodesy::PlanePoint> points) {
    Measure measure;
    measure.id = id;
    measure.kind = points.size() > 1 ? "phase-line" : "checkpoint";
    measure.points = std::move(points);
    return measure;
}

/// Higher's film with a line and a checkpoint, pinned; ours above it with a point of its own and a route over the
/// checkpoint. The line is shown on both.
Plan pinnedPlan() {
    Plan plan = withFilm(withFilm(Plan{}, kArea, "AREA", {}), kScheme, "SCHEME", {});
    plan = withMeasure(plan, measureOf(kLine, {at(0, 0), at(900, 100)}), kArea);
    plan = withMeasure(plan, measureOf(kPoint, {at(400, 500)}), kArea);
    plan = withMeasure(plan, measureOf(kOwn, {at(100, 800)}), kScheme);
    plan = shownOn(plan, kLine, kScheme);
    Route route;
    route.id = kRoute;
    route.vertices = {at(-500, 0), at(400, 500), at(900, 900)};
    route.stops = {{1, kPoint}};
    plan = withRoute(plan, route, {}, kScheme);
    return withPin(plan, kArea, Pin::Pinned);
}

template <class Change>
Plan withMeasureChanged(const Plan& plan, const ItemId& id, Change&& change) {
    Measure measure = *plan.measure(id);
    change(measure);
    PlanBuilder builder(plan);
    builder.put(std::move(measure));
    return std::move(builder).build();
}

TEST(Pinning, NothingOnAPinnedFilmIsDrawnMovedRenamedOrWipedOff) {
    const Plan plan = pinnedPlan();
    const std::vector<std::pair<const char*, Plan>> steps{
        {"drawn", withMeasure(plan, measureOf(Uuid{{9}}, {at(1, 1)}), kArea)},
        {"moved", movedBy(plan, kLine, Metres(10), Metres(0))},
        {"a point moved", withPoint(plan, kPoint, 0, at(410, 500))},
        {"a point added", withPointBefore(plan, kLine, 1, at(300, 80))},
        {"moved by the route that runs over it", withPoint(plan, kRoute, 1, at(410, 500))},
        {"renamed", withMeasureChanged(plan, kLine, [](Measure& m) { m.name = "CHALK"; })},
        {"wiped off", without(plan, kLine)},
        {"taken off it", notShownOn(plan, kLine, kArea)},
        {"put on it", shownOn(plan, kOwn, kArea)},
        {"its label moved", labelPlaced(plan, kLine, kArea, at(10, 10))},
        {"laid away", std::move(PlanBuilder(plan).removeFilm(kArea)).build()},
    };
    for (const auto& [what, next] : steps) {
        const FilmPtr film = pinnedAgainst(plan, next);
        ASSERT_NE(film, nullptr) << what;
        EXPECT_EQ(film->name, "AREA") << what;
    }
}

TEST(Pinning, WhatTouchesNoInkOfAPinnedFilmMayBeDone) {
    const Plan plan = pinnedPlan();
    const std::vector<std::pair<const char*, Plan>> steps{
        {"drawn beside", withMeasure(plan, measureOf(Uuid{{9}}, {at(1, 1)}), kScheme)},
        {"ours moved", movedBy(plan, kOwn, Metres(10), Metres(0))},
        {"the route bent elsewhere", withPoint(plan, kRoute, 2, at(950, 900))},
        {"its label on ours", labelPlaced(plan, kLine, kScheme, at(10, 10))},
        {"taken off ours", notShownOn(plan, kLine, kScheme)},
        {"a why", withMeasureChanged(plan, kLine, [](Measure& m) { m.why = "report here"; })},
        {"a tie", withMeasureChanged(plan, kPoint, [](Measure& m) { m.tie = "weir"; })},
        {"restacked", restacked(plan, kArea, Step::Up)},
        {"let go", withPin(plan, kArea, Pin::Loose)},
        {"let go and moved", movedBy(withPin(plan, kArea, Pin::Loose), kLine, Metres(10), Metres(0))},
    };
    for (const auto& [what, next] : steps) {
        EXPECT_EQ(pinnedAgainst(plan, next), nullptr) << what;
    }
}

TEST(Pinning, APinPutInAndTakenOutLeavesThePlanAsItWas) {
    const Plan plan = pinnedPlan();
    EXPECT_TRUE(plan.film(kArea)->pinned);
    EXPECT_TRUE(withPin(withPin(plan, kScheme, Pin::Pinned), kScheme, Pin::Loose) == plan);
    EXPECT_TRUE(withPin(plan, kArea, Pin::Pinned) == plan);
    EXPECT_TRUE(withPin(plan, Uuid{{77}}, Pin::Pinned) == plan);
}

TEST(Pinning, AFilmLiesStillUnderRandomStepsOrIsNamed) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    for (int round = 0; round < 200; ++round) {
        const Plan plan = pinnedPlan();
        const Uuid items[] = {kLine, kPoint, kOwn, kRoute};
        const Uuid item = items[random() % 4];
        const Plan next = random() % 2 == 0
                              ? movedBy(plan, item, Metres(1 + static_cast<double>(random() % 9)), Metres(0))
                              : without(plan, item);
        const bool still = next.film(kArea)->shows == plan.film(kArea)->shows && next.measure(kLine) &&
                           next.measure(kPoint) && *next.measure(kLine) == *plan.measure(kLine) &&
                           *next.measure(kPoint) == *plan.measure(kPoint);
        EXPECT_EQ(pinnedAgainst(plan, next) == nullptr, still) << round;
        EXPECT_EQ(pinnedAgainst(next, next), nullptr);
    }
}

}  // namespace
}  // namespace crosstick::plan
