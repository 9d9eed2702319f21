#include "core/geodesy/plane_angles.h"

#include <cmath>
#include <limits>
#include <random>

#include <gtest/gtest.h>

namespace crosstick::geodesy {
namespace {

PlanePoint at(double easting, double northing) {
    return {Metres(easting), Metres(northing)};
}

constexpr double kNotANumber = std::numeric_limits<double>::quiet_NaN();

// FM 21-26 ch. 6 Direction: add 180 if 180 or less, subtract if 180 or more.
TEST(BackAzimuth, IsTheOneOfTheFieldManual) {
    EXPECT_EQ(backAzimuth(Degrees(45)).value(), 225);
    EXPECT_EQ(backAzimuth(Degrees(225)).value(), 45);
    EXPECT_EQ(backAzimuth(Degrees(320)).value(), 140);
    EXPECT_EQ(backAzimuth(Degrees(180)).value(), 0);
    EXPECT_EQ(backAzimuth(Degrees(0)).value(), 180);
}

TEST(BackAzimuth, TwiceIsTheAzimuthItself) {
    constexpr unsigned kSeed = 180;
    SCOPED_TRACE(kSeed);
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> any(0, 360);
    for (int n = 0; n < 10000; ++n) {
        const Degrees azimuth(any(random));
        const Degrees back = backAzimuth(azimuth);
        ASSERT_GE(back.value(), 0);
        ASSERT_LT(back.value(), 360);
        ASSERT_NEAR(backAzimuth(back).value(), azimuth.value(), 1e-12);
    }
}

// Worked examples of soldier task 071-329-1006 and FM 21-26 ch. 6: easterly angles are added from magnetic to grid,
// westerly ones subtracted.
TEST(MagneticAzimuth, AgreesWithTheWorkedExamples) {
    const Degrees nineEast(9);
    EXPECT_EQ(magneticAzimuth(Degrees(199), nineEast).value(), 190);
    const Degrees eightWest(-8);
    EXPECT_EQ(magneticAzimuth(Degrees(262), eightWest).value(), 270);
    const Degrees sixteenEast(16);
    EXPECT_EQ(magneticAzimuth(Degrees(2), sixteenEast).value(), 346);
    const Degrees sevenWest(-7);
    EXPECT_EQ(magneticAzimuth(Degrees(263), sevenWest).value(), 270);
}

// The relation itself: G-M angle = declination - convergence, so grid = magnetic + (D - gamma) and true - D = magnetic.
TEST(MagneticAzimuth, FollowsFromTrueAzimuthToo) {
    constexpr unsigned kSeed = 42;
    SCOPED_TRACE(kSeed);
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> angle(-30, 30);
    std::uniform_real_distribution<double> full(0, 360);
    for (int n = 0; n < 1000; ++n) {
        const Degrees declination(angle(random));
        const Degrees convergence(angle(random) / 10);
        const Degrees trueAzimuth(full(random));
        const Degrees grid = fullCircle(trueAzimuth - convergence);
        const double turned = magneticAzimuth(grid, gmAngle(declination, convergence)).value() -
                              fullCircle(trueAzimuth - declination).value();
        ASSERT_NEAR(std::remainder(turned, 360), 0, 1e-9);
    }
}

// London on 4 July 2026: declination 1.1628 east, convergence 2.2488 east; the G-M angle is west all the same.
TEST(GmAngle, CanBeWestWhereDeclinationIsEast) {
    EXPECT_NEAR(gmAngle(Degrees(1.1628), Degrees(2.2488)).value(), -1.086, 1e-9);
}

TEST(PlaneAzimuth, RunsClockwiseFromGridNorth) {
    EXPECT_EQ(planeAzimuth(at(0, 0), at(0, 5)).value(), 0);
    EXPECT_EQ(planeAzimuth(at(0, 0), at(5, 0)).value(), 90);
    EXPECT_EQ(planeAzimuth(at(0, 0), at(0, -5)).value(), 180);
    EXPECT_EQ(planeAzimuth(at(0, 0), at(-5, 0)).value(), 270);
    EXPECT_NEAR(planeAzimuth(at(0, 0), at(-1, -1)).value(), 225, 1e-12);
    EXPECT_FALSE(std::signbit(planeAzimuth(at(0, 0), at(-0.0, 5)).value()));
}

TEST(PlaneAzimuth, OfNoLengthIsNotANumber) {
    EXPECT_FALSE(isFinite(planeAzimuth(at(3, 4), at(3, 4))));
    EXPECT_EQ(planeDistance(at(3, 4), at(3, 4)).value(), 0);
}

// Polar plot, own figures: azimuth 227 degrees over 2500 m is -1828.384, -1704.996.
TEST(PlaneAzimuth, UndoesAPolarPlot) {
    EXPECT_NEAR(planeAzimuth(at(0, 0), at(-1828.384, -1704.996)).value(), 227, 1e-4);
    EXPECT_NEAR(planeDistance(at(0, 0), at(-1828.384, -1704.996)).value(), 2500, 1e-3);
}

// FM 21-26 ch. 6 and TC 3-25.26: azimuths are read and plotted to 1 degree or 10 mils.
TEST(AzimuthText, IsWholeDegreesInThreeFigures) {
    EXPECT_EQ(azimuthText(Degrees(18.3301), AngleUnit::Degrees), "018");
    EXPECT_EQ(azimuthText(Degrees(92.4717), AngleUnit::Degrees), "092");
    EXPECT_EQ(azimuthText(Degrees(0.5), AngleUnit::Degrees), "001");
    EXPECT_EQ(azimuthText(Degrees(359.4), AngleUnit::Degrees), "359");
    EXPECT_EQ(azimuthText(Degrees(359.5), AngleUnit::Degrees), "000");
    EXPECT_EQ(azimuthText(Degrees(-0.2), AngleUnit::Degrees), "000");
}

TEST(AzimuthText, IsTensOfMilsInFourFigures) {
    EXPECT_EQ(azimuthText(Degrees(18.3301), AngleUnit::Mils), "0330");
    EXPECT_EQ(azimuthText(Degrees(92.4717), AngleUnit::Mils), "1640");
    EXPECT_EQ(azimuthText(Degrees(359.9), AngleUnit::Mils), "0000");
    EXPECT_EQ(azimuthText(Degrees(359.6), AngleUnit::Mils), "6390");
}

TEST(AzimuthText, OfNothingIsDashes) {
    EXPECT_EQ(azimuthText(Degrees(kNotANumber), AngleUnit::Degrees), "---");
    EXPECT_EQ(azimuthText(Degrees(kNotANumber), AngleUnit::Mils), "---");
}

TEST(DistanceText, IsToTenMetres) {
    EXPECT_EQ(distanceText(Metres(1080.013)), "1080");
    EXPECT_EQ(distanceText(Metres(463.897)), "460");
    EXPECT_EQ(distanceText(Metres(616.117)), "620");
    EXPECT_EQ(distanceText(Metres(5)), "10");
    EXPECT_EQ(distanceText(Metres(4.999)), "0");
    EXPECT_EQ(roundedDistance(Metres(616.117)).value(), 620);
    EXPECT_EQ(distanceText(Metres(kNotANumber)), "---");
}

}  // namespace
}  // namespace crosstick::geodesy
