#pragma once

#include <vector>

namespace crosstick::sheets {

/// Pixels a side of the tiles that a copy is stored and shown in.
inline constexpr int kTilePixels = 512;

/// A level of a sheet's copy.
struct LevelSize {
    int columns = 0, rows = 0;
};
/// The sheet's own size, then each time half of it, rounded up, until it fits in one tile.
[[nodiscard]] std::vector<LevelSize> levelSizes(int columns, int rows);

}  // namespace crosstick::sheets
