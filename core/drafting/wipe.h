#pragma once

#include "core/geodesy/plane_line.h"

namespace crosstick::drafting {

using geodesy::Line;
using geodesy::Stretch;

/// What is left of an open line when a stretch of it is wiped: none, one or two stretches. Rests shorter than a
/// thousandth of a metre are nothing.
[[nodiscard]] std::vector<Stretch> restOf(const Line& line, Stretch wiped);

/// What of an open line lies outside a region (even-odd rule), in the line's order.
/// Laws: (1) the lengths outside and inside are the line's; (2) vertices outside stay; (3) a region that the line does
/// not meet leaves it whole.
[[nodiscard]] std::vector<Stretch> stretchesOutside(const Line& line, const Line& region);

/// What of an area is left when a region is wiped out of it: none, one or several rings, the largest first, without a
/// closing repeat. One whose edge the region does not reach stays as it is: on film nothing of it is wiped.
[[nodiscard]] std::vector<Line> ringsOutside(const Line& ring, const Line& region);

}  // namespace crosstick::drafting
