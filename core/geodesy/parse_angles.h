#pragma once

#include <string>

#include "core/geodesy/points.h"
#include "core/units/result.h"

namespace crosstick::geodesy {

/// Latitude and longitude in degrees, degrees and minutes, or degrees, minutes and seconds, with signs or the letters
/// N S E W (upper case), with or without the signs for degree, minute and second; a comma may stand between them.
/// Latitude comes first unless the letters say otherwise. Errors as parsePoint.
[[nodiscard]] Result<GeoPoint> parseAngles(const std::string& upper);

}  // namespace crosstick::geodesy
