#include "core/geodesy/geodesic.h"

#include <limits>

#include <GeographicLib/Geodesic.hpp>

namespace crosstick::geodesy {

Geodesic geodesic(GeoPoint from, GeoPoint to) {
    double distance = 0;
    double start = 0;
    double end = 0;
    GeographicLib::Geodesic::WGS84().Inverse(from.latitude.value(), from.longitude.value(), to.latitude.value(),
                                             to.longitude.value(), distance, start, end);
    if (from == to) {
        start = end = std::numeric_limits<double>::quiet_NaN();
    }
    return {Metres(distance), fullCircle(Degrees(start)), fullCircle(Degrees(end))};
}

}  // namespace crosstick::geodesy
