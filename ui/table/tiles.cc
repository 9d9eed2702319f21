#include "ui/table/tiles.h"

#include <algorithm>
#include <cmath>

namespace crosstick::table {
namespace {

constexpr int kCoarsest = 17;  // 100,000 pixels a side become one

int reduced(int size, int level) {
    return static_cast<int>((std::int64_t{size} + (std::int64_t{1} << level) - 1) >> level);
}

/// The view's corners, and for a sheet that is bent on its grid places between them and a little beyond.
std::vector<Spot> looked(const View& view, const SheetLie& lie) {
    if (lie.isStraight()) {
        const auto corners = view.corners();
        return {corners.begin(), corners.end()};
    }
    constexpr double kBeyond = 0.02;
    const Area& area = view.area();
    std::vector<Spot> spots;
    for (const double x : {-kBeyond, 0.5, 1 + kBeyond}) {
        for (const double y : {-kBeyond, 0.5, 1 + kBeyond}) {
            spots.push_back({area.left + x * area.width, area.top + y * area.height});
        }
    }
    return spots;
}

}  // namespace

TilePart tilePart(TileKey key, RasterSize raster) {
    const int columns = std::min(kTile, reduced(raster.columns, key.level) - key.column * kTile);
    const int rows = std::min(kTile, reduced(raster.rows, key.level) - key.row * kTile);
    const auto shift = static_cast<unsigned>(key.level);
    return {
        {(key.column * kTile) << shift, (key.row * kTile) << shift, columns << shift, rows << shift}, columns, rows};
}

int levelFor(const SheetLie& lie, Zoom zoom) {
    const plan::Placement& placement = lie.placement();
    const double across = std::hypot(placement.eastPerColumn, placement.northPerColumn);
    const double down = std::hypot(placement.eastPerRow, placement.northPerRow);
    const double onScreen = std::max(across, down) * zoom.value();  // logical pixels for one of the raster
    if (!(onScreen > 0)) {
        return 0;
    }
    return std::clamp(static_cast<int>(std::floor(-std::log2(onScreen))), 0, kCoarsest);
}

std::vector<TileKey> tilesIn(const View& view, const SheetLie& lie, RasterSize raster, int level) {
    double left = raster.columns;
    double right = 0;
    double top = raster.rows;
    double bottom = 0;
    for (const Spot spot : looked(view, lie)) {
        const Spot s = lie.inRaster(view.place(spot));
        if (!std::isfinite(s.x) || !std::isfinite(s.y)) {  // so far away that the projection ends: all may be in sight
            left = top = 0;
            right = raster.columns;
            bottom = raster.rows;
            break;
        }
        left = std::min(left, s.x);
        right = std::max(right, s.x);
        top = std::min(top, s.y);
        bottom = std::max(bottom, s.y);
    }
    const double side = std::ldexp(kTile, level);
    const auto index = [&](double at, int size) {
        const int last = (reduced(size, level) - 1) / kTile;
        return static_cast<int>(std::clamp(std::floor(at / side), 0.0, static_cast<double>(last)));
    };
    std::vector<TileKey> keys;
    if (left >= raster.columns || right <= 0 || top >= raster.rows || bottom <= 0) {
        return keys;
    }
    for (int row = index(top, raster.rows); row <= index(bottom, raster.rows); ++row) {
        for (int column = index(left, raster.columns); column <= index(right, raster.columns); ++column) {
            keys.push_back({level, column, row});
        }
    }
    return keys;
}

}  // namespace crosstick::table
