#pragma once

#include <string>

#include "core/geodesy/points.h"

namespace crosstick::geodesy {

/// Straight distance in the plane, as a ruler on the map gives it. Exact but for rounding.
[[nodiscard]] Metres planeDistance(PlanePoint from, PlanePoint to);
/// Grid azimuth, clockwise from grid north, [0, 360). Equal points: not a number.
[[nodiscard]] Degrees planeAzimuth(PlanePoint from, PlanePoint to);
/// The same line read backwards: + 180 up to 180, - 180 from there; in [0, 360).
[[nodiscard]] Degrees backAzimuth(Degrees azimuth);
/// The angle from grid north to magnetic north, east (clockwise) positive: declination - convergence (trade 4.2).
[[nodiscard]] Degrees gmAngle(Degrees declination, Degrees convergence);
/// magnetic = grid - gmAngle, in [0, 360) (trade 4.2).
[[nodiscard]] Degrees magneticAzimuth(Degrees grid, Degrees gmAngle);

enum class AngleUnit { Degrees, Mils };

/// As the trade writes an azimuth: "018" (whole degrees, three figures, 000 to 359) or "0330" (10 mils, four figures,
/// 0000 to 6390). Halves go up. Not a number: "---".
[[nodiscard]] std::string azimuthText(Degrees azimuth, AngleUnit unit);
/// As the trade writes a distance: to 10 m, "1080". Halves go up.
[[nodiscard]] std::string distanceText(Metres distance);
/// The distance that distanceText writes.
[[nodiscard]] Metres roundedDistance(Metres distance);

}  // namespace crosstick::geodesy
