#pragma once

#include "core/movement/route_figures.h"
#include "core/movement/work_grid.h"

namespace crosstick::movement {

/// The plan's one angle at a place of the grid of the work: by the model for the heading's date and the height there,
/// or the sheet's printed one brought to that date by its yearly change; whichever the plan chose, the other stands
/// beside it where it can be had. Errors: movement/no-date, movement/no-model, movement/no-printed-angle, those of
/// geodesy::MagneticModel::at where the model was chosen.
[[nodiscard]] Result<GmAngle> gmAngleAt(const plan::Plan& plan, const WorkGrid& grid, geodesy::PlanePoint middle,
                                        const geodesy::MagneticModel* model, const sheets::HeightSource* heights);

/// The sheet's printed angle on another day: printed + yearly change x years between (365.25 days).
[[nodiscard]] Degrees broughtTo(const plan::PrintedDeclination& printed, CalendarDate date);

}  // namespace crosstick::movement
