#pragma once

#include "core/terrain/vein_field.h"

namespace crosstick::terrain {

/// How a line is broken about a place: what a few millimetres of it to both sides show.
struct Dashes {
    std::optional<double> length;  ///< of a dash in cells, where it is evenly dashed
    double longest = 0;            ///< the longest unbroken piece, in cells
};

/// @param vein  of the field, seen at a place near which the line is looked at
[[nodiscard]] Dashes dashesAt(VeinField& field, const Vein& vein);

}  // namespace crosstick::terrain
