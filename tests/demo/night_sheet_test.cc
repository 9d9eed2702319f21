// The demo's sheet by night: what is printed thin is still to be read.
#include <algorithm>
#include <cmath>
#include <vector>

#include <gtest/gtest.h>

#include "sample-data/sheet/canvas.h"
#include "sample-data/sheet/sheet.h"
#include "tests/places.h"
#include "ui/press/gui_start.h"
#include "ui/table/palette.h"

namespace crosstick::demo {
namespace {

/// Relative luminance and contrast as WCAG 2.2 define them.
double luminance(QRgb colour) {
    const auto linear = [](int value) {
        const double v = value / 255.0;
        return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(qRed(colour)) + 0.7152 * linear(qGreen(colour)) + 0.0722 * linear(qBlue(colour));
}

double contrast(QRgb a, QRgb b) {
    const double x = luminance(a) + 0.05;
    const double y = luminance(b) + 0.05;
    return std::max(x, y) / std::min(x, y);
}

bool isBrown(QRgb colour) {
    return qRed(colour) - qBlue(colour) > 25 && qRed(colour) - qGreen(colour) > 8;
}

/// Contrast of brown lines to the ground round them, on a part of the sheet as it is seen by night.
std::vector<double> contoursByNight(const QImage& seen) {
    constexpr int kRound = 4;
    std::vector<double> found;
    for (int y = kRound; y < seen.height() - kRound; y += 3) {
        for (int x = kRound; x < seen.width() - kRound; x += 3) {
            const QRgb here = seen.pixel(x, y);
            const int grey = qGray(here);
            const bool isRidge = (qGray(seen.pixel(x - 1, y)) > grey && qGray(seen.pixel(x + 1, y)) >= grey) ||
                                 (qGray(seen.pixel(x, y - 1)) > grey && qGray(seen.pixel(x, y + 1)) >= grey);
            if (!isBrown(here) || !isRidge) {
                continue;
            }
            std::vector<QRgb> round;
            for (int v = -kRound; v <= kRound; ++v) {
                for (int u = -kRound; u <= kRound; ++u) {
                    round.push_back(seen.pixel(x + u, y + v));
                }
            }
            const auto ground = round.begin() + static_cast<std::ptrdiff_t>(round.size() * 3 / 4);  // the light side
            std::nth_element(round.begin(), ground, round.end(), [](QRgb a, QRgb b) { return qGray(a) < qGray(b); });
            if (qGray(*ground) - grey > 10) {
                found.push_back(contrast(table::byNight(here), table::byNight(*ground)));
            }
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

// Look, section 3: contours about 2 to 1 by night, water above the ground, lettering above both.
TEST(NightSheet, InksStandOffTheirGround) {
    const auto off = [](const QColor& ink, const QColor& ground) {
        return contrast(table::byNight(ink.rgb()), table::byNight(ground.rgb()));
    };
    EXPECT_GE(off(ink::kContour, ink::kLand), 2);
    EXPECT_GE(off(ink::kContour, ink::kWood), 2);
    EXPECT_GE(off(ink::kWater, ink::kLand), off(ink::kContour, ink::kLand));
    EXPECT_GE(off(ink::kWater, ink::kSea), 2);
    EXPECT_GE(off(ink::kBlack, ink::kLand), 4.5);
    EXPECT_LE(off(ink::kWood, ink::kLand), 1.25) << "a tint is no light of its own";
    EXPECT_LE(off(ink::kSea, ink::kLand), 1.1);
}

TEST(NightSheet, ContoursHoldTwoToOneAsTheyAreSeen) {
    const press::GuiStart gui;
    const std::filesystem::path share = places::share();
    const Island island = readIsland(share / "demo" / "island.json").value_or(Island{});
    const Ground ground = makeGround(island);
    const auto sheet = paintSheet(ground, island, {share / "demo", share / "faces"});
    ASSERT_TRUE(sheet.has_value());
    const QImage hills = sheet->picture.copy(1700, 1200, 1500, 1500);
    // As printed dots, and at 1:12,500 on a screen of 96 dots to the inch.
    for (const double share96 : {1.0, 96.0 / 300 * 2}) {
        const QImage seen = hills.scaled(hills.size() * share96, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
        const auto found = contoursByNight(seen);
        ASSERT_GT(found.size(), 1000U);
        EXPECT_GE(found[found.size() / 2], 2) << "in the middle, at " << share96;
        EXPECT_GE(found[found.size() / 4], 1.8) << "three quarters of them, at " << share96;
    }
}

}  // namespace
}  // namespace crosstick::demo
