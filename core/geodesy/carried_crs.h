#pragma once

#include <string>
#include <vector>

#include "core/geodesy/points.h"
#include "core/units/result.h"

namespace crosstick::geodesy {

/// A place on a CRS's own datum and ellipsoid, which need not be WGS 84. North and east positive.
struct DatumPoint {
    Degrees latitude;
    Degrees longitude;
};

/// What a file that is no map carries of a plane, so that other programs find it again.
struct CarriedCrs {
    std::string wkt;                 ///< WKT 1 in ESRI's dialect, one line
    int epsg = 0;                    ///< 0 where the CRS bears no EPSG number
    std::vector<DatumPoint> points;  ///< the points asked for, in their order
};

/// @param crs     "EPSG:32625" or WKT
/// @param points  metres in that plane
/// Errors: geodesy/unknown-crs, geodesy/crs-not-projected, geodesy/outside-plane.
[[nodiscard]] Result<CarriedCrs> carriedCrs(const std::string& crs, const std::vector<PlanePoint>& points);

}  // namespace crosstick::geodesy
