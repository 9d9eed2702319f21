#pragma once

#include <string>

#include "core/geodesy/grid_reference.h"

namespace crosstick::geodesy {

// Places as people read them. parsePoint reads every one of these texts back.

/// "38 53 22.08 N  77 02 06.99 W": to 0.01 second, 0.3 m.
[[nodiscard]] std::string sexagesimalText(GeoPoint place);
/// "38.8894673 N  77.0352402 W": to 1e-7 degree, 11 mm.
[[nodiscard]] std::string degreesText(GeoPoint place);
/// "18 north 323483.168 4306479.498", "south 2746000.000 1515000.000" for UPS: to the millimetre; the hemisphere is
/// written out because S is a latitude band too.
[[nodiscard]] std::string gridText(const GridPoint& point);
/// "18S UJ 2348 0647"; polar "Z AA 0000 0332". Where MGRS does not reach, gridText.
[[nodiscard]] std::string mgrsText(const GridPoint& point, Digits digits);

/// "1 degree 17 minutes west" of true north: how a sheet's margin gives convergence, to the minute.
[[nodiscard]] std::string convergenceText(Degrees convergence);
/// "11 degrees (190 mils) WEST; grid to magnetic: add 11": to half a degree and to 10 mils, as a sheet's margin has it.
[[nodiscard]] std::string gmAngleText(Degrees gmAngle);

}  // namespace crosstick::geodesy
