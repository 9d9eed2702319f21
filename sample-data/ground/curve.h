#pragma once

#include "core/units/quantity.h"
#include "sample-data/place.h"

namespace crosstick::demo {

enum class Ends { Open, Closed };

/// A centripetal Catmull-Rom curve through the points, in steps of about `step`. It passes through every point; heights
/// run the same way but never beyond those of the two neighbours, so that what falls in the list falls on the curve.
/// A closed curve does not repeat its first point. Fewer than two points: as they are.
/// Source: Catmull and Rom 1974; Barry and Goldman 1988 for the recursive form used here, exponent 1/2.
[[nodiscard]] PegLine smoothed(const PegLine& pegs, Metres step, Ends ends = Ends::Open);
[[nodiscard]] Line smoothed(const Line& points, Metres step, Ends ends = Ends::Open);

}  // namespace crosstick::demo
