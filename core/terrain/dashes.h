#pragma once

#include "core/terrain/vein_field.h"

namespace crosstick::terrain {

/// How long the dashes of a line are, in cells, where it is evenly dashed; nothing where it is not.
/// @param vein  of the field, seen at a place: a few millimetres to both sides of it are looked at
[[nodiscard]] std::optional<double> dashAt(VeinField& field, const Vein& vein);

}  // namespace crosstick::terrain
