#include <random>

#include <gtest/gtest.h>

#include "core/reading/drivers.h"
#include "core/reading/pyramid_writer.h"
#include "core/sheets/raster.h"
#include "tests/sheets/made_sheets.h"

namespace crosstick::reading {
namespace {

using sheets::Pixels;

std::vector<std::uint32_t> chanceColours(std::mt19937& chance, int count) {
    std::vector<std::uint32_t> rgb;
    for (int n = 0; n < count; ++n) {
        rgb.push_back(0xff000000U | (chance() & 0xffffffU));
    }
    return rgb;
}

// Slow oracle: each part of each colour by itself, the last column and row of odd sizes counted twice.
TEST(Halved, LawEachPixelIsTheMeanOfItsFour) {
    std::mt19937 chance(std::random_device{}());
    const auto seed = chance();
    SCOPED_TRACE(seed);
    chance.seed(seed);
    for (int turn = 0; turn < 200; ++turn) {
        const int columns = 1 + static_cast<int>(chance() % 9);
        const int rows = 1 + static_cast<int>(chance() % 9);
        const auto rgb = chanceColours(chance, columns * rows);
        const auto half = halved(rgb.data(), columns, rows);
        const int across = (columns + 1) / 2;
        ASSERT_EQ(half.size(), static_cast<std::size_t>(across * ((rows + 1) / 2)));
        for (int n = 0; n < static_cast<int>(half.size()); ++n) {
            std::uint32_t expected = 0xff000000U;
            for (const unsigned shift : {0U, 8U, 16U}) {
                std::uint32_t sum = 2;
                for (int at = 0; at < 4; ++at) {
                    const int x = std::min(2 * (n % across) + at % 2, columns - 1);
                    const int y = std::min(2 * (n / across) + at / 2, rows - 1);
                    sum += (rgb[static_cast<std::size_t>(y * columns + x)] >> shift) & 255U;
                }
                expected |= (sum / 4) << shift;
            }
            EXPECT_EQ(half[static_cast<std::size_t>(n)], expected);
        }
    }
}

TEST(Pyramid, LawRowsInPiecesOfAnyHeightGiveTheSameSheet) {
    prepareDrivers();
    std::mt19937 chance(std::random_device{}());
    const auto seed = chance();
    SCOPED_TRACE(seed);
    chance.seed(seed);
    constexpr int kColumns = 1033;
    constexpr int kRows = 1601;
    const testing::Folder folder;
    const Pixels sheet{kColumns, kRows, chanceColours(chance, kColumns * kRows)};
    const auto written = [&](const char* name, auto height) {
        auto writer = PyramidWriter::create(folder / name, kColumns, kRows, sheets::Packing::Lossless);
        ASSERT_TRUE(writer.has_value());
        for (int row = 0; row < kRows;) {
            const int count = std::min(kRows - row, height());
            const auto from = sheet.rgb.begin() + static_cast<std::ptrdiff_t>(row) * kColumns;
            const Pixels rows{kColumns, count, {from, from + static_cast<std::ptrdiff_t>(count) * kColumns}};
            ASSERT_TRUE(writer->addRows(rows).has_value());
            row += count;
        }
        ASSERT_TRUE(std::move(*writer).finish().has_value());
    };
    written("whole.tif", [] { return kRows; });
    written("pieces.tif", [&] { return 1 + static_cast<int>(chance() % 700) * 2; });
    const auto whole = sheets::Raster::open(folder / "whole.tif");
    const auto pieces = sheets::Raster::open(folder / "pieces.tif");
    ASSERT_TRUE(whole && pieces);
    EXPECT_TRUE(whole->read({0, 0, kColumns, kRows}, kColumns, kRows)->rgb == sheet.rgb);
    for (int level = 0; level < 3; ++level) {
        const int columns = (kColumns + (1 << level) - 1) >> level;
        const int rows = (kRows + (1 << level) - 1) >> level;
        const sheets::PixelWindow all{0, 0, columns << level, rows << level};
        EXPECT_TRUE(whole->read(all, columns, rows)->rgb == pieces->read(all, columns, rows)->rgb) << level;
    }
}

}  // namespace
}  // namespace crosstick::reading
