#include "core/geodesy/plane_angles.h"

#include <cmath>
#include <limits>

#include <fmt/format.h>

namespace crosstick::geodesy {
namespace {

/// Halves go up, whatever the rounding mode; a result of 10 m steps that float noise puts just below a half still does.
std::int64_t rounded(double value) {
    return static_cast<std::int64_t>(std::floor(value + 0.5));
}

}  // namespace

Metres planeDistance(PlanePoint from, PlanePoint to) {
    return Metres(std::hypot((to.easting - from.easting).value(), (to.northing - from.northing).value()));
}

Degrees planeAzimuth(PlanePoint from, PlanePoint to) {
    const double east = (to.easting - from.easting).value();
    const double north = (to.northing - from.northing).value();
    if (east == 0 && north == 0) {
        return Degrees(std::numeric_limits<double>::quiet_NaN());
    }
    return fullCircle(degrees(Radians(std::atan2(east, north))));
}

Degrees backAzimuth(Degrees azimuth) {
    return fullCircle(azimuth + Degrees(azimuth.value() < 180 ? 180 : -180));
}

Degrees gmAngle(Degrees declination, Degrees convergence) {
    return declination - convergence;
}

Degrees magneticAzimuth(Degrees grid, Degrees gmAngle) {
    return fullCircle(grid - gmAngle);
}

std::string azimuthText(Degrees azimuth, AngleUnit unit) {
    if (!isFinite(azimuth)) {
        return "---";
    }
    if (unit == AngleUnit::Mils) {
        return fmt::format("{:04}", rounded(mils(fullCircle(azimuth)).value() / 10) * 10 % 6400);
    }
    return fmt::format("{:03}", rounded(fullCircle(azimuth).value()) % 360);
}

Metres roundedDistance(Metres distance) {
    return Metres(static_cast<double>(rounded(distance.value() / 10) * 10));
}

std::string distanceText(Metres distance) {
    return isFinite(distance) ? fmt::format("{}", rounded(distance.value() / 10) * 10) : "---";
}

}  // namespace crosstick::geodesy
