#pragma once

#include "core/plan/plan.h"

namespace crosstick::film {

/// A plan with nothing drawn on a sheet: its plane is the zone of the sheet's middle on WGS 84, its window and ticks
/// those of proposeRegistration.
/// @param heading  its plane is set here
/// Errors: those of geodesy::Plane and proposeRegistration.
[[nodiscard]] Result<plan::Plan> planOnSheet(plan::Sheet sheet, plan::Heading heading, const Uuid& id);

}  // namespace crosstick::film
