#include "core/sheets/raster.h"

#include <random>

#include <gdal_priv.h>
#include <gtest/gtest.h>

#include "core/sheets/faults.h"
#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"

namespace crosstick::sheets {
namespace {

using testing::Depth;
using testing::Folder;
using testing::makeSheet;
using testing::Recipe;

void blackAndWhite(GDALDataset& dataset) {
    GDALColorTable table;
    const GDALColorEntry black{0, 0, 0, 255};
    const GDALColorEntry white{255, 255, 255, 255};
    const GDALColorEntry clearRed{255, 0, 0, 0};
    table.SetColorEntry(0, &black);
    table.SetColorEntry(1, &white);
    table.SetColorEntry(2, &clearRed);
    dataset.GetRasterBand(1)->SetColorTable(&table);
}

/// Our copy of a file, made by the reader.
Result<Raster> opened(const std::filesystem::path& file) {
    return testing::reader().sheet(file).and_then([](const auto& copy) { return Raster::open(copy); });
}

Pixels readAll(const std::filesystem::path& file, int columns, int rows) {
    const auto raster = opened(file);
    EXPECT_TRUE(raster.has_value());
    auto pixels = raster->read({0, 0, raster->columns(), raster->rows()}, columns, rows);
    EXPECT_TRUE(pixels.has_value());
    return *pixels;
}

TEST(Raster, PaletteIsAveragedAsColoursNotAsNumbers) {
    const Folder folder;
    makeSheet(
        folder / "a.tif",
        {.columns = 4, .rows = 4, .value = [](int column, int, int) { return column % 2; }, .touch = blackAndWhite});
    // Half black, half white: (2 * 0 + 2 * 255) / 4 = 127.5, up.
    for (const std::uint32_t pixel : readAll(folder / "a.tif", 2, 2).rgb) {
        EXPECT_EQ(pixel, 0xff808080U);
    }
}

TEST(Raster, TransparentInkOfAPaletteLiesOnWhite) {
    const Folder folder;
    makeSheet(folder / "a.tif", {.columns = 4,
                                 .rows = 4,
                                 .value = [](int, int, int) { return 2; },
                                 .touch =
                                     [](GDALDataset& dataset) {
                                         blackAndWhite(dataset);
                                         dataset.GetRasterBand(1)->SetNoDataValue(2);
                                     }});
    EXPECT_EQ(readAll(folder / "a.tif", 4, 4).rgb.front(), 0xffffffffU);
}

TEST(Raster, GreyRgbAndRgbaComeOutAsTheyAre) {
    const Folder folder;
    const auto ramp = [](int column, int row, int band) { return column + 2 * row + 50 * band; };
    makeSheet(folder / "grey.tif", {.bands = 1, .value = ramp});
    EXPECT_EQ(readAll(folder / "grey.tif", 64, 48).rgb[65], 0xff353535U);  // 1 + 2 + 50 = 53
    makeSheet(folder / "rgb.tif", {.bands = 3, .options = {"TILED=YES", "PHOTOMETRIC=RGB"}, .value = ramp});
    EXPECT_EQ(readAll(folder / "rgb.tif", 64, 48).rgb[65], 0xff356799U);  // 53, 103, 153
    makeSheet(folder / "rgba.tif", {.bands = 4,
                                    .options = {"PHOTOMETRIC=RGB", "ALPHA=YES"},
                                    .value = [](int column, int, int band) { return band < 4 ? 0 : column; }});
    const Pixels rgba = readAll(folder / "rgba.tif", 64, 48);
    EXPECT_EQ(rgba.rgb[0], 0xffffffffU);   // nothing over white
    EXPECT_EQ(rgba.rgb[51], 0xffccccccU);  // black of 51/255 over white
}

TEST(Raster, SixteenBitGreyIsCutToEight) {
    const Folder folder;
    makeSheet(folder / "a.tif", {.columns = 3, .rows = 1, .depth = Depth::UInt16, .value = [](int column, int, int) {
                                     return column * 32767.5;
                                 }});
    const Pixels pixels = readAll(folder / "a.tif", 3, 1);
    EXPECT_EQ(pixels.rgb[0], 0xff000000U);
    EXPECT_EQ(pixels.rgb[1], 0xff808080U);
    EXPECT_EQ(pixels.rgb[2], 0xffffffffU);
}

TEST(Raster, OutsideOfItIsTransparent) {
    const Folder folder;
    makeSheet(folder / "a.tif", {.columns = 4, .rows = 4, .value = [](int, int, int) { return 9; }});
    const auto raster = opened(folder / "a.tif");
    ASSERT_TRUE(raster.has_value());
    const auto part = raster->read({-2, -2, 4, 4}, 4, 4);
    ASSERT_TRUE(part.has_value());
    EXPECT_EQ(part->rgb[0], 0U);
    EXPECT_EQ(part->rgb[10], 0xff090909U);  // column 2, row 2 of the target: 0, 0 of the raster
    const auto off = raster->read({100, 100, 4, 4}, 2, 2);
    ASSERT_TRUE(off.has_value());
    EXPECT_EQ(off->rgb, std::vector<std::uint32_t>(4, 0));
}

// Our own levels are means of all pixels; a file's overviews may have dropped every second line.
TEST(Raster, OverviewsOfTheFileAreNotBelieved) {
    const Folder folder;
    makeSheet(folder / "a.tif", {.bands = 3, .options = {"PHOTOMETRIC=RGB"}});
    GDALDataset* dataset = GDALDataset::FromHandle(GDALOpen((folder / "a.tif").c_str(), GA_Update));
    int factor = 2;
    EXPECT_EQ(dataset->BuildOverviews("NEAREST", 1, &factor, 0, nullptr, nullptr, nullptr), CE_None);
    for (int band = 1; band <= 3; ++band) {
        EXPECT_EQ(dataset->GetRasterBand(band)->GetOverview(0)->Fill(77), CE_None);
    }
    GDALClose(GDALDataset::ToHandle(dataset));
    EXPECT_EQ(readAll(folder / "a.tif", 32, 24).rgb[0], 0xff000000U);
}

TEST(Raster, AFileThatIsNoCopyOfOursIsRefused) {
    const Folder folder;
    makeSheet(folder / "a.tif", {.bands = 3});
    const auto raster = Raster::open(folder / "a.tif");
    ASSERT_FALSE(raster.has_value());
    EXPECT_EQ(raster.error().fault, kDamaged);
}

// Every tile of every level against the mean over the blocks of pixels it stands for, counted one by one.
TEST(Raster, LawALevelIsTheMeanOfTheLevelBefore) {
    const unsigned seed = 20271126;
    std::mt19937 chance(seed);
    const Folder folder;
    makeSheet(folder / "a.tif",
              {.columns = 1301, .rows = 1027, .bands = 3, .options = {"PHOTOMETRIC=RGB"}, .value = [&](int, int, int) {
                   return static_cast<double>(chance() % 256);
               }});
    const auto raster = opened(folder / "a.tif");
    ASSERT_TRUE(raster.has_value());
    Pixels above = *raster->read({0, 0, 1301, 1027}, 1301, 1027);
    for (int level = 1; level <= 3; ++level) {
        const int columns = (above.columns + 1) / 2;
        const int rows = (above.rows + 1) / 2;
        const auto read = raster->read({0, 0, columns << level, rows << level}, columns, rows);
        ASSERT_TRUE(read.has_value());
        for (int n = 0; n < 500; ++n) {
            const int x = static_cast<int>(chance() % static_cast<unsigned>(columns));
            const int y = static_cast<int>(chance() % static_cast<unsigned>(rows));
            std::uint32_t expected = 0xff000000U;
            for (const unsigned shift : {0U, 8U, 16U}) {
                std::uint32_t sum = 2;
                for (int at = 0; at < 4; ++at) {
                    const int column = std::min(2 * x + at % 2, above.columns - 1);
                    const int row = std::min(2 * y + at / 2, above.rows - 1);
                    sum += (above.rgb[static_cast<std::size_t>(row) * static_cast<std::size_t>(above.columns) +
                                      static_cast<std::size_t>(column)] >>
                            shift) &
                           255U;
                }
                expected |= (sum / 4) << shift;
            }
            ASSERT_EQ(read->rgb[static_cast<std::size_t>(y) * static_cast<std::size_t>(columns) +
                                static_cast<std::size_t>(x)],
                      expected)
                << "level " << level << ", " << x << ", " << y << ", seed " << seed;
        }
        above = *read;
    }
}

std::size_t spot(int column, int row) {
    return static_cast<std::size_t>(row) * 64 + static_cast<std::size_t>(column);
}

TEST(Raster, LawAWindowIsThePartOfTheWhole) {
    const unsigned seed = 20270313;
    SCOPED_TRACE(seed);
    std::mt19937 chance(seed);
    const Folder folder;
    makeSheet(folder / "a.tif", {.bands = 3, .options = {"PHOTOMETRIC=RGB"}, .value = [&](int, int, int) {
                                     return static_cast<double>(chance() % 256);
                                 }});
    const auto raster = opened(folder / "a.tif");
    ASSERT_TRUE(raster.has_value());
    const auto whole = raster->read({0, 0, 64, 48}, 64, 48);
    ASSERT_TRUE(whole.has_value());
    for (int n = 0; n < 50; ++n) {
        const PixelWindow w{static_cast<int>(chance() % 60), static_cast<int>(chance() % 44), 4, 4};
        const auto part = raster->read(w, 1, 1);
        ASSERT_TRUE(part.has_value());
        // Slow oracle: the mean of sixteen pixels, channel by channel.
        std::uint32_t expected = 0xff000000U;
        for (const unsigned shift : {0U, 8U, 16U}) {
            std::uint32_t sum = 8;
            for (int at = 0; at < 16; ++at) {
                sum += (whole->rgb[spot(w.column + at % 4, w.row + at / 4)] >> shift) & 255U;
            }
            expected |= (sum / 16) << shift;
        }
        EXPECT_EQ(part->rgb[0], expected);
    }
}

}  // namespace
}  // namespace crosstick::sheets
