#include "core/sheets/see_through.h"

#include <cmath>

#include <gtest/gtest.h>

#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"

namespace crosstick::sheets {
namespace {

using testing::Folder;
using testing::makeSheet;

constexpr int kWide = 1500;
constexpr int kHigh = 1200;

/// The light on a photographed film: a lamp at the upper left, a shadow at the lower right, a yellowish tint.
double light(int column, int row, int band) {
    const double far = std::hypot(column, row) / std::hypot(kWide, kHigh);
    return (245 - 130 * far) * (band == 3 ? 0.82 : 1);
}
bool isStroke(int column, int row) {
    return std::abs(row - 600) < 4 || std::abs(column - 300 - row / 2) < 3;
}
/// Red ink below the middle, black above; bands count from 1.
double ink(int row, int band) {
    return row > 590 && band == 1 ? 0.85 : 0.15;
}

class PhotographedFilm : public ::testing::Test {
  protected:
    void SetUp() override {
        makeSheet(folder_ / "film.tif", {.columns = kWide,
                                         .rows = kHigh,
                                         .bands = 3,
                                         .options = {"PHOTOMETRIC=RGB"},
                                         .value = [](int column, int row, int band) {
                                             const double noise = (column * 7919 + row * 104729) % 9 - 4;
                                             const double blank = light(column, row, band) + noise;
                                             return isStroke(column, row) ? blank * ink(row, band) : blank;
                                         }});
        auto opened =
            testing::reader().sheet(folder_ / "film.tif").and_then([](const auto& copy) { return Raster::open(copy); });
        ASSERT_TRUE(opened);
        raster_.emplace(std::move(*opened));
        auto film = SeeThrough::of(*raster_);
        ASSERT_TRUE(film);
        film_.emplace(std::move(*film));
    }
    [[nodiscard]] std::uint32_t at(int column, int row) const {
        const auto pixels = raster_->read({column, row, 1, 1}, 1, 1);
        return film_->pixel(pixels->rgb.front(), {column + 0.5, row + 0.5});
    }
    Folder folder_;
    std::optional<Raster> raster_;
    std::optional<SeeThrough> film_;
};

TEST_F(PhotographedFilm, ItsBlankIsSeeThroughInAnyLight) {
    for (int row = 20; row < kHigh; row += 37) {
        for (int column = 20; column < kWide; column += 41) {
            if (!isStroke(column - 4, row) && !isStroke(column, row) && !isStroke(column + 4, row) &&
                !isStroke(column, row - 5) && !isStroke(column, row + 5)) {
                EXPECT_LT(at(column, row) >> 24, 13U) << column << ", " << row;
            }
        }
    }
}

TEST_F(PhotographedFilm, WhatIsDrawnKeepsItsColour) {
    const std::uint32_t black = at(350, 100);
    EXPECT_GT(black >> 24, 230U);
    EXPECT_LT(black >> 16 & 0xFFU, 70U);
    const std::uint32_t red = at(900, 600);
    EXPECT_GT(red >> 24, 230U);
    EXPECT_GT(red >> 16 & 0xFFU, 150U);
    EXPECT_LT(red >> 8 & 0xFFU, 70U);
}

}  // namespace
}  // namespace crosstick::sheets
