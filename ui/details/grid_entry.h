#pragma once

#include <string>
#include <string_view>

#include "core/movement/work_grid.h"
#include "core/plan/plan.h"

namespace crosstick::details {

/// A grid as people type it, in the plan's plane: any writing of geodesy::parsePoint; or figures alone ("4583 0845"),
/// of all places that have them the nearest to one that is known, since on a sheet nobody says the 100 km square; or
/// figures behind the letters of a square ("FL 5427 9806"), the nearest of those.
/// Errors: those of parsePoint; details/grid-off-sheet with "away_km" where it lies over 1 km off the plan's first
/// sheet; details/grid-unread for figures where no square is known.
[[nodiscard]] Result<geodesy::PlanePoint> gridEntered(std::string_view text, const plan::Plan& plan,
                                                      const movement::WorkGrid& grid, geodesy::PlanePoint near);
/// The grid as the field shows it: "25T FL 5427 9806" to 10 m where the sheet's grid is MGRS, else its own figures.
[[nodiscard]] std::string gridShown(const movement::WorkGrid& grid, geodesy::PlanePoint inPlan);

}  // namespace crosstick::details
