#pragma once

#include <string>

#include "core/geodesy/plane_angles.h"
#include "core/movement/route_figures.h"

namespace crosstick::app {

/// Which angle was taken and the other beside it, for people: "taken: WMM2025 for 2027-03-13, height 0 taken: -10.90°,
/// one sigma 0.36°; beside it: the sheet's printed angle on that day: -11.06°".
[[nodiscard]] std::string angleSourceText(const movement::GmAngle& gm, const std::string& modelName);
/// "G-M angle 11° W; grid to magnetic: add 11", where it comes from, and a caution where sheet and model differ: a line
/// each, with their ends.
[[nodiscard]] std::string angleText(const movement::GmAngle& gm, geodesy::AngleUnit unit, const std::string& modelName);

}  // namespace crosstick::app
