// The light that a route is walked in.
#include "core/movement/route_light.h"

#include <gtest/gtest.h>

#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

RouteFigures figuresOf(const plan::Plan& plan, const char* name) {
    const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
    return routeFigures(plan, *plan.routeNamed(name), &model.value(), nullptr).value();
}

// QUILL starts at 2100 on the 13th and ends at 0015 on the 14th: the moon sets at 0036 in between.
TEST(RouteLight, IsThatOfBothDatesOfANight) {
    const plan::Plan plan = kettlePlan();
    const auto lights = routeLight(plan, figuresOf(plan, "QUILL"));
    ASSERT_EQ(lights.size(), 2U);
    EXPECT_EQ(isoDate(lights[0].date), "2027-03-13");
    EXPECT_EQ(isoDate(lights[1].date), "2027-03-14");
    const TimeZone zone = plan.heading().zone;
    EXPECT_EQ(lightText(lights[0].light, zone),
              "BMNT 0517, BMCT 0551, sunrise 0621, sunset 1807, EECT 1837, EENT 1911, moonrise 0812, moonset none, "
              "moon lit 27 %");
    EXPECT_NE(lightText(lights[1].light, zone).find("moonset 0036"), std::string::npos);
    const auto when = [](const char* text) { return parseIsoTime(text).value(); };
    EXPECT_EQ(lightAt(lights, when("2027-03-14T01:59:59Z"), zone), lights.data());
    EXPECT_EQ(lightAt(lights, when("2027-03-14T02:00:00Z"), zone), lights.data() + 1);
    EXPECT_EQ(lightAt(lights, std::nullopt, zone), lights.data());
    EXPECT_EQ(lightAt(lights, when("2027-03-16T02:00:00Z"), zone), nullptr);
}

TEST(RouteLight, WithoutAStartIsThatOfThePlansDate) {
    plan::Plan plan = kettlePlan();
    plan::Route route = *plan.routeNamed("QUILL");
    route.start.reset();
    plan = std::move(plan::PlanBuilder(plan).put(route)).build();
    const auto lights = routeLight(plan, figuresOf(plan, "QUILL"));
    ASSERT_EQ(lights.size(), 1U);
    EXPECT_EQ(lights[0].date, plan.heading().date);
}

TEST(RouteLight, OfADateThatIsNotReckonedForIsNone) {
    plan::Plan plan = kettlePlan();
    plan::Route route = *plan.routeNamed("QUILL");
    route.start = parseIsoTime("2090-03-13T12:00:00Z").value();
    plan = std::move(plan::PlanBuilder(plan).put(route)).build();
    EXPECT_TRUE(routeLight(plan, figuresOf(plan, "QUILL")).empty());
    EXPECT_EQ(lightAt({}, std::nullopt, TimeZone{}), nullptr);
}

}  // namespace
}  // namespace crosstick::movement
