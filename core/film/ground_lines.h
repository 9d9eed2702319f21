#pragma once

#include <vector>

#include "core/geodesy/crs.h"
#include "core/plan/plan.h"

namespace crosstick::film {

/// One measure, route or set-aside symbol as points of a grid, in order; areas return to their first point.
using GroundLine = std::vector<geodesy::PlanePoint>;

/// Everything of a plan that lies on the ground, by the way from the plan's plane to a grid. What the grid does not
/// reach is left out.
[[nodiscard]] std::vector<GroundLine> groundLines(const plan::Plan& plan, const geodesy::PlaneLink& link);

}  // namespace crosstick::film
