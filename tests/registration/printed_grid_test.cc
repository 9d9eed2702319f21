// Crossings as sheets print them.
#include "core/registration/printed_grid.h"

#include <gtest/gtest.h>

#include "core/geodesy/faults.h"
#include "core/registration/faults.h"

namespace crosstick::registration {
namespace {

geodesy::PlanePoint read(PrintedGrid& grid, const char* text) {
    const auto place = grid.read(text);
    EXPECT_TRUE(place.has_value()) << text << ": " << (place ? "" : place.error().fault.name);
    return place.value_or(geodesy::PlanePoint{});
}

geodesy::PlanePoint at(double easting, double northing) {
    return {Metres(easting), Metres(northing)};
}

TEST(PrintedGrid, FiguresBelongToTheSquareThatWasNamed) {
    // 18S UJ: easting 300 to 400 km; northing 4300 to 4400 km (18S UJ 2348 0647 lies at 323480 4306470).
    auto grid = PrintedGrid::of("", "18S UJ");
    ASSERT_TRUE(grid.has_value());
    EXPECT_EQ(grid->crs(), "EPSG:32618");
    EXPECT_EQ(read(*grid, "45 62"), at(345000, 4362000));
    EXPECT_EQ(read(*grid, "4562"), at(345000, 4362000));
    EXPECT_EQ(read(*grid, "453 627"), at(345300, 4362700));
    EXPECT_EQ(read(*grid, "UJ 46 63"), at(346000, 4363000));
    EXPECT_EQ(read(*grid, "18S UJ 47 64"), at(347000, 4364000));
    EXPECT_EQ(read(*grid, "323000 4306000"), at(323000, 4306000));
    EXPECT_EQ(read(*grid, "323000.25 4306000.5"), at(323000.25, 4306000.5));
}

TEST(PrintedGrid, FiguresGoOnPastTheEdgeOfASquare) {
    auto grid = PrintedGrid::of("", "");
    ASSERT_TRUE(grid.has_value());
    EXPECT_EQ(read(*grid, "18S UJ 98 98"), at(398000, 4398000));
    EXPECT_EQ(read(*grid, "02 01"), at(402000, 4401000));
    EXPECT_EQ(read(*grid, "97 03"), at(397000, 4403000));
}

TEST(PrintedGrid, FiguresAloneNeedASquare) {
    auto grid = PrintedGrid::of("EPSG:32618");
    ASSERT_TRUE(grid.has_value());
    EXPECT_EQ(grid->read("45 62").error().fault, kNoSquare);
    EXPECT_EQ(grid->read("45 627").error().fault, geodesy::kUnequalDigits);
    auto bare = PrintedGrid::of("");
    EXPECT_EQ(bare->read("323000 4306000").error().fault, kNoGrid);
}

TEST(PrintedGrid, AReferenceStandsAsPrintedInAZoneOfItsOwnOnAnyDatum) {
    // EPSG:23032 is ED50 / UTM 32N: what the sheet prints is its own grid, 80 m and 200 m from that of WGS 84.
    auto grid = PrintedGrid::of("EPSG:23032");
    ASSERT_TRUE(grid.has_value());
    EXPECT_EQ(read(*grid, "32T PS 45 62"), at(645000, 5162000));
    EXPECT_EQ(read(*grid, "46 63"), at(646000, 5163000));
}

// Ruby, Alaska, 1:250,000: graticule crosses on NAD27 and their places in UTM 5 on NAD27, by PROJ's cs2cs apart.
TEST(PrintedGrid, LatitudeAndLongitudeAreOfTheSheetsOwnDatum) {
    auto grid = PrintedGrid::of("EPSG:26705");
    ASSERT_TRUE(grid.has_value());
    const auto corner = read(*grid, "65 -156");
    EXPECT_NEAR(corner.easting.value(), 358565.69, 0.01);
    EXPECT_NEAR(corner.northing.value(), 7211618.36, 0.01);
    const auto cross = read(*grid, "64 15 00N 155 30 00W");
    EXPECT_NEAR(cross.easting.value(), 378832.22, 0.01);
    EXPECT_NEAR(cross.northing.value(), 7127058.93, 0.01);
}

TEST(PrintedGrid, OnAnotherGridAReferenceIsBroughtOver) {
    // Zone 33 of a place that is written in zone 32: PROJ, EPSG:32632 to 32633.
    auto grid = PrintedGrid::of("EPSG:32633");
    ASSERT_TRUE(grid.has_value());
    const auto link = geodesy::PlaneLink::between("EPSG:32632", "EPSG:32633");
    const auto wanted = link->forward(at(745000, 5162000));
    const auto place = read(*grid, "32 north 745000 5162000");
    EXPECT_NEAR(place.easting.value(), wanted->easting.value(), 1e-3);
    EXPECT_NEAR(place.northing.value(), wanted->northing.value(), 1e-3);
}

TEST(PrintedGrid, RefusesWhatNoSheetPrints) {
    auto grid = PrintedGrid::of("", "18S UJ");
    for (const char* text : {"", "north", "45", "91 0 0", "18S", "18S UJ 45 6", "99Z ZZ 11 11"}) {
        EXPECT_FALSE(grid->read(text).has_value()) << text;
    }
    EXPECT_FALSE(grid->read(std::string(5000, '4')).has_value());
    EXPECT_FALSE(PrintedGrid::of("EPSG:4326").has_value());
    EXPECT_FALSE(PrintedGrid::of("", "somewhere").has_value());
}

}  // namespace
}  // namespace crosstick::registration
