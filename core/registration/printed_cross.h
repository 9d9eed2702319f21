#pragma once

#include <optional>

#include "core/registration/crossing_trace.h"

namespace crosstick::registration {

/// A small cross printed near a place that a hand has pointed at, as sheets without grid lines have them where the
/// lines of the graticule would cross: four thin dark arms, each darker than both its sides, of some pixels' length.
/// @param sight  where it was pointed, and the directions of its lines; their lengths do not count
/// @param reach  pixels to either side
/// @return its middle, to a quarter of a pixel on a clean scan; nothing where there is none for sure
/// Errors: those of the picture.
[[nodiscard]] Result<std::optional<PixelPoint>> crossNear(const GreyPicture& picture, const CrossSight& sight,
                                                          double reach);

}  // namespace crosstick::registration
