#include "core/geodesy/geodesic.h"

#include <cmath>
#include <random>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "core/geodesy/plane_angles.h"
#include "outside_program.h"

namespace crosstick::geodesy {
namespace {

GeoPoint place(double latitude, double longitude) {
    return {Degrees(latitude), Degrees(longitude)};
}

constexpr double sexagesimal(double degrees, double minutes, double seconds) {
    return degrees + minutes / 60 + seconds / 3600;
}

// ICSM GDA Technical Manual, Flinders Peak to Buninyong: 54,972.271 m, forward 306 52 05.37, reverse 127 10 25.07. It
// is on GRS80, whose ellipsoid differs from WGS 84's by 0.1 mm in the minor half axis: nothing shows at these digits.
TEST(Geodesic, FlindersPeakToBuninyong) {
    const GeoPoint flindersPeak = place(-sexagesimal(37, 57, 3.72030), sexagesimal(144, 25, 29.52440));
    const GeoPoint buninyong = place(-sexagesimal(37, 39, 10.15610), sexagesimal(143, 55, 35.38390));
    const Geodesic line = geodesic(flindersPeak, buninyong);
    EXPECT_NEAR(line.distance.value(), 54972.271, 5e-4);
    EXPECT_NEAR(line.azimuthAtStart.value(), sexagesimal(306, 52, 5.3731), 1e-8 + 0.00005 / 3600);
    // The onward azimuth at the end; the manual prints it from there back.
    EXPECT_NEAR(backAzimuth(line.azimuthAtEnd).value(), sexagesimal(127, 10, 25.0703), 1e-8 + 0.00005 / 3600);
}

// GeographicLib, tests of GeodSolve.
TEST(Geodesic, AgreesWithTheLibrarysOwnCheckValues) {
    const Geodesic paris = geodesic(place(40.6, -73.8), place(sexagesimal(49, 1, 0), sexagesimal(2, 33, 0)));
    EXPECT_NEAR(paris.azimuthAtStart.value(), 53.47022, 5e-6);
    EXPECT_NEAR(paris.azimuthAtEnd.value(), 111.59367, 5e-6);
    EXPECT_NEAR(paris.distance.value(), 5853226, 0.5);
    EXPECT_NEAR(geodesic(place(36.493349428792, 0), place(36.49334942879201, 0.0000008)).distance.value(), 0.072, 5e-4);
    EXPECT_NEAR(geodesic(place(88.202499451857, 0), place(-88.202499451857, 179.981022032992859592)).distance.value(),
                20003898.214, 5e-4);
}

// The same direct problem backwards: 40 38 23 N 73 46 44 W, azimuth 53.5, 5850 km ends at 49.01467 2.56106.
TEST(Geodesic, UndoesTheDirectProblem) {
    const Geodesic line = geodesic(place(sexagesimal(40, 38, 23), -sexagesimal(73, 46, 44)), place(49.01467, 2.56106));
    EXPECT_NEAR(line.azimuthAtStart.value(), 53.5, 2e-5);
    EXPECT_NEAR(line.distance.value(), 5850e3, 1);
    EXPECT_NEAR(line.azimuthAtEnd.value(), 111.62947, 2e-5);
}

// Karney's GeodTest.dat, first line.
TEST(Geodesic, AgreesWithTheTestSetOfKarney) {
    const Geodesic line = geodesic(place(36.530042355041, 0), place(-48.164270779097768864, 5.762344694676510456));
    EXPECT_NEAR(line.distance.value(), 9398502.0434687, 2e-8 + 1e-6);
    EXPECT_NEAR(line.azimuthAtStart.value(), 176.125875162171, 1e-12);
    EXPECT_NEAR(line.azimuthAtEnd.value(), 175.334308316285410561, 1e-12);
}

TEST(Geodesic, OfNoLengthHasNoAzimuth) {
    const Geodesic line = geodesic(place(46, -31), place(46, -31));
    EXPECT_EQ(line.distance.value(), 0);
    EXPECT_FALSE(isFinite(line.azimuthAtStart));
    EXPECT_FALSE(isFinite(line.azimuthAtEnd));
}

TEST(Geodesic, IsAsLongBackAsForth) {
    constexpr unsigned kSeed = 54972;
    SCOPED_TRACE(kSeed);
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> latitude(-89, 89);
    std::uniform_real_distribution<double> longitude(-180, 180);
    for (int n = 0; n < 2000; ++n) {
        const GeoPoint a = place(latitude(random), longitude(random));
        const GeoPoint b = place(latitude(random), longitude(random));
        const Geodesic forth = geodesic(a, b);
        const Geodesic back = geodesic(b, a);
        ASSERT_NEAR(forth.distance.value(), back.distance.value(), 1e-7);
        ASSERT_NEAR(std::remainder(forth.azimuthAtStart.value() - backAzimuth(back.azimuthAtEnd).value(), 360), 0,
                    1e-8);
    }
}

TEST(Geodesic, AgreesWithGeodSolve) {
    constexpr unsigned kSeed = 306;
    SCOPED_TRACE(kSeed);
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> latitude(-85, 85);
    std::uniform_real_distribution<double> longitude(-179, 179);
    std::uniform_real_distribution<double> step(-0.05, 0.05);
    std::vector<std::string> lines;
    std::vector<Geodesic> ours;
    for (int n = 0; n < 300; ++n) {
        const GeoPoint a = place(latitude(random), longitude(random));
        const GeoPoint b = place(a.latitude.value() + step(random), a.longitude.value() + step(random));
        lines.push_back(fmt::format("{} {} {} {}", a.latitude.value(), a.longitude.value(), b.latitude.value(),
                                    b.longitude.value()));
        ours.push_back(geodesic(a, b));
    }
    const auto answers = answersOf("GeodSolve -i -p 6", lines);
    ASSERT_EQ(answers.size(), lines.size()) << answers[0];
    for (std::size_t n = 0; n < lines.size(); ++n) {
        const auto theirs = numbersIn(answers[n]);
        ASSERT_EQ(theirs.size(), 3U) << answers[n];
        ASSERT_NEAR(std::remainder(theirs[0] - ours[n].azimuthAtStart.value(), 360), 0, 1e-8) << lines[n];
        ASSERT_NEAR(std::remainder(theirs[1] - ours[n].azimuthAtEnd.value(), 360), 0, 1e-8) << lines[n];
        ASSERT_NEAR(theirs[2], ours[n].distance.value(), 2e-6) << lines[n];
    }
}

}  // namespace
}  // namespace crosstick::geodesy
