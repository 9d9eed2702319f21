#pragma once

#include "core/units/quantity.h"

namespace crosstick::geodesy {

/// WGS 84, north and east positive. Latitude in [-90, 90]; longitude in [-180, 180).
struct GeoPoint {
    Degrees latitude;
    Degrees longitude;
    friend constexpr bool operator==(const GeoPoint&, const GeoPoint&) = default;
};

/// A point in some plane that the holder knows (a plan's plane, a sheet's grid). Metres, easting right, northing up.
struct PlanePoint {
    Metres easting;
    Metres northing;
    friend constexpr bool operator==(const PlanePoint&, const PlanePoint&) = default;
};

enum class Hemisphere { North, South };

/// A UTM zone 1 to 60, or 0 for UPS, on WGS 84.
struct Zone {
    int number = 31;
    Hemisphere hemisphere = Hemisphere::North;
    friend constexpr bool operator==(Zone, Zone) = default;
};

/// A point of the UTM or UPS grid on WGS 84.
struct GridPoint {
    Zone zone;
    PlanePoint at;
    friend constexpr bool operator==(const GridPoint&, const GridPoint&) = default;
};

}  // namespace crosstick::geodesy
