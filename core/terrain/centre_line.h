#pragma once

#include "core/terrain/vein_field.h"

namespace crosstick::terrain {

/// The middle of the printed line along a path of cells, in the field's cells, to a fraction of one: at every half
/// millimetre's twelfth part the middle of what belongs to the vein across the path. Where the line is broken the way
/// goes straight on from what was found on both sides.
[[nodiscard]] std::vector<PicturePoint> centreLine(VeinField& field, const std::vector<Cell>& path);

/// The same line with fewer points: none that is left out lies farther from it than a tolerance (Douglas and Peucker's
/// way). The ends stay.
[[nodiscard]] std::vector<PicturePoint> simplified(const std::vector<PicturePoint>& line, double tolerance);

}  // namespace crosstick::terrain
