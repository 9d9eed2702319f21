#include "core/registration/snap.h"

#include <algorithm>
#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "core/registration/printed_cross.h"
#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"
#include "tests/sheets/photographed_film.h"

namespace crosstick::registration {
namespace {

/// Kilometre lines 200 pixels apart, turned; a crossing stands at 150, 130.
struct Drawn {
    double turn = 0.0175, halfWidth = 1.4, ink = 55, paper = 245;
    double mapFrom = -0.4;  ///< squares west and north of the crossing, where the lines end

    [[nodiscard]] std::uint8_t brightness(double x, double y) const {
        const double dx = (x - 150) / 200;
        const double dy = (130 - y) / 200;
        const double east = dx * std::cos(turn) - dy * std::sin(turn);
        const double north = dx * std::sin(turn) + dy * std::cos(turn);
        const auto dark = [&](double squares) {
            return std::clamp(halfWidth - std::abs(squares - std::round(squares)) * 200, 0.0, 1.0);
        };
        const bool isMap = east > mapFrom && north < -mapFrom;
        return static_cast<std::uint8_t>(isMap ? std::lround(paper - (paper - ink) * std::max(dark(east), dark(north)))
                                               : 250);
    }
    [[nodiscard]] GreyPicture picture() const {
        return {1400, 1300, [*this](sheets::PixelWindow window) -> Result<GreyWindow> {
                    GreyWindow grey{window, {}};
                    for (int y = 0; y < window.rows; ++y) {
                        for (int x = 0; x < window.columns; ++x) {
                            grey.grey.push_back(brightness(window.column + x + 0.5, window.row + y + 0.5));
                        }
                    }
                    return grey;
                }};
    }
};

TEST(Snap, FindsTheCrossingThatAHandPointsBeside) {
    const GreyPicture picture = Drawn{}.picture();
    for (const double spacing : {60.0, 108.0, 200.0}) {  // a guess is enough
        const auto found = crossingNear(picture, {{155, 126}, {spacing, 0}, {0, -spacing}}, 25);
        ASSERT_TRUE(found.has_value());
        ASSERT_TRUE(found->has_value()) << spacing;
        EXPECT_NEAR((*found)->x, 150, 0.2);
        EXPECT_NEAR((*found)->y, 130, 0.2);
    }
}

// On a clean drawing that stands straight, lines may lie whole pixels from where a hand points.
TEST(Snap, FindsLinesThatLieWholePixelsOff) {
    Drawn drawn;
    drawn.turn = 0;
    const GreyPicture picture = drawn.picture();
    for (int right = -4; right <= 4; ++right) {
        for (int down = -4; down <= 4; ++down) {
            const auto found = crossingNear(picture, {{150.0 + right, 130.0 + down}, {200, 0}, {0, -200}}, 14);
            ASSERT_TRUE(found.has_value());
            ASSERT_TRUE(found->has_value()) << right << ", " << down;
            EXPECT_NEAR((*found)->x, 150, 0.1);
            EXPECT_NEAR((*found)->y, 130, 0.1);
        }
    }
}

TEST(Snap, FindsNothingWhereNoLinesCross) {
    const GreyPicture picture = Drawn{}.picture();
    const auto middle = crossingNear(picture, {{250, 230}, {108, 0}, {0, -108}}, 25);
    ASSERT_TRUE(middle.has_value());
    EXPECT_FALSE(middle->has_value());
    const auto line = crossingNear(picture, {{152, 230}, {108, 0}, {0, -108}}, 25);
    ASSERT_TRUE(line.has_value());
    EXPECT_FALSE(line->has_value());
}

// Felt pen on a slanted film in bad light: two lie in the film's brighter half, two are darker and larger.
TEST(Snap, FindsTheTicksOfAPhotographedFilm) {
    const testing::Folder folder;
    testing::photographFilm(folder / "film.jpg", 5);
    const auto raster = testing::reader().sheet(folder / "film.jpg").and_then([](const auto& copy) {
        return sheets::Raster::open(copy);
    });
    ASSERT_TRUE(raster.has_value());
    const GreyPicture picture = greyOf(*raster);
    for (const testing::FilmTick& tick : testing::filmTicks()) {
        for (const auto& [right, down] : {std::pair{0.0, 0.0}, {6.0, -5.0}, {-9.0, 7.0}}) {
            const PixelPoint at{tick.photo.column + right, tick.photo.row + down};
            const auto found = crossingNear(picture, {at, {100, 0}, {0, -100}}, 25);
            ASSERT_TRUE(found.has_value());
            ASSERT_TRUE(found->has_value()) << at.x << ", " << at.y;
            EXPECT_LT(std::hypot((*found)->x - tick.photo.column, (*found)->y - tick.photo.row), 0.5);
        }
    }
}

/// A small cross at 80.3, 70.6 on mottled ground, its arms some pixels long and slightly turned, a river beside it.
struct SmallCross {
    double arm = 4.5, ink = 90, paper = 170, noise = 6;
    static constexpr double kTurn = 0.02;

