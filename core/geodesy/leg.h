#pragma once

#include <optional>

#include "core/geodesy/declination.h"
#include "core/geodesy/grid_reference.h"
#include "core/units/result.h"
#include "core/units/time.h"

namespace crosstick::geodesy {

/// The three norths at a point of the UTM or UPS grid: how grid and magnetic north lie from true north, and how far the
/// one from the other.
struct Norths {
    PlaneFactors grid;                       ///< convergence and scale
    std::optional<Declination> declination;  ///< none where the model gives none
    std::optional<Error> noDeclination;      ///< then, why
    std::optional<Degrees> gmAngle;          ///< declination - convergence, east positive (trade 4.2)
    CalendarDate date;
    Metres height;
};

/// @param height above the ellipsoid
/// Errors: geodesy/off-grid.
[[nodiscard]] Result<Norths> norths(const GridPoint& point, const MagneticModel& model, CalendarDate date,
                                    Metres height);

/// An azimuth and the same line read from the other end, both in [0, 360).
struct Bearing {
    Degrees forward, back;
};

/// A straight line in the grid of its first point's zone. Bearings are absent for a leg of no length.
struct Leg {
    GridPoint from, to;                ///< both in the zone of the first
    std::optional<Bearing> grid;       ///< in the plane; back = forward +- 180
    std::optional<Bearing> trueNorth;  ///< of the geodesic, each at its own end
    std::optional<Bearing> magnetic;   ///< grid - G-M angle at the middle; absent too without a declination
    Metres gridDistance;               ///< in the plane, as a ruler on the map gives it
    Metres groundDistance;             ///< of the geodesic on the ellipsoid
    Norths middle;                     ///< half way in the plane, at height 0
};

/// Errors: geodesy/outside-zone where the second point is out of the first one's zone's reach; geodesy/off-grid.
[[nodiscard]] Result<Leg> legBetween(const GridPoint& from, const GridPoint& to, const MagneticModel& model,
                                     CalendarDate date);

}  // namespace crosstick::geodesy
