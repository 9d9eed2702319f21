#pragma once

#include "core/geodesy/plane_line.h"
#include "core/plan/plan.h"

namespace crosstick::drafting {

using geodesy::Line;

/// A stretch of something drawn, from beside one place to beside another.
struct DrawnStretch {
    plan::ItemId item;
    Line line;
};

/// The line, route or edge of an area of the shown films that passes both places within reach, the nearest of several;
/// round an area the shorter way. Nothing where none does.
[[nodiscard]] std::optional<DrawnStretch> drawnBetween(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films,
                                                       geodesy::PlanePoint from, geodesy::PlanePoint to, Metres reach);

}  // namespace crosstick::drafting
