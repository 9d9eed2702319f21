#include <random>

#include <gdal_priv.h>
#include <gtest/gtest.h>

#include "core/sheets/sheet_file.h"
#include "tests/sheets/made_sheets.h"

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

Pixels readAll(const std::filesystem::path& file, int columns, int rows) {
    const auto raster = Raster::open(file);
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
    const auto raster = Raster::open(folder / "a.tif");
    ASSERT_TRUE(raster.has_value());
    const auto part = raster->read({-2, -2, 4, 4}, 4, 4);
    ASSERT_TRUE(part.has_value());
    EXPECT_EQ(part->rgb[0], 0U);
    EXPECT_EQ(part->rgb[10], 0xff090909U);  // column 2, row 2 of the target: 0, 0 of the raster
    const auto off = raster->read({100, 100, 4, 4}, 2, 2);
    ASSERT_TRUE(off.has_value());
    EXPECT_EQ(off->rgb, std::vector<std::uint32_t>(4, 0));
}

TEST(Raster, OverviewsOfColourAreUsedAndThoseOfPalettesAreNot) {
    const Folder folder;
    // An overview that says something else than the raster shows which of both was read.
    const auto liar = [&](const char* name, const Recipe& recipe) {
        makeSheet(folder / name, recipe);
        GDALDataset* dataset = GDALDataset::FromHandle(GDALOpen((folder / name).c_str(), GA_Update));
        int factor = 2;
        EXPECT_EQ(dataset->BuildOverviews("NEAREST", 1, &factor, 0, nullptr, nullptr, nullptr), CE_None);
        for (int band = 1; band <= dataset->GetRasterCount(); ++band) {
            EXPECT_EQ(dataset->GetRasterBand(band)->GetOverview(0)->Fill(1), CE_None);
        }
        GDALClose(GDALDataset::ToHandle(dataset));
    };
    liar("rgb.tif", {.bands = 3, .options = {"PHOTOMETRIC=RGB"}});
    EXPECT_EQ(readAll(folder / "rgb.tif", 32, 24).rgb[0], 0xff010101U);
    EXPECT_EQ(readAll(folder / "rgb.tif", 64, 48).rgb[0], 0xff000000U);
    liar("palette.tif", {.touch = blackAndWhite});
    EXPECT_EQ(readAll(folder / "palette.tif", 32, 24).rgb[0], 0xff000000U);
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
    const auto raster = Raster::open(folder / "a.tif");
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
