#pragma once

#include <optional>

#include "core/plan/plan.h"
#include "core/terrain/handrail.h"

namespace crosstick::terrain {

/// How far a place lies inside our boundaries: from the nearest of them, negative outside. A boundary is ours where one
/// of its units is the heading's ("2/C" of "2/C UTB"): that one's side is inside. Where the heading names no unit, ours
/// is the only one that each of two or more boundaries names. Nothing where the plan has no boundary of ours.
[[nodiscard]] std::optional<Metres> insideBoundaries(const plan::Plan& plan, geodesy::PlanePoint at);

/// The least of that along a line; nothing where the plan has no boundary of ours, or the line no places.
[[nodiscard]] std::optional<Metres> leastInside(const plan::Plan& plan, const std::vector<geodesy::PlanePoint>& line);

/// On which of two sides of a line one is farther inside our boundaries, as the handrails on both lie; nothing where
/// the plan has no boundary of ours.
[[nodiscard]] std::optional<Side> innerSide(const plan::Plan& plan, const std::vector<geodesy::PlanePoint>& onTheLeft,
                                            const std::vector<geodesy::PlanePoint>& onTheRight);

}  // namespace crosstick::terrain
