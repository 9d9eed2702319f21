#pragma once

#include <limits>

#include "core/terrain/vein_field.h"

namespace crosstick::terrain {

/// The way of least cost from cell to cell, over the eight neighbours: a bucket queue of whole costs, drawn towards the
/// goal by the cost that the way must still have at least. Exact.
/// Memory and time are bounded: the way stays where the sum of its distances from both ends is at most 1.7 times the
/// ends' own plus 20 mm of paper. Empty where none leads there.
/// @param most  a way that costs more, as costAlong() has it, is none
/// Errors: terrain/too-far, and what the field met (sheets/damaged).
[[nodiscard]] Result<std::vector<Cell>> leastCostPath(VeinField& field, Cell from, Cell to,
                                                      double most = std::numeric_limits<double>::infinity());

/// What a way costs: of each cell but the first its cost, by the length of the step to it in cells.
[[nodiscard]] double costAlong(VeinField& field, const std::vector<Cell>& path);

}  // namespace crosstick::terrain
