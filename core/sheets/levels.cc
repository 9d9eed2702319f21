#include "core/sheets/levels.h"

#include <algorithm>

namespace crosstick::sheets {

std::vector<LevelSize> levelSizes(int columns, int rows) {
    std::vector<LevelSize> levels{{columns, rows}};
    while (std::max(levels.back().columns, levels.back().rows) > kTilePixels) {
        levels.push_back({(levels.back().columns + 1) / 2, (levels.back().rows + 1) / 2});
    }
    return levels;
}

}  // namespace crosstick::sheets
