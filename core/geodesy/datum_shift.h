#pragma once

#include <optional>
#include <string>

#include "core/geodesy/points.h"
#include "core/units/result.h"

namespace crosstick::geodesy {

/// How PROJ brings points of a CRS to WGS 84 at a place, and whether it knows a better way that it cannot go.
struct DatumWay {
    std::string name;                ///< "NAD27 to WGS 84 (88)"; empty where both are the same
    std::optional<Metres> accuracy;  ///< as the register states it
    std::string missingGrid;         ///< "us_noaa_alaska.tif": a more accurate way needs it; empty where none does
    std::optional<Metres> accuracyWithGrid;
};

/// @param crs  projected  @param at  in its plane, in metres
/// Errors: geodesy/unknown-crs, geodesy/crs-not-projected, geodesy/no-transformation, geodesy/outside-plane.
[[nodiscard]] Result<DatumWay> datumWay(const std::string& crs, PlanePoint at);

}  // namespace crosstick::geodesy
