#pragma once

#include <string>

#include "core/geodesy/points.h"
#include "core/units/result.h"

namespace crosstick::geodesy {

/// A plain text (plainText) read as latitude and longitude: degrees, degrees and minutes, or degrees, minutes and
/// seconds, with signs or the letters N S E W, with or without the signs or words for degree, minute and second; packed
/// with letters ("385322N 0770207W"); a comma between the two, or decimal commas in both. Latitude comes first unless
/// letters or words say otherwise. Errors as parsePoint.
[[nodiscard]] Result<GeoPoint> parseAngles(const std::string& plain);

}  // namespace crosstick::geodesy
