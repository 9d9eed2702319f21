#pragma once

#include <optional>

#include "core/registration/crossing_trace.h"

namespace crosstick::registration {

/// The crossing of two printed lines near a place that a hand has pointed at, or the tick that somebody drew there, to
/// a tenth of a pixel on a clean scan.
/// @param sight  where it was pointed, and one interval of each line as far as it is known
/// @param reach  pixels to either side
/// @return nothing where no two lines cross there for sure
/// Errors: those of the picture.
[[nodiscard]] Result<std::optional<PixelPoint>> crossingNear(const GreyPicture& picture, const CrossSight& sight,
                                                             double reach);

}  // namespace crosstick::registration
