#include "core/reading/foreign_raster.h"

#include <set>

#include <gdal_priv.h>
#include <gtest/gtest.h>

#include "core/reading/drivers.h"
#include "core/sheets/faults.h"
#include "tests/sheets/made_sheets.h"

namespace crosstick::reading {
namespace {

using sheets::Pixels;
using testing::Folder;
using testing::makeSheet;

Pixels numbered(int columns, int rows) {
    Pixels pixels{columns, rows, {}};
    for (int n = 0; n < columns * rows; ++n) {
        pixels.rgb.push_back(static_cast<std::uint32_t>(n));
    }
    return pixels;
}

// By hand, a picture of 3 by 2 as TIFF 6.0 counts orientations:
//   0 1 2
//   3 4 5
TEST(Turned, ByHand) {
    const auto rgb = [](int orientation) { return turned(numbered(3, 2), orientation).rgb; };
    using V = std::vector<std::uint32_t>;
    EXPECT_EQ(rgb(1), (V{0, 1, 2, 3, 4, 5}));
    EXPECT_EQ(rgb(2), (V{2, 1, 0, 5, 4, 3}));
    EXPECT_EQ(rgb(3), (V{5, 4, 3, 2, 1, 0}));
    EXPECT_EQ(rgb(4), (V{3, 4, 5, 0, 1, 2}));
    EXPECT_EQ(rgb(5), (V{0, 3, 1, 4, 2, 5}));
    EXPECT_EQ(rgb(6), (V{3, 0, 4, 1, 5, 2}));
    EXPECT_EQ(rgb(7), (V{5, 2, 4, 1, 3, 0}));
    EXPECT_EQ(rgb(8), (V{2, 5, 1, 4, 0, 3}));
}

TEST(Turned, LawNoPixelIsLostOrDoubled) {
    for (int orientation = 1; orientation <= 8; ++orientation) {
        const Pixels seen = turned(numbered(7, 5), orientation);
        EXPECT_EQ(seen.columns * seen.rows, 35);
        EXPECT_EQ(std::set<std::uint32_t>(seen.rgb.begin(), seen.rgb.end()).size(), 35U) << orientation;
    }
}

TEST(ForeignRaster, LawAWindowIsThePartOfTheWhole) {
    prepareDrivers();
    const Folder folder;
    makeSheet(folder / "a.tif",
              {.columns = 90, .rows = 60, .value = [](int c, int r, int) { return (c * 3 + r * 5) % 256; }});
    const auto raster = ForeignRaster::open(folder / "a.tif");
    ASSERT_TRUE(raster.has_value());
    const auto whole = raster->read({0, 0, 90, 60});
    const auto part = raster->read({20, 30, 40, 10});
    ASSERT_TRUE(whole && part);
    for (int y = 0; y < 10; ++y) {
        for (int x = 0; x < 40; ++x) {
            EXPECT_EQ(part->rgb[static_cast<std::size_t>(y * 40 + x)],
                      whole->rgb[static_cast<std::size_t>((30 + y) * 90 + 20 + x)]);
        }
    }
}

/// All rows of a glance, which must come one behind the other.
Pixels glanceOf(const ForeignRaster& raster, int longestSide) {
    Pixels whole;
    const auto shown = raster.glance(longestSide, [&](const sheets::messages::PictureRows& rows) {
        whole.columns = rows.columns;
        whole.rows = rows.rows;
        EXPECT_EQ(whole.rgb.size(), static_cast<std::size_t>(rows.first) * static_cast<std::size_t>(rows.columns));
        whole.rgb.insert(whole.rgb.end(), rows.rgb.begin(), rows.rgb.end());
    });
    EXPECT_TRUE(shown.has_value());
    return whole;
}

TEST(ForeignRaster, AGlanceHasEverySide) {
    prepareDrivers();
    const Folder folder;
    makeSheet(folder / "line.tif", {.columns = 5000, .rows = 1});
    const auto raster = ForeignRaster::open(folder / "line.tif");
    ASSERT_TRUE(raster.has_value());
    const Pixels glance = glanceOf(*raster, 100);
    EXPECT_EQ(glance.columns, 100);
    EXPECT_EQ(glance.rows, 1);
    EXPECT_EQ(glance.rgb.size(), 100U);
}

// Whatever rows are read at once, and however the file keeps its pixels: the one in the middle of each step.
TEST(ForeignRaster, LawAGlancePicksThePixelInTheMiddleOfEachStep) {
    prepareDrivers();
    const Folder folder;
    const auto value = [](int c, int r, int) { return (c * 3 + r * 7) % 256; };
    int number = 0;
    for (const std::vector<std::string>& options :
         {std::vector<std::string>{}, {"COMPRESS=LZW"}, {"TILED=YES", "COMPRESS=DEFLATE"}, {"BLOCKYSIZE=37"}}) {
        const auto file = folder / (std::to_string(++number) + ".tif").c_str();
        makeSheet(file, {.columns = 777, .rows = 1013, .options = options, .value = value});
        const auto raster = ForeignRaster::open(file);
        ASSERT_TRUE(raster.has_value());
        const Pixels glance = glanceOf(*raster, 300);
        ASSERT_EQ(glance.rows, 300);
        ASSERT_EQ(glance.columns, 230);
        for (int y = 0; y < glance.rows; ++y) {
            for (int x = 0; x < glance.columns; ++x) {
                const int column = static_cast<int>((x + 0.5) * 777 / 230);
                const int row = static_cast<int>((y + 0.5) * 1013 / 300);
                EXPECT_EQ(glance.rgb[static_cast<std::size_t>(y * 230 + x)] & 255U,
                          static_cast<std::uint32_t>(value(column, row, 0)))
                    << number << ": " << x << ", " << y;
            }
        }
    }
}

TEST(ForeignRaster, ComplexNumbersAreNoColours) {
    prepareDrivers();
    const Folder folder;
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    GDALClose(GDALDataset::ToHandle(driver->Create((folder / "a.tif").c_str(), 8, 8, 1, GDT_CFloat32, nullptr)));
    const auto raster = ForeignRaster::open(folder / "a.tif");
    ASSERT_FALSE(raster.has_value());
    EXPECT_EQ(raster.error().fault, sheets::kColours);
}

}  // namespace
}  // namespace crosstick::reading
