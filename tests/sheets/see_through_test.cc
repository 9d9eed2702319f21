#include "core/sheets/see_through.h"

#include <array>
#include <cmath>
#include <iostream>
#include <memory>

#include <gtest/gtest.h>

#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"
#include "tests/sheets/photographed_film.h"

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

/// A film in the worst photo that we could make.
class PoorPhoto : public ::testing::Test {
  protected:
    static void SetUpTestSuite() {
        folder_ = std::make_unique<Folder>();
        testing::photographFilm(*folder_ / "film.jpg", 20261126);
        auto opened = testing::reader().sheet(*folder_ / "film.jpg").and_then([](const auto& copy) {
            return Raster::open(copy);
        });
        ASSERT_TRUE(opened);
        const auto film = SeeThrough::of(*opened);
        ASSERT_TRUE(film);
        seen_ =
            opened
                ->read({0, 0, testing::kPhotoColumns, testing::kPhotoRows}, testing::kPhotoColumns, testing::kPhotoRows)
                ->rgb;
        for (std::size_t n = 0; n < seen_.size(); ++n) {
            seen_[n] = film->pixel(seen_[n], {static_cast<double>(n % testing::kPhotoColumns) + 0.5,
                                              static_cast<double>(n / testing::kPhotoColumns) + 0.5});
        }
    }
    static void TearDownTestSuite() { folder_.reset(); }

    /// Of the spots that are asked for, the share of which something is true.
    template <typename Asked, typename Is>
    static double share(Asked asked, Is is) {
        double all = 0;
        double some = 0;
        for (int row = 4; row < testing::kPhotoRows - 4; row += 2) {
            for (int column = 4; column < testing::kPhotoColumns - 4; column += 2) {
                const testing::FilmSpot spot = testing::filmSpot(column, row);
                if (asked(spot)) {
                    all += 1;
                    some += is(spot, seen_[static_cast<std::size_t>(row) * testing::kPhotoColumns +
                                           static_cast<std::size_t>(column)])
                                ? 1
                                : 0;
                }
            }
        }
        EXPECT_GT(all, 1000);
        std::cout << some << " of " << all << '\n';
        return some / all;
    }
    static bool isClear(const testing::FilmSpot& /*spot*/, std::uint32_t argb) { return argb >> 24 < 40; }

    static std::unique_ptr<Folder> folder_;
    static std::vector<std::uint32_t> seen_;  ///< 0xAARRGGBB
};
std::unique_ptr<Folder> PoorPhoto::folder_;
std::vector<std::uint32_t> PoorPhoto::seen_;

TEST_F(PoorPhoto, ShadowsFoldsAndGrainVanish) {
    EXPECT_GT(share([](const auto& spot) { return spot.isBlank && !spot.isStain; }, isClear), 0.999);
}

TEST_F(PoorPhoto, TheTableVanishes) {
    EXPECT_GT(share([](const auto& spot) { return spot.isTable; }, isClear), 0.99);
}

TEST_F(PoorPhoto, StrokesKeepTheirColourInSunAndShadow) {
    const auto isDrawn = [](const auto& spot) { return spot.pen.has_value(); };
    const auto isSeen = [](const testing::FilmSpot& spot, std::uint32_t argb) {
        const std::array<std::uint32_t, 3> rgb{argb >> 16 & 0xFFU, argb >> 8 & 0xFFU, argb & 0xFFU};
        const auto most = static_cast<std::size_t>(std::max_element(rgb.begin(), rgb.end()) - rgb.begin());
        const bool isRight = spot.pen == testing::Pen::Red     ? most == 0
                             : spot.pen == testing::Pen::Green ? most == 1
                             : spot.pen == testing::Pen::Blue  ? most == 2
                                                               : rgb[most] < 110;
        return argb >> 24 > 200 && isRight;
    };
    EXPECT_GT(share(isDrawn, isSeen), 0.98);
}

}  // namespace
}  // namespace crosstick::sheets
