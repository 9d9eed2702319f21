#pragma once

#include "core/terrain/vein_field.h"

namespace crosstick::terrain {

/// What a path goes over.
struct Going {
    double meanCost = 0;
    double blankShare = 0;
    int longestBlank = 0;  ///< cells
};
[[nodiscard]] Going goingOf(VeinField& field, const std::vector<Cell>& path);
/// Whether so much of it is blank, in all or at once, that no line leads there.
[[nodiscard]] bool breaksOff(const Going& going, PenSize size);

/// A way of least cost as it is when it is kept off what are other lines, found by looking at it: these are made dear,
/// and the way is looked for again, a few times. A dashed line runs on nowhere much farther than its dashes are long;
/// an unbroken one does not hop to its neighbour. Where that does not make it better the path stays as it is.
/// Errors: leastCostPath()'s.
/// @param dash  cells that the dashes are long; none: the line is unbroken
[[nodiscard]] Result<std::vector<Cell>> keptOffOtherLines(VeinField& field, std::vector<Cell> path,
                                                          std::optional<double> dash);

}  // namespace crosstick::terrain
