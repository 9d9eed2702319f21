#pragma once

#include <vector>

#include "core/geodesy/points.h"
#include "core/units/result.h"

namespace crosstick::terrain {

enum class Side { Left, Right };

/// Our own default for the distance of a handrail from what it runs beside: far enough that a track's traffic passes
/// by, near enough to see it by day. No doctrinal figure.
inline constexpr Metres kUsualHandrail{100};

/// A line beside another at a set distance, on one side as one goes along it, in the same direction. Sharp bends are
/// rounded outside and cut short inside: no point lies nearer to the line than the distance, less 2 % where a round is
/// drawn with corners. Where the line bends back closer than that, the handrail passes by.
/// @param line  in any plane, in metres
/// Errors: terrain/no-offset (with `metres`) where the line has no length, the distance is not above 0 and up to 10 km,
/// or nothing is left of the handrail.
[[nodiscard]] Result<std::vector<geodesy::PlanePoint>> handrail(const std::vector<geodesy::PlanePoint>& line,
                                                                Metres distance, Side side);

}  // namespace crosstick::terrain
