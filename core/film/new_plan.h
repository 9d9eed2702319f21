#pragma once

#include "core/plan/plan.h"

namespace crosstick::film {

/// A plan with nothing drawn on a sheet: its plane is the zone of the sheet's middle on WGS 84, its window and ticks
/// those of proposeRegistration.
/// @param heading  its plane is set here
/// Errors: those of geodesy::Plane and proposeRegistration.
[[nodiscard]] Result<plan::Plan> planOnSheet(plan::Sheet sheet, plan::Heading heading, const Uuid& id);

/// A plan without a sheet, for one that is held in the hand: a window that an A4 film holds round a place, in the
/// zone's own grid, with a tick near each corner.
[[nodiscard]] plan::Plan planOnGrid(const geodesy::GridPoint& middle, Scale scale, plan::Heading heading,
                                    const Uuid& id);

}  // namespace crosstick::film
