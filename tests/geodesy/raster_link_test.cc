#include "core/geodesy/raster_link.h"

#include <random>

#include <gtest/gtest.h>

#include "core/geodesy/crs.h"
#include "core/geodesy/faults.h"

namespace crosstick::geodesy {
namespace {

// Slow oracle: the plane's own latitude and longitude, by GeographicLib.
TEST(RasterLink, LawDegreesAreThoseOfThePlane) {
    std::mt19937 chance(std::random_device{}());
    const auto seed = chance();
    SCOPED_TRACE(seed);
    chance.seed(seed);
    const auto link = RasterLink::between("EPSG:32625", "EPSG:4326");
    const auto plane = Plane::of("EPSG:32625");
    ASSERT_TRUE(link && plane);
    for (int n = 0; n < 500; ++n) {
        const PlanePoint p{Metres(300000 + static_cast<double>(chance() % 400000)),
                           Metres(100000 + static_cast<double>(chance() % 8000000))};
        const auto numbers = link->numbersAt(p);
        const auto place = plane->geographic(p);
        ASSERT_TRUE(numbers && place);
        EXPECT_NEAR((*numbers)[0], place->longitude.value(), 1e-9);
        EXPECT_NEAR((*numbers)[1], place->latitude.value(), 1e-9);
    }
}

TEST(RasterLink, InTheSamePlaneNumbersAreItsOwnInItsUnit) {
    const auto metres = RasterLink::between("EPSG:32625", "EPSG:32625");
    ASSERT_TRUE(metres.has_value());
    EXPECT_EQ(metres->numbersAt({Metres(650000), Metres(5100000)}), (std::array{650000.0, 5100000.0}));
    // California zone 1 counts in US survey feet of 1200/3937 m (EPSG unit 9003).
    const auto feet = RasterLink::between("EPSG:2225", "EPSG:2225");
    ASSERT_TRUE(feet.has_value());
    const auto numbers = feet->numbersAt({Metres(1200), Metres(2400)});
    ASSERT_TRUE(numbers.has_value());
    EXPECT_NEAR((*numbers)[0], 3937, 1e-6);
    EXPECT_NEAR((*numbers)[1], 7874, 1e-6);
}

// A degree of the mean sphere (6,371,008.8 m, IUGG) is 111,195 m; at 60 degrees half of it eastward.
TEST(RasterLink, AUnitIsAsLongAsItsPlaceMakesIt) {
    const auto link = RasterLink::between("EPSG:32625", "EPSG:4326");
    ASSERT_TRUE(link.has_value());
    const auto unit = link->unitAt({-33, 60});
    EXPECT_NEAR(unit[0].value(), 55597.5, 1);
    EXPECT_NEAR(unit[1].value(), 111195.1, 1);
    const auto plane = RasterLink::between("EPSG:32625", "EPSG:32626");
    EXPECT_EQ(plane->unitAt({500000, 5000000})[0], Metres(1));
}

TEST(RasterLink, WhatIsNoGridOrTooFarIsNothing) {
    EXPECT_EQ(RasterLink::between("EPSG:4326", "EPSG:4326").error().fault, kCrsNotProjected);
    EXPECT_EQ(RasterLink::between("EPSG:32625", "no such grid").error().fault, kUnknownCrs);
    const auto link = RasterLink::between("EPSG:32625", "EPSG:4326");
    EXPECT_FALSE(link->numbersAt({Metres(1e30), Metres(1e30)}).has_value());
}

}  // namespace
}  // namespace crosstick::geodesy
