#pragma once

#include "tests/movement/kettle_plan.h"

namespace crosstick::film {

/// Exercise SLOW KETTLE as it is printed: the plan of the hand check with its sheet's place, both boundaries, areas,
/// the papers' heading, films HIGHER (no phase), MOVE (1, 2) and LOOK (3), and the window and ticks of the scenario.
[[nodiscard]] plan::Plan printedPlan();

/// The same without a window, lying on a sheet of another grid: corner and size in that grid's metres.
[[nodiscard]] plan::Plan printedOn(const std::string& crs, geodesy::PlanePoint upperLeft, Metres wide, Metres high);

/// One phase line in a UTM zone, on a sheet of a grid; no window.
[[nodiscard]] plan::Plan lineOn(geodesy::Zone zone, const std::vector<geodesy::PlanePoint>& points,
                                const std::string& crs, geodesy::PlanePoint upperLeft, Metres side);

}  // namespace crosstick::film
