// Lines of a grid drawn alone, with what lies about on a map.
#include "core/registration/whole_line.h"

#include <cmath>
#include <functional>

#include <gtest/gtest.h>

#include "core/registration/crossing_finder.h"

namespace crosstick::registration {
namespace {

constexpr int kColumns = 700, kRows = 60;
constexpr double kSpacing = 100, kMiddle = 30.3;  // pixels
constexpr LineLook kThin{120, 1.5};

using Ink = std::function<double(double x, double y)>;  ///< 0 to 1

/// How much of a pixel row a level line covers.
double cover(double away, double width) {
    return std::clamp(width / 2 + 0.5 - std::abs(away), 0.0, std::min(1.0, width));
}

GreyPicture drawn(const Ink& ink) {
    return {kColumns, kRows, [ink](sheets::PixelWindow window) -> Result<GreyWindow> {
                GreyWindow grey{window, {}};
                for (int row = window.row; row < window.row + window.rows; ++row) {
                    for (int column = window.column; column < window.column + window.columns; ++column) {
                        const double dark = std::min(1.0, ink(column + 0.5, row + 0.5));
                        grey.grey.push_back(static_cast<std::uint8_t>(std::lround(240 - 190 * dark)));
                    }
                }
                return grey;
            }};
}

/// Six crossings along the middle of the picture, as expected so many pixels aside.
std::vector<Station> stations(double aside = 0) {
    std::vector<Station> list;
    for (int n = 0; n < 6; ++n) {
        list.push_back({{100 + n * kSpacing, kMiddle}, aside});
    }
    return list;
}

Ink line(double width = 1.2) {
    return [width](double, double y) { return 0.8 * cover(y - kMiddle, width); };
}

/// The line at the crossing in the middle, 400 pixels from the left.
LineAt lineOf(const Ink& ink, double aside = 0) {
    const auto lines = followLine(drawn(ink), stations(aside), kThin);
    EXPECT_TRUE(lines.has_value() && (*lines)[3].has_value());
    return lines.has_value() && (*lines)[3] ? *(*lines)[3] : LineAt{};
}

TEST(WholeLine, IsFoundWhereItIsExpectedPixelsAside) {
    for (const double aside : {0.0, 2.0, -3.0}) {
        const LineAt found = lineOf(line(), aside);
        EXPECT_NEAR(found.at.y, kMiddle, 0.1) << aside;
        EXPECT_GT(confidenceOf(found, kThin), 0.9) << aside;
    }
}

TEST(WholeLine, LettersBesideACrossingDoNotMoveIt) {
    const LineAt found = lineOf([](double x, double y) {
        const bool isLetter = std::abs(x - 400) < 30 && std::abs(y - kMiddle - 2.5) < 1.5;
        return line()(x, y) + (isLetter ? 1 : 0);
    });
    EXPECT_NEAR(found.at.y, kMiddle, 0.15);
}

TEST(WholeLine, CurlsWithThePaper) {
    const auto curl = [](double x) { return kMiddle + 3 * std::pow((x - 400) / 200, 2); };
    const LineAt found = lineOf([&](double x, double y) { return 0.8 * cover(y - curl(x), 1.2); });
    EXPECT_NEAR(found.at.y, curl(400), 0.2);
}

TEST(WholeLine, GoesOnBehindWhatHidesAnArmButNotBehindItsEnd) {
    const LineAt hidden =
        lineOf([](double x, double y) { return x > 403 && x < 455 && std::abs(y - kMiddle) < 9 ? 0.9 : line()(x, y); });
    EXPECT_GE(confidenceOf(hidden, kThin), kSure);
    const LineAt end = lineOf([](double x, double y) { return x < 400 ? line()(x, y) : 0; });
    EXPECT_EQ(end.seen.ahead, 0);
    EXPECT_EQ(confidenceOf(end, kThin), 0);
}

TEST(WholeLine, AFrameIsNoLineOfTheSheet) {
    EXPECT_LT(confidenceOf(lineOf(line(3.5)), kThin), kSure);
}

TEST(WholeLine, IsNoneOnBlankPaperAndOutsideThePicture) {
    const auto none = followLine(drawn([](double, double) { return 0.0; }), stations(), kThin);
    ASSERT_TRUE(none.has_value());
    for (const auto& found : *none) {
        EXPECT_FALSE(found.has_value());
    }
    const std::vector<Station> outside{{{-500, -80}, 0}, {{-400, -80}, 0}};
    EXPECT_FALSE(followLine(drawn(line()), outside, kThin)->front().has_value());
}

}  // namespace
}  // namespace crosstick::registration
