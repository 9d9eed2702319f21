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

/// The model's angle at that place on that day; none outside the model's dates.
[[nodiscard]] std::optional<Degrees> modelledAngle(const GmAngle& gm);
/// The sheet's printed angle less the model's, where the two are more than half a degree apart (our own limit: half a
/// degree is what a sheet prints to); none where they agree or one of them is not there.
[[nodiscard]] std::optional<Degrees> disagreement(const GmAngle& gm);

/// Where the plan's work is, for an angle that is told of the plan as a whole: the middle of the films' window, else of
/// the first sheet, else of what is placed on the ground. None for a plan with none of these.
[[nodiscard]] std::optional<geodesy::PlanePoint> middleOfWork(const plan::Plan& plan, const WorkGrid& grid);

/// The sheet's printed angle on another day: printed + yearly change x years between (365.25 days).
[[nodiscard]] Degrees broughtTo(const plan::PrintedDeclination& printed, CalendarDate date);

}  // namespace crosstick::movement
