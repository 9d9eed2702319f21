#pragma once

#include "core/geodesy/points.h"

namespace crosstick::geodesy {

struct Geodesic {
    Metres distance;
    Degrees azimuthAtStart;  ///< true, [0, 360); not a number for equal points
    Degrees azimuthAtEnd;    ///< onward at the end point
};

/// The shortest line on the WGS 84 ellipsoid. Accuracy: 15 nm (Karney 2013, through GeographicLib).
[[nodiscard]] Geodesic geodesic(GeoPoint from, GeoPoint to);

}  // namespace crosstick::geodesy
