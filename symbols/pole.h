#pragma once

#include "symbols/sketch.h"

namespace crosstick::symbols {

/// The point of an area that lies farthest from its edge, to 0.1 mm: where its name has most room. The centroid is kept
/// where no place is better by more than that, so that a long even area is named in its middle. A ring that crosses
/// itself is taken by the even-odd rule, as it is painted. Film millimetres; fewer than three points: their mean.
[[nodiscard]] Point poleOf(const Points& ring);

}  // namespace crosstick::symbols
