#pragma once

#include <string_view>

#include "core/geodesy/plane_line.h"
#include "core/units/result.h"

namespace crosstick::drafting {

using geodesy::Line;

/// A line of sight as it is drawn on the map: from a known point along a grid azimuth.
struct Sight {
    geodesy::PlanePoint from;
    Degrees gridAzimuth;
};

/// Where lines of sight meet.
struct Fix {
    geodesy::PlanePoint at;  ///< of three: the place whose distances from the lines have the least sum of squares
    Line triangle;           ///< of error, of three sights; empty of two
    Metres longestSide;      ///< of it; 0 of two, which have nothing to check each other by
    Degrees cut;             ///< the best angle at which two of them cross, 0 to 90
};

/// Two lines that cross under this are not to be trusted (common practice, from memory: 30 to 150 degrees).
inline constexpr Degrees kLeastCut{30};

/// A point by lines of sight from two or three known points: by intersection with the azimuths to it, by resection with
/// the back azimuths of those taken there.
/// @param sights  two or three, in one plane's metres
/// Laws: (1) sights drawn through one place meet there; (2) their order does not matter.
/// Errors: drafting/too-few-sights; drafting/sights-along where two are parallel to less than a degree;
/// drafting/sights-part where two meet behind a known point.
/// Source: FM 3-25.26, intersection and resection (trade 4.6); the least squares are ours.
[[nodiscard]] Result<Fix> fixBy(const std::vector<Sight>& sights);

/// The place at a grid azimuth and map distance from another (polar plot, trade 4.6). Exact but for rounding.
[[nodiscard]] geodesy::PlanePoint polarPlace(geodesy::PlanePoint from, Degrees gridAzimuth, Metres mapDistance);

}  // namespace crosstick::drafting
