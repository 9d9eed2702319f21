#include "core/movement/typed_timing.h"

#include <gtest/gtest.h>

#include "core/movement/faults.h"
#include "tests/movement/kettle_plan.h"

namespace crosstick::movement {
namespace {

std::string written(const Result<Instant>& when) {
    return when ? dateTimeGroup(*when, *timeZone('O')) : std::string("none");
}

TEST(TypedTiming, AClockTimeAloneIsOnThePlansDayOrAfterWhatItCannotBeBefore) {
    const plan::Heading heading = kettlePlan().heading();
    EXPECT_EQ(written(momentTyped(heading, "2100")), "132100OMAR27");
    EXPECT_EQ(written(momentTyped(heading, " 01:15 ")), "130115OMAR27");
    const Instant evening = parseDateTimeGroup("131500OMAR27").value();
    EXPECT_EQ(written(momentTyped(heading, "0115", evening)), "140115OMAR27");
    EXPECT_EQ(written(momentTyped(heading, "2000", evening)), "132000OMAR27");
    EXPECT_EQ(written(momentTyped(heading, "130115OMAR27", evening)), "130115OMAR27") << "a whole group is meant";
    for (const char* typed : {"", "2460", "2401", "soon", "21000", "-100"}) {
        EXPECT_FALSE(momentTyped(heading, typed)) << typed;
    }
    plan::Heading undated;
    EXPECT_FALSE(momentTyped(undated, "2100"));
}

TEST(TypedTiming, WhatHasHappenedIsNearestToWhenItWasToHappen) {
    const plan::Heading heading = kettlePlan().heading();
    const Instant planned = parseDateTimeGroup("132350OMAR27").value();
    EXPECT_EQ(written(momentNear(heading, "0010", planned)), "140010OMAR27");
    EXPECT_EQ(written(momentNear(heading, "2340", planned)), "132340OMAR27");
    EXPECT_EQ(written(momentNear(heading, "120010OMAR27", planned)), "120010OMAR27");
    EXPECT_EQ(written(momentNear(heading, "0010", std::nullopt)), "130010OMAR27");
}

TEST(TypedTiming, APreparationIsWhatAndHowLong) {
    EXPECT_EQ(parsePreparation("orders 60")->lasts, Minutes(60));
    EXPECT_EQ(parsePreparation("back brief=1:30")->name, "back brief");
    EXPECT_EQ(parsePreparation("back brief=1:30")->lasts, Minutes(90));
    EXPECT_EQ(preparationText(*parsePreparation("rest 1:05")), "rest 65");
    for (const char* typed : {"", "orders", "60", " 60", "orders -5", "orders 1:75", "orders 99999999"}) {
        EXPECT_FALSE(parsePreparation(typed)) << typed;
    }
}

TEST(TypedTiming, ANavigatorsErrorsAreTwoFigures) {
    for (const char* typed : {"4 1.5", " 4 % 1.5\u00b0 ", "4%1,5", "4  1.5"}) {
        const auto own = withNavigatorTyped(kettlePlan(), typed);
        ASSERT_TRUE(own) << typed;
        EXPECT_EQ(own->heading().navigator, (plan::NavigatorErrors{0.04, Degrees(1.5)})) << typed;
        EXPECT_EQ(navigatorText(*own->heading().navigator), "4 % 1.5\u00b0");
        EXPECT_EQ(withNavigatorTyped(*own, navigatorText(*own->heading().navigator)).value(), *own);
        EXPECT_FALSE(withNavigatorTyped(*own, "")->heading().navigator) << "ours again";
    }
    for (const char* typed : {"4", "51 2", "4 46", "-1 2", "4 1.5 3", "bad 2", "nan 2", "%"}) {
        EXPECT_EQ(withNavigatorTyped(kettlePlan(), typed).error().fault, kBadNavigator) << typed;
    }
}

TEST(TypedTiming, AStartInTimeKeepsWhatItIsInTimeForUntilAnotherStartIsGiven) {
    const plan::ItemId quill = kettleId("RTE QUILL");
    const Instant start = parseDateTimeGroup("132100OMAR27").value();
    const Instant closed = parseDateTimeGroup("140115OMAR27").value();
    const plan::Plan inTime = withStartInTime(kettlePlan(), quill, start, closed);
    EXPECT_EQ(inTime.route(quill)->start, start);
    EXPECT_EQ(inTime.route(quill)->notLaterThan, closed);
    EXPECT_FALSE(withStart(inTime, quill, start).route(quill)->notLaterThan);
    EXPECT_FALSE(withStartTyped(inTime, quill, "2000")->route(quill)->notLaterThan);
}

TEST(TypedTiming, OneRateTakesTheTimingsPlaceAndOneOfFourMakesIt) {
    const plan::Plan one = withRateTyped(kettlePlan(), "3,5").value();
    EXPECT_EQ(one.heading().rate->rate, KilometresPerHour(3.5));
    const PaceConditions roadByNight{plan::Going::Road, plan::Light::Night};
    const plan::Plan four = withRateTyped(one, roadByNight, "3").value();
    EXPECT_EQ(four.heading().timing->rates.roadByNight, KilometresPerHour(3));
    EXPECT_EQ(four.heading().timing->rates.roadByDay, KilometresPerHour(4));
    EXPECT_EQ(withRateTyped(four, roadByNight, "")->heading().timing->rates, plan::MarchRates{}) << "doctrine's again";
    EXPECT_FALSE(withRateTyped(four, "3")->heading().timing);
    for (const char* typed : {"0", "21", "fast", "nan", "1e9"}) {
        EXPECT_EQ(withRateTyped(four, typed).error().fault, kBadRate) << typed;
    }
}

TEST(TypedTiming, ACountTakesThePlaceOfCoursesAndACourseIsOneMore) {
    plan::Plan plan = withPaceTyped(kettlePlan(), "600 372").value();
    plan = withPaceTyped(plan, "600 444 night").value();
    ASSERT_EQ(plan.heading().courses.size(), 2U);
    plan = withCourseTyped(plan, 0, "400 250 road").value();
    EXPECT_EQ(plan.heading().courses[0].going, plan::Going::Road);
    EXPECT_EQ(withCourseTyped(plan, 1, "")->heading().courses.size(), 1U);
    EXPECT_TRUE(withPaceTyped(plan, "70")->heading().courses.empty());
    EXPECT_EQ(withPaceTyped(plan, "20").error().fault, kBadCount);
    EXPECT_EQ(withPaceTyped(plan, "600 many").error().fault, kBadCourse);
}

}  // namespace
}  // namespace crosstick::movement
