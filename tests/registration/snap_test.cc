#include "core/registration/snap.h"

#include <cmath>
#include <random>

#include <gtest/gtest.h>

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

TEST(Snap, FindsNothingWhereNoLinesCross) {
    const GreyPicture picture = Drawn{}.picture();
    const auto middle = crossingNear(picture, {{250, 230}, {108, 0}, {0, -108}}, 25);
    ASSERT_TRUE(middle.has_value());
    EXPECT_FALSE(middle->has_value());
    const auto line = crossingNear(picture, {{152, 230}, {108, 0}, {0, -108}}, 25);
    ASSERT_TRUE(line.has_value());
    EXPECT_FALSE(line->has_value());
}

}  // namespace
}  // namespace crosstick::registration
