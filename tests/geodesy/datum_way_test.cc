#include <gtest/gtest.h>

#include "core/geodesy/crs.h"
#include "core/geodesy/datum_shift.h"
#include "core/geodesy/faults.h"

namespace crosstick::geodesy {
namespace {

PlanePoint placeIn(const char* crs, double latitude, double longitude) {
    const auto plane = Plane::of(crs);
    EXPECT_TRUE(plane.has_value());
    return plane->plane({Degrees(latitude), Degrees(longitude)}).value_or(PlanePoint{});
}

TEST(DatumWay, OnWgs84ThereIsNoneToGo) {
    const auto way = datumWay("EPSG:32625", placeIn("EPSG:32625", 46, -31));
    ASSERT_TRUE(way.has_value());
    EXPECT_EQ(way->name, "");
    EXPECT_FALSE(way->accuracy.has_value());
    EXPECT_EQ(way->missingGrid, "");
}

// The EPSG register as PROJ has it: "NAD27 to WGS 84 (7)" serves Alaska's mainland, 12 m; (85) needs a grid, 5 m. From
// projinfo -s EPSG:26705 -t EPSG:4326 --summary --bbox -153,64,-152,65 --grid-check none.
TEST(DatumWay, InAlaskaABetterGridIsMissing) {
    const auto way = datumWay("EPSG:26705", placeIn("EPSG:26705", 64.5, -152.5));
    ASSERT_TRUE(way.has_value());
    EXPECT_EQ(way->name, "NAD27 to WGS 84 (7)");
    EXPECT_EQ(way->accuracy, Metres(12));
    EXPECT_NE(way->missingGrid.find("alaska"), std::string::npos) << way->missingGrid;
    ASSERT_TRUE(way->accuracyWithGrid.has_value());
    EXPECT_LT(way->accuracyWithGrid->value(), 12);
}

// Places of one datum take different ways: the register has one for each region.
TEST(DatumWay, IsThatOfThePlace) {
    const auto germany = datumWay("EPSG:23032", placeIn("EPSG:23032", 50, 9));
    const auto malta = datumWay("EPSG:23033", placeIn("EPSG:23033", 35.9, 14.4));
    ASSERT_TRUE(germany && malta);
    EXPECT_NE(germany->name.find("ED50"), std::string::npos) << germany->name;
    EXPECT_NE(malta->name.find("ED50"), std::string::npos) << malta->name;
    EXPECT_NE(germany->name, malta->name);
}

TEST(DatumWay, WhatIsNoPlaneIsAFault) {
    EXPECT_EQ(datumWay("EPSG:4326", {}).error().fault, kCrsNotProjected);
    EXPECT_EQ(datumWay("no such grid", {}).error().fault, kUnknownCrs);
}

}  // namespace
}  // namespace crosstick::geodesy
