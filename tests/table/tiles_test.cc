#include "ui/table/tiles.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <set>

#include <gtest/gtest.h>

#include "ui/table/palette.h"

namespace crosstick::table {
namespace {

const plan::Placement kNorthUp{{Metres(650000), Metres(5100000)}, 2, 0, 0, -2};
const plan::Placement kTurned{{Metres(650000), Metres(5100000)}, 1.9, 0.4, 0.4, -1.9};
constexpr RasterSize kRaster{5552, 5315};

TEST(Tiles, LevelKeepsPixelsBetweenHalfAndWhole) {
    EXPECT_EQ(levelFor(kNorthUp, Zoom(0.5)), 0);   // one to one
    EXPECT_EQ(levelFor(kNorthUp, Zoom(0.26)), 0);  // 0.52
    EXPECT_EQ(levelFor(kNorthUp, Zoom(0.24)), 1);  // 0.48, two make 0.96
    EXPECT_EQ(levelFor(kNorthUp, Zoom(8)), 0);
    for (int n = 0; n < 90; ++n) {
        const double zoom = 0.001 * std::pow(1.07, n);
        const double onScreen = std::ldexp(2 * zoom, levelFor(kNorthUp, Zoom(zoom)));
        EXPECT_GT(onScreen, 0.5);
        EXPECT_LE(onScreen, 1);
    }
}

TEST(Tiles, PartsCoverTheRasterOnce) {
    for (const int level : {0, 1, 3, 6}) {
        std::int64_t pixels = 0;
        const int side = kTile << level;
        for (int row = 0; row * side < kRaster.rows; ++row) {
            for (int column = 0; column * side < kRaster.columns; ++column) {
                const TilePart part = tilePart({level, column, row}, kRaster);
                EXPECT_EQ(part.window.column, column * side);
                EXPECT_GE(part.columns, 1);
                EXPECT_LE(part.columns, kTile);
                EXPECT_LT(part.window.column + part.window.columns, kRaster.columns + (1 << level));
                pixels += std::int64_t{std::min(part.window.columns, kRaster.columns - part.window.column)} *
                          std::min(part.window.rows, kRaster.rows - part.window.row);
            }
        }
        EXPECT_EQ(pixels, std::int64_t{kRaster.columns} * kRaster.rows) << "level " << level;
    }
}

TEST(Tiles, LawRasterToGridAndBack) {
    std::mt19937 chance(7);
    std::uniform_real_distribution<double> pixel(0, 5000);
    for (int n = 0; n < 200; ++n) {
        const Spot s{pixel(chance), pixel(chance)};
        const Spot back = inRaster(kTurned, onGrid(kTurned, s));
        EXPECT_NEAR(back.x, s.x, 1e-6);
        EXPECT_NEAR(back.y, s.y, 1e-6);
    }
}

TEST(Tiles, EveryPixelInSightLiesInOneOfThem) {
    std::mt19937 chance(11);
    const View view({18, 18, 900, 600}, onGrid(kTurned, {2500, 2600}), Zoom(0.3));
    const int level = levelFor(kTurned, view.zoom());
    const auto keys = tilesIn(view, kTurned, kRaster, level);
    const std::set<TileKey> known(keys.begin(), keys.end());
    EXPECT_EQ(known.size(), keys.size());
    std::uniform_real_distribution<double> x(18, 918);
    std::uniform_real_distribution<double> y(18, 618);
    for (int n = 0; n < 500; ++n) {
        const Spot s = inRaster(kTurned, view.place({x(chance), y(chance)}));
        if (s.x < 0 || s.y < 0 || s.x >= kRaster.columns || s.y >= kRaster.rows) {
            continue;
        }
        const int side = kTile << level;
        EXPECT_TRUE(known.contains({level, static_cast<int>(s.x) / side, static_cast<int>(s.y) / side}));
    }
}

TEST(Tiles, NoneWhereTheSheetIsOutOfSight) {
    const View view({0, 0, 100, 100}, {Metres(0), Metres(0)}, Zoom(1));
    EXPECT_TRUE(tilesIn(view, kNorthUp, kRaster, 0).empty());
}

TEST(Night, SheetTurnsIntoARedPrint) {
    // Look, section 3: the ground, and lettering; contours lie between them.
    EXPECT_EQ(byNight(qRgb(255, 255, 255)), qRgb(0x0c, 0x01, 0x01));
    EXPECT_EQ(byNight(qRgb(0, 0, 0)), qRgb(0xd8, 0x43, 0x3a));
    const QRgb contour = byNight(qRgb(181, 118, 58));
    EXPECT_NEAR(qRed(contour), 0x7e, 12);
    for (int grey = 1; grey < 256; ++grey) {
        EXPECT_LE(qRed(byNight(qRgb(grey, grey, grey))), qRed(byNight(qRgb(grey - 1, grey - 1, grey - 1))));
    }
}

}  // namespace
}  // namespace crosstick::table
