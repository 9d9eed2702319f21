#pragma once

#include <string_view>

#include "core/geodesy/plane_angles.h"
#include "core/units/result.h"

namespace crosstick::drafting {

enum class North { Grid, Magnetic, True };

/// The angles between the norths at a place, east positive.
struct Norths {
    Degrees gridToMagnetic;  ///< the G-M angle
    Degrees trueToGrid;      ///< the convergence
};

/// An azimuth read from one of the norths.
struct Bearing {
    Degrees azimuth;  ///< [0, 360)
    North north = North::Magnetic;
    friend bool operator==(const Bearing&, const Bearing&) = default;
};
struct BearingAndDistance {
    Bearing bearing;
    Metres distance;
    friend bool operator==(const BearingAndDistance&, const BearingAndDistance&) = default;
};

/// grid = magnetic + G-M angle = true - convergence, in [0, 360) (trade 4.2).
[[nodiscard]] Degrees gridAzimuth(const Bearing& bearing, const Norths& norths);
/// The same direction read from another north; the other way round of gridAzimuth().
[[nodiscard]] Degrees azimuthFrom(North north, Degrees gridAzimuth, const Norths& norths);

/// A typed azimuth: "227", "227 G", "4036 mils T", "12.5 M". What is not said is magnetic, as a compass reads, and in
/// the unit given. Both as typed are counted full: 360 is 0.
/// Errors: drafting/no-bearing; drafting/bearing-range for one beyond 360 degrees or 6400 mils.
[[nodiscard]] Result<Bearing> bearingTyped(std::string_view text, geodesy::AngleUnit unit);
/// The same with a distance behind it, in metres or km, up to 100 km: "227 G 2500", "227, 2.5 km".
/// Errors: bearingTyped()'s; drafting/no-distance.
[[nodiscard]] Result<BearingAndDistance> bearingAndDistanceTyped(std::string_view text, geodesy::AngleUnit unit);

}  // namespace crosstick::drafting
