#include "ui/table/tiles.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <set>

#include <gtest/gtest.h>

#include "ui/table/palette.h"
#include "ui/table/tile_painter.h"

namespace crosstick::table {
namespace {

const SheetLie kNorthUp{plan::Placement{{Metres(650000), Metres(5100000)}, 2, 0, 0, -2}};
const SheetLie kTurned{plan::Placement{{Metres(650000), Metres(5100000)}, 1.9, 0.4, 0.4, -1.9}};
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
        const Spot back = kTurned.inRaster(kTurned.onGrid(s));
        EXPECT_NEAR(back.x, s.x, 1e-6);
        EXPECT_NEAR(back.y, s.y, 1e-6);
    }
}

TEST(Tiles, EveryPixelInSightLiesInOneOfThem) {
    std::mt19937 chance(11);
    const View view({18, 18, 900, 600}, kTurned.onGrid({2500, 2600}), Zoom(0.3));
    const int level = levelFor(kTurned, view.zoom());
    const auto keys = tilesIn(view, kTurned, kRaster, level);
    const std::set<TileKey> known(keys.begin(), keys.end());
    EXPECT_EQ(known.size(), keys.size());
    std::uniform_real_distribution<double> x(18, 918);
    std::uniform_real_distribution<double> y(18, 618);
    for (int n = 0; n < 500; ++n) {
        const Spot s = kTurned.inRaster(view.place({x(chance), y(chance)}));
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
    // Look, section 3: the ground, and lettering; contours lie between them, water (index contours) above.
    EXPECT_EQ(byNight(qRgb(255, 255, 255)), qRgb(0x0c, 0x01, 0x01));
    EXPECT_EQ(byNight(qRgb(0, 0, 0)), qRgb(0xd8, 0x43, 0x3a));
    const QRgb contour = byNight(qRgb(181, 118, 58));
    EXPECT_GE(qRed(contour), 0x7e - 4);
    EXPECT_LE(qRed(contour), 0xa8);
    for (int grey = 1; grey < 256; ++grey) {
        EXPECT_LE(qRed(byNight(qRgb(grey, grey, grey))), qRed(byNight(qRgb(grey - 1, grey - 1, grey - 1))));
    }
}

/// A sheet of zone 26 as it lies on the grid of zone 25, seen over its middle.
SheetLie neighbour() {
    plan::Sheet sheet;
    sheet.crs = "EPSG:32626";
    sheet.placement = {{Metres(200000), Metres(5100000)}, 2.5, 0, 0, -2.5};
    return SheetLie::of(sheet, "EPSG:32625").value();
}

TEST(SheetOfTheNextZone, EveryTileIsLaidWithinHalfAPixel) {
    const SheetLie lie = neighbour();
    ASSERT_FALSE(lie.isStraight());
    const RasterSize raster{8000, 8000};
    for (const double zoom : {0.02, 0.1, 0.5}) {
        const View view({18, 18, 900, 600}, lie.onGrid({4000, 4000}), Zoom(zoom));
        const auto keys = tilesIn(view, lie, raster, levelFor(lie, view.zoom()));
        ASSERT_FALSE(keys.empty());
        for (const TileKey key : keys) {
            const QTransform toTable = tileOnTable(view, lie, key);
            const double side = std::ldexp(1.0, key.level);
            for (const double x : {0.0, 100.0, 256.0, 512.0}) {
                for (const double y : {0.0, 300.0, 512.0}) {
                    const Spot there =
                        view.spot(lie.onGrid({(key.column * kTile + x) * side, (key.row * kTile + y) * side}));
                    const QPointF laid = toTable.map(QPointF(x, y));
                    EXPECT_LT(std::hypot(laid.x() - there.x, laid.y() - there.y), 0.4) << "zoom " << zoom;
                }
            }
        }
    }
}

TEST(SheetOfTheNextZone, LawRasterToGridAndBack) {
    const SheetLie lie = neighbour();
    std::mt19937 chance(5);
    std::uniform_real_distribution<double> pixel(0, 8000);
    for (int n = 0; n < 200; ++n) {
        const Spot s{pixel(chance), pixel(chance)};
        const Spot back = lie.inRaster(lie.onGrid(s));
        EXPECT_NEAR(back.x, s.x, 1e-5);
        EXPECT_NEAR(back.y, s.y, 1e-5);
    }
}

}  // namespace
}  // namespace crosstick::table
