#pragma once

#include "core/terrain/vein_field.h"

namespace crosstick::terrain {

/// A corner of a path, or several close by: there it may have left its line for a neighbour's. A printed line bends,
/// but where a way hops aside under a letter or runs along a road's casing it turns by more than 50 degrees within
/// 2 mm. Places among the path's cells.
struct Hop {
    std::size_t from = 0, to = 0;
};
[[nodiscard]] std::vector<Hop> hopsOf(const std::vector<Cell>& path, PenSize size);

/// What of a path to look beside, since its ends lie on the right line: every other stretch between hops, and round a
/// hop that is alone 1 mm to both sides.
[[nodiscard]] std::vector<Cell> strayedStretches(const std::vector<Cell>& path, const std::vector<Hop>& hops,
                                                 PenSize size);

}  // namespace crosstick::terrain
