// Counts from courses go to legs by the ground and the light in which these are walked.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/movement/rate_text.h"
#include "core/movement/route_figures.h"
#include "tests/movement/kettle_plan.h"

namespace crosstick::movement {
namespace {

using plan::Going;
using plan::Light;
using testing::HasSubstr;

const Instant kAfternoon = *parseIsoTime("2027-03-13T17:00:00-02:00");  // civil dusk is at 1836:34

std::vector<plan::PaceCourse> courses(std::initializer_list<const char*> typed) {
    std::vector<plan::PaceCourse> all;
    for (const char* one : typed) {
        all.push_back(parseCourse(one).value());
    }
    return all;
}

/// 9 km north in two legs on the grid of the demo, counted by courses.
plan::Plan walked(std::vector<plan::PaceCourse> by, std::optional<Instant> start) {
    plan::Plan plan = plainRoute({at(654000, 5098000), at(654000, 5101000), at(654000, 5107000)});
    plan::Heading heading = plan.heading();
    heading.timing = plan::Timing{};
    heading.courses = std::move(by);
    plan::Route route = *plan.routes().front();
    route.start = start;
    return std::move(plan::PlanBuilder(plan).heading(heading).put(route)).build();
}

RouteFigures figuresOf(const plan::Plan& plan) {
    plan::Heading heading = plan.heading();
    heading.declination = plan::DeclinationSource::Sheet;
    plan::Sheet sheet;
    sheet.id = Uuid{{77}};
    sheet.crs = "EPSG:32625";
    sheet.declination = plan::PrintedDeclination{Degrees(-11), heading.date, Degrees(0), {}};
    const plan::Plan withAngle = std::move(plan::PlanBuilder(plan).heading(heading).put(sheet)).build();
    return routeFigures(withAngle, *withAngle.routes().front(), nullptr, nullptr).value();
}

// The ground that is walked by day ends where the rate by night begins; the two parts are counted apart.
TEST(PaceByLight, ALegThatNightFallsOnIsCountedByBoth) {
    const auto figures = figuresOf(walked(courses({"600 372", "600 444 night"}), kAfternoon));
    ASSERT_EQ(figures.progress.spans.size(), 2U);
    const double dusk = figures.progress.spans[1].from.value();
    EXPECT_GT(dusk, figures.legs[0].groundDistance.value());
    const double whole = figures.groundDistance.value();
    EXPECT_NEAR(*figures.legs[0].paces, figures.legs[0].groundDistance.value() * 0.62, 1e-6);
    EXPECT_NEAR(*figures.paces, dusk * 0.62 + (whole - dusk) * 0.74, 1e-6);
    ASSERT_EQ(figures.counts.size(), 2U);
    EXPECT_EQ(figures.counts[0].conditions, (PaceConditions{Going::CrossCountry, Light::Day}));
    EXPECT_EQ(figures.counts[1].conditions, (PaceConditions{Going::CrossCountry, Light::Night}));
    EXPECT_EQ(paceText(figures),
              "62 double per 100 m cross-country by day, measured over 600 m, 74 double per 100 m "
              "cross-country by night, measured over 600 m");
    EXPECT_EQ(shortPaceText(figures), "62, 74 paces per 100 m, measured");
}

TEST(PaceByLight, AtOneRateTheLightCountsToo) {
    plan::Plan plan = walked(courses({"600 372", "600 444 night"}), kAfternoon);
    plan::Heading heading = plan.heading();
    heading.timing.reset();
    heading.rate = plan::MarchRate{KilometresPerHour(4), ""};
    const auto figures = figuresOf(std::move(plan::PlanBuilder(plan).heading(heading)).build());
    // 1 h 36 min 34 s at 4 km/h, by hand; the dusk of a place some km away differs by seconds
    EXPECT_NEAR(*figures.paces, 6438 * 0.62 + (figures.groundDistance.value() - 6438) * 0.74, 2);
    EXPECT_TRUE(figures.progress.spans.empty());
}

TEST(PaceByLight, GroundOfALegIsItsOwn) {
    plan::Plan plan = walked(courses({"100 116 single road"}), kAfternoon - std::chrono::hours(8));
    plan::Route route = *plan.routes().front();
    route.stops[1].leg.going = Going::Road;
    const auto figures = figuresOf(std::move(plan::PlanBuilder(plan).put(route)).build());
    EXPECT_NEAR(*figures.legs[0].paces, figures.legs[0].groundDistance.value() * 0.58, 1e-6);
    EXPECT_NEAR(*figures.legs[1].paces, figures.legs[1].groundDistance.value() * 0.74, 1e-6);
    EXPECT_THAT(paceText(figures), HasSubstr("58.0 by road day x 148/116"));
}

TEST(PaceByLight, WithoutAStartTheLightIsNotKnownAndNightIsTaken) {
    const auto figures = figuresOf(walked(courses({"600 372"}), std::nullopt));
    EXPECT_NEAR(*figures.paces, figures.groundDistance.value() * 0.62 * kNightFactor, 1e-6);
    EXPECT_THAT(paceText(figures), HasSubstr("x 1.1 for the night, our own factor, since the light is not known"));
    EXPECT_EQ(shortPaceText(figures), "68.2 paces per 100 m, our factor in it");
}

TEST(PaceByLight, OneFigureCountsForEverythingAndAVehicleHasNone) {
    plan::Plan plan = walked({}, kAfternoon);
    const auto onFoot = figuresOf(plan);
    EXPECT_NEAR(*onFoot.paces, onFoot.groundDistance.value() * 0.74, 1e-6);
    EXPECT_EQ(paceText(onFoot), "74 double per 100 m, open hill, night");
    plan::Route route = *plan.routes().front();
    route.use = plan::Use::Vehicle;
    const auto driven = figuresOf(std::move(plan::PlanBuilder(plan).put(route)).build());
    EXPECT_FALSE(driven.paces);
    EXPECT_FALSE(driven.legs.front().paces);
    EXPECT_TRUE(driven.counts.empty());
}

TEST(PaceByLight, ACourseIsWrittenAsItIsTyped) {
    for (const char* typed : {"600 372 cross-country night", "100 58 road day, P14", "437.5 300 road night"}) {
        EXPECT_EQ(courseText(parseCourse(typed).value()), typed);
    }
}

}  // namespace
}  // namespace crosstick::movement
