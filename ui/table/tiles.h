#pragma once

#include <tuple>
#include <vector>

#include "core/sheets/levels.h"
#include "core/sheets/pixels.h"
#include "ui/table/sheet_lie.h"

namespace crosstick::table {

/// A square piece of a sheet's raster: at level n one pixel of the tile covers 2^n by 2^n pixels of the raster.
struct TileKey {
    int level = 0, column = 0, row = 0;
    friend constexpr bool operator==(TileKey, TileKey) = default;
    friend constexpr bool operator<(TileKey a, TileKey b) {
        return std::tie(a.level, a.row, a.column) < std::tie(b.level, b.row, b.column);
    }
};

inline constexpr int kTile = sheets::kTilePixels;

/// The size of a raster in its own pixels.
struct RasterSize {
    int columns = 0, rows = 0;
};

/// What part of the raster a tile covers (at the lower and right edge reaching past it by less than one tile pixel) and
/// how many pixels the tile then has.
struct TilePart {
    sheets::PixelWindow window;
    int columns = 0, rows = 0;
};
[[nodiscard]] TilePart tilePart(TileKey key, RasterSize raster);

/// The level whose pixels come out at more than half and at most a whole logical pixel of the screen; 0 where even the
/// raster's own pixels come out larger.
[[nodiscard]] int levelFor(const SheetLie& lie, Zoom zoom);

/// The tiles of a level that a view touches, row by row from the top.
[[nodiscard]] std::vector<TileKey> tilesIn(const View& view, const SheetLie& lie, RasterSize raster, int level);

/// A tile of one of a plan's sheets.
struct SheetTile {
    std::size_t sheet = 0;
    TileKey key;
    friend constexpr bool operator==(SheetTile, SheetTile) = default;
    friend constexpr bool operator<(SheetTile a, SheetTile b) {
        return std::tie(a.sheet, a.key) < std::tie(b.sheet, b.key);
    }
};

}  // namespace crosstick::table