    [[nodiscard]] GreyPicture picture() const {
        return {160, 140, [*this](sheets::PixelWindow window) -> Result<GreyWindow> {
                    GreyWindow grey{window, {}};
                    std::mt19937 random(7);
                    std::normal_distribution<double> mottle(0, noise);
                    std::vector<double> whole(160 * 140);
                    std::generate(whole.begin(), whole.end(), [&] { return mottle(random); });
                    for (int y = window.row; y < window.row + window.rows; ++y) {
                        for (int x = window.column; x < window.column + window.columns; ++x) {
                            const double value =
                                brightness(x + 0.5, y + 0.5) + whole[static_cast<std::size_t>(y * 160 + x)];
                            grey.grey.push_back(static_cast<std::uint8_t>(std::clamp(value, 0.0, 255.0)));
                        }
                    }
                    return grey;
                }};
    }
    [[nodiscard]] double brightness(double x, double y) const {
        const double dx = x - 80.3;
        const double dy = y - 70.6;
        const double east = dx * std::cos(kTurn) + dy * std::sin(kTurn);
        const double south = dy * std::cos(kTurn) - dx * std::sin(kTurn);
        const auto dark = [](double off) { return std::clamp(1.1 - std::abs(off), 0.0, 1.0); };
        const double cross = std::max(std::abs(east) < arm ? dark(south) : 0, std::abs(south) < arm ? dark(east) : 0);
        const double river = dark(south - 9 - 3 * std::sin(x / 9));
        return paper - (paper - ink) * std::max(cross, river);
    }
};

TEST(Snap, FindsASmallPrintedCross) {
    for (const double arm : {4.2, 6.0, 12.0}) {
        SmallCross cross;
        cross.arm = arm;
        for (const auto& at : {PixelPoint{80, 70}, PixelPoint{85, 67}, PixelPoint{76, 72}}) {
            const auto found = crossNear(cross.picture(), {at, {30, 0}, {0, -30}}, 8);
            ASSERT_TRUE(found.has_value());
            ASSERT_TRUE(found->has_value()) << arm << ": " << at.x;
            EXPECT_NEAR((*found)->x, 80.3, 0.35) << arm;
            EXPECT_NEAR((*found)->y, 70.6, 0.35) << arm;
        }
    }
}

TEST(Snap, SeesNoCrossOnMottledGroundOrALoneLine) {
    SmallCross cross;
    cross.arm = 0;
    for (double y = 30; y < 110; y += 10) {
        const auto found = crossNear(cross.picture(), {{40, y}, {30, 0}, {0, -30}}, 8);
        ASSERT_TRUE(found.has_value());
        EXPECT_FALSE(found->has_value()) << y;
    }
}

}  // namespace
}  // namespace crosstick::registration
