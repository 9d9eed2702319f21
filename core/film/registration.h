#pragma once

#include "core/plan/plan.h"

namespace crosstick::film {

/// Distance of the printed grid's lines that ticks stand on: 1 km for 1:10,000 to 1:100,000, 100 m for larger scales,
/// 10 km for smaller ones, as sheets usually print it.
[[nodiscard]] Metres gridInterval(Scale scale);

/// A window and ticks for all films of a plan, in the grid of its first sheet (or its own plane).
///
/// The window holds every measure and route that lies on the ground with 10 mm round it for labels, cut to the sheet; a
/// plan without any takes the middle of the sheet that fits A4, else A3. Window edges lie on whole 100 m where that
/// keeps them on the sheet. Ticks are four crossings nearest the window's corners, at least 8 mm inside it, clear of
/// what is drawn (7 mm) where the grid leaves a choice; three where no fourth fits. Errors: film/no-ground for a plan
/// with neither sheet nor measures; film/too-few-crossings with "count" and "scale";
///         film/nothing-reached where the sheet's grid reaches none of the measures; those of geodesy::PlaneLink.
[[nodiscard]] Result<plan::Registration> proposeRegistration(const plan::Plan& plan);

}  // namespace crosstick::film
