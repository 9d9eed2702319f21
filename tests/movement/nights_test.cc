#include "core/movement/nights.h"

#include <gtest/gtest.h>

#include "core/movement/rate_text.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

const TimeZone kZone{'O', std::chrono::minutes(-120)};
const geodesy::GeoPoint kSheetCentre{Degrees(46.040741954), Degrees(-31.009690948)};

Instant instant(const char* text) {
    return *parseIsoTime(text);
}

double secondsApart(Instant a, Instant b) {
    return std::abs(static_cast<double>((a - b).count()));
}

// Exercise SLOW KETTLE, by an ephemeris of its own: civil dusk 18:36:34 on 13 March, civil dawn 05:49:27 on the 14th.
TEST(Nights, LastFromCivilDuskToCivilDawn) {
    const auto nights =
        nightsBetween(kSheetCentre, instant("2027-03-13T12:00:00-02:00"), instant("2027-03-14T12:00:00-02:00"));
    ASSERT_TRUE(nights);
    ASSERT_EQ(nights->size(), 1U);
    EXPECT_LT(secondsApart(nights->front().from, instant("2027-03-13T18:36:34-02:00")), 10);
    EXPECT_LT(secondsApart(nights->front().until, instant("2027-03-14T05:49:27-02:00")), 10);
}

TEST(Nights, AreCutAtTheTimesThatWereAskedFor) {
    const Instant from = instant("2027-03-13T21:00:00-02:00");
    const Instant until = instant("2027-03-14T01:00:00-02:00");
    EXPECT_EQ(nightsBetween(kSheetCentre, from, until), std::vector<Night>({{from, until}}));
    EXPECT_EQ(nightsBetween(kSheetCentre, instant("2027-03-13T12:00:00-02:00"), instant("2027-03-13T15:00:00-02:00")),
              std::vector<Night>());
}

TEST(Nights, NearThePoleThereIsNoneInSummerAndOneAllTheTimeInWinter) {
    const geodesy::GeoPoint north{Degrees(80), Degrees(20)};
    EXPECT_EQ(nightsBetween(north, instant("2027-06-20T00:00:00Z"), instant("2027-06-25T00:00:00Z")),
              std::vector<Night>());
    const Instant from = instant("2027-12-20T00:00:00Z");
    const Instant until = instant("2027-12-25T00:00:00Z");
    EXPECT_EQ(nightsBetween(north, from, until), std::vector<Night>({{from, until}}));
}

TEST(Nights, OutsideTheKnownYearsAreUnknown) {
    EXPECT_FALSE(nightsBetween(kSheetCentre, instant("2099-06-20T00:00:00Z"), instant("2099-06-21T00:00:00Z")));
}

/// The exercise's primary route by the light, from a start.
RouteFigures quillFrom(std::optional<Instant> start, plan::TimeRule rule = plan::TimeRule::ByLight) {
    const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
    plan::Heading heading = kettlePlan().heading();
    heading.timing = plan::Timing{rule, plan::Going::CrossCountry, {}};
    const plan::Plan plan = std::move(plan::PlanBuilder(kettlePlan()).heading(heading)).build();
    plan::Route route = *plan.routeNamed("QUILL");
    route.start = start;
    return *routeFigures(plan, route, &model.value(), nullptr);
}

// By hand: from 1700 the first 96.57 min carry 3862.7 m at 2.4 km/h, the other 1335.5 m take 50.08 min at 1.6.
TEST(RateByLight, ChangesInTheMiddleOfALegWhenTheNightBegins) {
    const RouteFigures quill = quillFrom(instant("2027-03-13T17:00:00-02:00"));
    EXPECT_EQ(rateText(quill, kZone), "2.4 km/h cross-country by day, 1.6 km/h by night from 1837, halts within");
    EXPECT_NEAR(quill.time->value(), 96.57 + (5198.188 - 96.57 * 40) * 0.0375, 0.1);
    ASSERT_GE(quill.progress.spans.size(), 2U);
    EXPECT_NEAR(quill.progress.spans[1].from.value(), 96.57 * 40, 6);  // between CP 3 and CP 4
    EXPECT_NEAR(quill.legs[2].timeSoFar->value(), 2711.607 * 0.025, 0.01);
}

TEST(RateByLight, ByNightIsTheOneRateOfTheHandCheck) {
    const RouteFigures quill = quillFrom(instant("2027-03-13T21:00:00-02:00"));
    EXPECT_NEAR(quill.time->value(), 194.93, 0.01);
    EXPECT_EQ(rateText(quill, kZone), "1.6 km/h cross-country by night, halts within");
}

TEST(RateByLight, WithoutAStartTheSlowerRateIsTakenAndSaid) {
    const RouteFigures quill = quillFrom(std::nullopt);
    EXPECT_NEAR(quill.time->value(), 194.93, 0.01);
    EXPECT_EQ(rateText(quill, kZone), "1.6 km/h cross-country by night, since the light is not known, halts within");
}

TEST(RateByLight, AHikingRuleIsNamedBesideDoctrine) {
    const RouteFigures quill = quillFrom(instant("2027-03-13T21:00:00-02:00"), plan::TimeRule::Tobler);
    EXPECT_EQ(rateText(quill, kZone),
              "the slower of Tobler (no halts within) and 1.6 km/h cross-country by night, halts within");
    EXPECT_FALSE(quill.legs[0].pieces[0].slowed);
}

}  // namespace
}  // namespace crosstick::movement
