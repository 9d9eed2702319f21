#pragma once

#include "core/geodesy/plane_line.h"
#include "core/units/result.h"

namespace crosstick::drafting {

using geodesy::Ends;
using geodesy::Line;

enum class End { First, Last };

/// A line is drawn on no farther than this to reach another: our own bound, longer than any sheet is wide.
inline constexpr Metres kFarthestReach{50000};

/// A line that ends on another one. Where it crosses the other, what lies beyond the crossing nearest to that end is
/// cut off; where it does not, its end is drawn straight on to the first place where it meets the other.
/// Laws: (1) the new end lies on the other line; (2) the other end and the vertices between stay; (3) done twice it is
/// the same.
/// Errors: drafting/no-line where either has fewer than two places or the end has no direction; drafting/never-meets
/// where the line straight on passes the other by.
[[nodiscard]] Result<Line> endedOn(const Line& line, End end, const Line& other, Ends otherEnds);

}  // namespace crosstick::drafting
