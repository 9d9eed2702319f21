#include "core/plan/plan.h"

#include <gtest/gtest.h>

#include "tests/plan/random_plans.h"

namespace crosstick::plan {
namespace {

TEST(Plan, AnEditLeavesTheOldPlanAsItWas) {
    testing::RandomPlans random(1);
    const Plan before = random.plan(300);
    const Plan copy = before;
    for (int n = 0; n < 50; ++n) {
        const Plan edited = random.edited(before);
        EXPECT_TRUE(before == copy);
    }
}

TEST(Plan, WhatAnEditDoesNotTouchIsSharedNotCopied) {
    testing::RandomPlans random(2);
    const Plan before = random.plan(10);
    PlanBuilder builder(before);
    builder.put(random.measure());
    const Plan after = std::move(builder).build();
    EXPECT_EQ(&before.heading(), &after.heading());
    EXPECT_EQ(&before.films(), &after.films());
    EXPECT_EQ(&before.routes(), &after.routes());
    EXPECT_EQ(&before.sheets(), &after.sheets());
}

TEST(Plan, AFilmListsItsShowingsInTheirOrder) {
    testing::RandomPlans random(3);
    Film film;
    film.id = Uuid{{1}};
    film.shows = {{Uuid{{2}}, "m", {}, {}}, {Uuid{{3}}, "b", {}, {}}, {Uuid{{4}}, "z", {}, {}}};
    PlanBuilder builder{Plan{}};
    builder.put(film);
    const Plan plan = std::move(builder).build();
    EXPECT_EQ(plan.films().front()->shows[0].order, "b");
    EXPECT_EQ(plan.films().front()->shows[2].order, "z");
}

TEST(Plan, AFilmLiesOnItsOwnSheetElseOnTheFirst) {
    testing::RandomPlans random(4);
    const Sheet first = random.sheet();
    Sheet second = random.sheet();
    second.crs = "EPSG:23032";
    Film film;
    film.id = Uuid{{9}};
    PlanBuilder builder{Plan{}};
    builder.put(first).put(second);
    const Plan plan = std::move(builder).build();
    EXPECT_EQ(plan.groundSheet(film)->id, first.id);
    film.groundSheet = second.id;
    EXPECT_EQ(plan.gridCrs(film), "EPSG:23032");
    film.groundSheet = Uuid{{77}};  // a sheet that is gone
    EXPECT_EQ(plan.groundSheet(film)->id, first.id);
}

TEST(Plan, WithoutASheetTheGridIsThePlansOwn) {
    Heading heading;
    heading.plane = {25, geodesy::Hemisphere::North};
    PlanBuilder builder{Plan{}};
    builder.heading(heading);
    const Plan plan = std::move(builder).build();
    EXPECT_EQ(plan.gridCrs(Film{}), "EPSG:32625");
}

TEST(Plan, WhatIsNotThereIsNull) {
    const Plan plan;
    EXPECT_EQ(plan.measure(Uuid{{1}}), nullptr);
    EXPECT_EQ(plan.filmNamed("MOVE"), nullptr);
    EXPECT_EQ(plan.routeNamed("QUILL"), nullptr);
    EXPECT_EQ(plan.sheet(Uuid{{1}}), nullptr);
}

TEST(Plan, AFilmIsDrawnInItsOwnSizesElseInThePlans) {
    Film film;
    Heading heading;
    PlanBuilder builder{Plan{}};
    EXPECT_EQ(Plan{}.gauge(film), drawing::Gauge{});
    heading.gauge = drawing::Gauge::of(8, 0.5, 2.5);
    builder.heading(heading);
    const Plan plan = std::move(builder).build();
    EXPECT_EQ(plan.gauge(film), *heading.gauge);
    film.gauge = drawing::Gauge::of(4, 0.25, 1.8);
    EXPECT_EQ(plan.gauge(film), *film.gauge);
}

// Engraving 0: symbols 4 to 8, pen 0.25 to 0.70, letters never under 1.8.
TEST(Plan, SizesOutOfTheirRangesBecomeTheNearestInside) {
    EXPECT_EQ(drawing::Gauge::of(1, 0.1, 0.5), drawing::Gauge::of(4, 0.25, 1.8));
    EXPECT_EQ(drawing::Gauge::of(20, 3, 9), drawing::Gauge::of(8, 0.70, 4));
    EXPECT_EQ(drawing::Gauge::of(6, 0.40, 2), drawing::Gauge{});
}

}  // namespace
}  // namespace crosstick::plan
