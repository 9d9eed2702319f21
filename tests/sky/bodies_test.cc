// Sun and moon against worked examples: Meeus, Astronomical Algorithms, 2nd edition (from public test suites that
// quote it, trade.md 8.2).
#include "core/sky/bodies.h"

#include <cmath>

#include <gtest/gtest.h>

namespace crosstick::sky {
namespace {

constexpr Degrees kObliquity1992{23.44023};  // Meeus 25.a

double radiansOf(double value) {
    return radians(Degrees(value)).value();
}

double degreesOf(double value) {
    return degrees(Radians(value)).value();
}

double length(const Vector& v) {
    return std::hypot(v[0], v[1], v[2]);
}

/// Midnight TD, which the bodies take for 69.2 s later than UT.
Bodies bodiesAt(const char* date, geodesy::GeoPoint place = {}) {
    const Instant midnight(std::chrono::sys_days(parseIsoDate(date).value()));
    return {place, midnight - std::chrono::seconds(69), Seconds(7200)};
}

// Example 25.a, the sun on 1992 October 13 at 0h TD by the short series, good to 0.01 degree; 25.b is the same by the
// long one (25.b from memory).
TEST(Bodies, SunStandsWhereTheWorkedExamplesHaveIt) {
    const Vector sun = bodiesAt("1992-10-13").sun(Seconds(0));
    const double ascension = degreesOf(std::atan2(sun[1], sun[0])) + 360;
    const double declination = degreesOf(std::asin(sun[2] / length(sun)));
    const double distance = length(sun) / 149597870.7;
    EXPECT_NEAR(ascension, 198.38083, 0.01);
    EXPECT_NEAR(declination, -7.78507, 0.01);
    EXPECT_NEAR(distance, 0.99766, 0.0001);
    EXPECT_NEAR(ascension, 198.378179, 0.0001);
    EXPECT_NEAR(declination, -7.783817, 0.0001);
    EXPECT_NEAR(distance, 0.99760775, 0.000002);
}

// Example 47.a: the moon on 1992 April 12 at 0h TD. The longitude there is that of the mean equinox; nutation that day
// was +0.004610 degree, and the sidereal time's equinox is the true one.
TEST(Bodies, MoonStandsWhereTheWorkedExampleHasIt) {
    const Vector moon = bodiesAt("1992-04-12").moon(Seconds(0));
    const double tilt = radiansOf(kObliquity1992.value());
    const double y = moon[1] * std::cos(tilt) + moon[2] * std::sin(tilt);
    const double z = moon[2] * std::cos(tilt) - moon[1] * std::sin(tilt);
    EXPECT_NEAR(degreesOf(std::atan2(y, moon[0])), 133.162655 + 0.004610, 0.003);
    EXPECT_NEAR(degreesOf(std::asin(z / length(moon))), -3.229126, 0.003);
    EXPECT_NEAR(length(moon), 368409.7, 20);
}

// Example 48.a: the moon is lit by 0.6786 on that day.
TEST(Bodies, MoonIsLitAsInTheWorkedExample) {
    EXPECT_NEAR(bodiesAt("1992-04-12").moonLit(Seconds(0)), 0.6786, 0.0002);
}

TEST(Bodies, HalfADegreeOfMoonIsSeenFromItsLimbDown) {
    const Bodies bodies = bodiesAt("2027-03-13", {Degrees(46), Degrees(-31)});
    const Degrees half = bodies.moonLimbAltitude(Seconds(0)) - bodies.moonAltitude(Seconds(0));
    EXPECT_GT(half, Degrees(14.6 / 60));  // the moon's half diameter goes from 14.7' to 16.8' (common knowledge)
    EXPECT_LT(half, Degrees(17.1 / 60));  // and grows by up to 1/60 overhead
}

TEST(Bodies, FivePositionsFollowTheBodiesForADay) {
    const Instant middle = Instant(std::chrono::sys_days(parseIsoDate("2027-06-21").value()));
    const geodesy::GeoPoint place{Degrees(70), Degrees(20)};
    const Bodies day(place, middle, Seconds(15.5 * 3600));
    for (int hour = -15; hour <= 15; ++hour) {
        const Bodies here(place, middle + std::chrono::hours(hour), Seconds(60));
        const Seconds at(hour * 3600.0);
        EXPECT_NEAR(day.sunAltitude(at).value(), here.sunAltitude(Seconds(0)).value(), 0.0001) << hour;
        EXPECT_NEAR(day.moonAltitude(at).value(), here.moonAltitude(Seconds(0)).value(), 0.0001) << hour;
    }
}

TEST(Bodies, HourAngleIsNothingWhereTheSunStandsHighest) {
    const Bodies bodies = bodiesAt("2027-06-21", {Degrees(30), Degrees(0)});
    const Seconds noon(43200 + 120.0);
    const double angle = bodies.sunHourAngle(noon).value();
    EXPECT_LT(std::min(angle, 360 - angle), 1);
    EXPECT_NEAR(bodies.sunAltitude(noon).value(), 90 - 30 + 23.43, 0.05);
}

}  // namespace
}  // namespace crosstick::sky
