#include "core/sheets/elevation.h"

#include <atomic>
#include <cmath>
#include <thread>
#include <vector>

#include <gdal_priv.h>
#include <gtest/gtest.h>

#include "core/geodesy/crs.h"
#include "core/sheets/faults.h"
#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"

namespace crosstick::sheets {
namespace {

using testing::Depth;
using testing::Folder;
using testing::makeSheet;

geodesy::PlanePoint at(double easting, double northing) {
    return {Metres(easting), Metres(northing)};
}

Result<std::shared_ptr<const Elevation>> opened(const std::filesystem::path& file, const char* plane = "EPSG:32625",
                                                HeightUnit unit = HeightUnit::Metre) {
    return Elevation::read(testing::reader(), file, unit, plane);
}

/// Ten-metre cells; the upper left one has its middle at E 650005, N 5099995.
testing::Recipe model(Depth depth, std::function<double(int, int, int)> value) {
    return {.columns = 10,
            .rows = 8,
            .depth = depth,
            .placement = {650000, 10, 0, 5100000, 0, -10},
            .value = std::move(value)};
}

TEST(Elevation, CellsHoldTheirHeightAtTheirMiddle) {
    const Folder folder;
    makeSheet(folder / "m.tif", model(Depth::Float, [](int column, int row, int) { return 100 + column + 10 * row; }));
    const auto heights = opened(folder / "m.tif");
    ASSERT_TRUE(heights.has_value());
    EXPECT_EQ((*heights)->heightAt(at(650005, 5099995)), Metres(100));
    EXPECT_EQ((*heights)->heightAt(at(650025, 5099985)), Metres(112));
    // A slope that is a plane is met everywhere: 1 m to 10 m east, 10 m to 10 m south.
    EXPECT_NEAR((*heights)->heightAt(at(650017.5, 5099981))->value(), 100 + 1.25 + 14, 1e-9);
    EXPECT_EQ((*heights)->cell(), Metres(10));
}

TEST(Elevation, NothingOutsideTheMiddlesOfTheOuterCells) {
    const Folder folder;
    makeSheet(folder / "m.tif", model(Depth::Float, [](int, int, int) { return 5; }));
    const auto heights = *opened(folder / "m.tif");
    EXPECT_FALSE(heights->heightAt(at(650004.9, 5099990)).has_value());
    EXPECT_FALSE(heights->heightAt(at(650050, 5099996)).has_value());
    EXPECT_TRUE(heights->heightAt(at(650095, 5099925)).has_value());
    EXPECT_FALSE(heights->heightAt(at(650095.1, 5099925)).has_value());
    EXPECT_FALSE(heights->heightAt(at(std::nan(""), 5099925)).has_value());
}

TEST(Elevation, AHoleGivesNothingAndItsRimKeepsItsHeight) {
    const Folder folder;
    auto recipe = model(Depth::Int16, [](int column, int row, int) { return column == 3 && row == 3 ? -9999 : 40; });
    recipe.touch = [](GDALDataset& dataset) { dataset.GetRasterBand(1)->SetNoDataValue(-9999); };
    makeSheet(folder / "m.tif", recipe);
    const auto heights = *opened(folder / "m.tif");
    EXPECT_FALSE(heights->heightAt(at(650035, 5099965)).has_value());
    EXPECT_FALSE(heights->heightAt(at(650030, 5099968)).has_value());
    EXPECT_EQ(heights->heightAt(at(650025, 5099965)), Metres(40));
}

TEST(Elevation, ScaleAndOffsetOfTheBandAreTaken) {
    const Folder folder;
    auto recipe = model(Depth::Int16, [](int, int, int) { return 300; });
    recipe.touch = [](GDALDataset& dataset) {
        dataset.GetRasterBand(1)->SetScale(0.5);
        dataset.GetRasterBand(1)->SetOffset(-20);
    };
    makeSheet(folder / "m.tif", recipe);
    EXPECT_EQ((*opened(folder / "m.tif"))->heightAt(at(650050, 5099950)), Metres(130));
}

// One international foot is 0.3048 m, one US survey foot 1200/3937 m (NIST SP 811).
TEST(Elevation, FeetBecomeMetresAndAnUnclearUnitIsAskedFor) {
    const Folder folder;
    auto recipe = model(Depth::Float, [](int, int, int) { return 1000; });
    recipe.heightUnit = "";
    makeSheet(folder / "m.tif", recipe);
    const auto unclear = opened(folder / "m.tif", "EPSG:32625", HeightUnit::Unclear);
    ASSERT_FALSE(unclear.has_value());
    EXPECT_EQ(unclear.error().fault, kHeightUnit);
    const auto middle = at(650050, 5099950);
    EXPECT_NEAR((*opened(folder / "m.tif", "EPSG:32625", HeightUnit::Foot))->heightAt(middle)->value(), 304.8, 1e-4);
    EXPECT_NEAR((*opened(folder / "m.tif", "EPSG:32625", HeightUnit::SurveyFoot))->heightAt(middle)->value(),
                1000 * 1200.0 / 3937, 1e-4);
    recipe.heightUnit = "ft";
    makeSheet(folder / "ft.tif", recipe);
    // What the file says goes before what the plan says.
    EXPECT_NEAR((*opened(folder / "ft.tif"))->heightAt(middle)->value(), 304.8, 1e-4);
}

TEST(Elevation, AModelInDegreesIsAskedInMetresOfThePlan) {
    const Folder folder;
    makeSheet(folder / "m.tif", {.columns = 200,
                                 .rows = 200,
                                 .depth = Depth::Int16,
                                 .crs = "EPSG:4326",
                                 .placement = {-31.1, 0.001, 0, 46.1, 0, -0.001},
                                 .value = [](int column, int row, int) { return column + row; }});
    const auto heights = opened(folder / "m.tif");
    ASSERT_TRUE(heights.has_value());
    const auto plane = geodesy::Plane::of("EPSG:32625");
    const auto place = plane->plane({Degrees(46.0), Degrees(-31.0)});
    ASSERT_TRUE(place.has_value());
    // Column 100, row 100 begin there: the four cells round it hold 198, 199, 199 and 200.
    EXPECT_NEAR((*heights)->heightAt(*place)->value(), 199, 1e-6);
    // A degree of latitude is 111.2 km of the mean sphere.
    EXPECT_NEAR((*heights)->cell().value(), 111.2, 0.1);
}

TEST(Elevation, APictureIsNoModel) {
    const Folder folder;
    makeSheet(folder / "a.tif", {.bands = 3});
    const auto heights = opened(folder / "a.tif");
    ASSERT_FALSE(heights.has_value());
    EXPECT_EQ(heights.error().fault, kNotHeights);
}

TEST(Elevation, AModelOfAnotherZoneIsAskedThroughItsOwnPlaneByAnyThread) {
    const Folder folder;
    makeSheet(folder / "m.tif", model(Depth::Float, [](int column, int row, int) { return column + 10 * row; }));
    const auto own = *opened(folder / "m.tif");
    const auto neighbour = *opened(folder / "m.tif", "EPSG:32626");
    const auto link = geodesy::PlaneLink::between("EPSG:32625", "EPSG:32626");
    ASSERT_TRUE(link.has_value());
    const auto there = link->forward(at(650042, 5099953));
    ASSERT_TRUE(there.has_value());
    const double expected = own->heightAt(at(650042, 5099953))->value();
    std::atomic<int> wrong = 0;
    std::vector<std::thread> threads;
    threads.reserve(4);
    for (int n = 0; n < 4; ++n) {
        threads.emplace_back([&] {
            for (int turn = 0; turn < 500; ++turn) {
                const auto height = neighbour->heightAt(*there);
                wrong += height && std::abs(height->value() - expected) < 1e-5 ? 0 : 1;
            }
        });
    }
    for (std::thread& thread : threads) {
        thread.join();
    }
    EXPECT_EQ(wrong, 0);
}

}  // namespace
}  // namespace crosstick::sheets
