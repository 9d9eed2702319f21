#pragma once

#include <vector>

#include "core/plan/plan.h"

namespace crosstick::film {

/// The same window with its ticks on other crossings of the printed grid.
/// @param crossings  in the grid of the plan's first sheet; one that lies within a twentieth of the interval from a
///                   crossing means it; named twice, it counts once
/// Errors: film/not-a-crossing with "easting", "northing", "interval"; film/tick-outside-window with "easting",
///         "northing" (a tick's arms need 7 mm inside the frame); film/too-few-ticks with "count";
///         film/ticks-in-a-row where the ticks span less than a twentieth of the window: a film could turn about them.
[[nodiscard]] Result<plan::Registration> withTicksAt(const plan::Registration& registration,
                                                     const std::vector<geodesy::PlanePoint>& crossings, Scale scale);

/// A window between two corners, whichever they are, rounded outward to tenths of the grid interval, with the ticks
/// that it would be proposed. Errors: film/window-too-small with "least" (metres a side); those of proposeTicks.
[[nodiscard]] Result<plan::Registration> withWindow(const plan::Plan& plan, geodesy::PlanePoint corner,
                                                    geodesy::PlanePoint opposite);

}  // namespace crosstick::film
