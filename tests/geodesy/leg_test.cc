#include "core/geodesy/leg.h"

#include <cmath>

#include <gtest/gtest.h>

#include "core/geodesy/faults.h"
#include "tests/places.h"

namespace crosstick::geodesy {
namespace {

constexpr double kDeclination = -9.456438689;  // MagneticField, at the middle on 13 March 2027
constexpr double kConvergence = 1.4347658505;  // GeoConvert, there

const MagneticModel& model() {
    static const MagneticModel kModel = MagneticModel::open(places::share() / "magnetic").value();
    return kModel;
}

CalendarDate date(const char* text) {
    return parseIsoDate(text).value();
}

GridPoint zone25(double easting, double northing) {
    return {{25, Hemisphere::North}, {Metres(easting), Metres(northing)}};
}

GridPoint named(const char* text) {
    return parsePoint(text).value().southWest;
}

Leg leg(const GridPoint& from, const GridPoint& to, const char* day = "2027-03-13") {
    return legBetween(from, to, model(), date(day)).value();
}

// The first piece of the demo's primary route, by hand: GeoConvert, GeodSolve, MagneticField and atan2.
TEST(Leg, AgreesWithTheHandCheck) {
    const Leg found = leg(zone25(654270, 5098060), zone25(654330, 5098520));
    EXPECT_NEAR(found.grid->forward.value(), 7.4314, 5e-5);
    EXPECT_NEAR(found.grid->back.value(), 187.4314, 5e-5);
    EXPECT_NEAR(found.trueNorth->forward.value(), 8.8658, 5e-5);
    EXPECT_NEAR(found.gridDistance.value(), 463.897, 5e-4);
    EXPECT_NEAR(found.groundDistance.value(), 463.946, 5e-4);
    EXPECT_NEAR(found.middle.declination->declination.value(), kDeclination, 1e-6);
    EXPECT_NEAR(found.middle.grid.convergence.value(), kConvergence, 1e-8);
    EXPECT_NEAR(found.magnetic->forward.value(), 7.4314079 - (kDeclination - kConvergence), 1e-6);
    EXPECT_NEAR(found.magnetic->back.value(), found.magnetic->forward.value() + 180, 1e-12);
}

TEST(Leg, OfNoLengthHasNoAzimuth) {
    const Leg none = leg(zone25(654270, 5098060), zone25(654270, 5098060));
    EXPECT_FALSE(none.grid);
    EXPECT_FALSE(none.trueNorth);
    EXPECT_FALSE(none.magnetic);
    EXPECT_EQ(none.gridDistance.value(), 0);
    EXPECT_EQ(none.groundDistance.value(), 0);
    EXPECT_TRUE(none.middle.gmAngle);
}

TEST(Leg, StraightToGridNorthIsNoughtNotMinusNought) {
    const Leg north = leg(zone25(655200, 5100860), zone25(655200, 5101120));
    EXPECT_EQ(north.grid->forward.value(), 0);
    EXPECT_FALSE(std::signbit(north.grid->forward.value()));
    EXPECT_EQ(north.grid->back.value(), 180);
}

TEST(Leg, TakesTheFirstPointsZone) {
    const GridPoint west = named("52.0 5.99");
    const GridPoint east = named("52.0 6.01");
    ASSERT_EQ(west.zone.number, 31);
    ASSERT_EQ(east.zone.number, 32);
    const Leg out = leg(west, east);
    const Leg home = leg(east, west);
    EXPECT_EQ(out.to.zone.number, 31);
    EXPECT_EQ(home.to.zone.number, 32);
    EXPECT_NEAR(out.groundDistance.value(), home.groundDistance.value(), 1e-6);
    // The same true azimuths from both zones, and grid azimuths that differ by both convergences.
    EXPECT_NEAR(out.trueNorth->forward.value(), home.trueNorth->back.value(), 1e-6);
    EXPECT_NEAR((out.grid->forward + out.middle.grid.convergence).value(),
                (home.grid->back + home.middle.grid.convergence).value(), 2e-3);
    EXPECT_NEAR(out.magnetic->forward.value(), home.magnetic->back.value(), 2e-3);
}

TEST(Leg, CrossesTheEquatorInOnePlane) {
    const Leg north = leg(named("-0.001 3.5"), named("0.001 3.5"));
    EXPECT_EQ(north.to.zone.hemisphere, Hemisphere::South);
    EXPECT_NEAR(north.gridDistance.value(), 221.06, 0.1);
    EXPECT_NEAR(north.groundDistance.value(), 221.149, 0.01);
}

TEST(Leg, IsRefusedOutOfTheZonesReach) {
    const auto far = legBetween(named("52 5"), named("10 170"), model(), date("2027-03-13"));
    ASSERT_FALSE(far);
    EXPECT_EQ(far.error().fault, kOutsideZone);
}

TEST(Leg, WithoutADeclinationHasNoMagneticAzimuthAndSaysWhy) {
    const Leg old = leg(zone25(654270, 5098060), zone25(654330, 5098520), "2019-05-01");
    EXPECT_FALSE(old.magnetic);
    EXPECT_FALSE(old.middle.gmAngle);
    EXPECT_TRUE(old.grid);
    ASSERT_TRUE(old.middle.noDeclination);
    EXPECT_EQ(old.middle.noDeclination->fault, kDateOutsideModel);
}

TEST(Leg, WorksAtThePole) {
    const Leg polar = leg(named("89.99 0"), named("89.99 180"));
    EXPECT_EQ(polar.from.zone.number, 0);
    EXPECT_NEAR(polar.groundDistance.value(), 2 * 1116.94, 0.1);
    EXPECT_FALSE(polar.middle.noDeclination && polar.middle.declination);
}

TEST(Norths, GiveTheGmAngleAsDeclinationLessConvergence) {
    const auto found = norths(zone25(654000, 5100500), model(), date("2027-03-13"), Metres(0)).value();
    EXPECT_NEAR(found.gmAngle->value(), -10.894109, 1e-6);
    EXPECT_NEAR(found.grid.convergence.value(), 1.432971695, 1e-9);
}

}  // namespace
}  // namespace crosstick::geodesy
