#pragma once

#include <vector>

#include "core/geodesy/points.h"

namespace crosstick::plan {

/// The place of a line that is nearest to some other place.
struct PlaceAlong {
    Metres along;  ///< from the line's start
    Metres away;   ///< from that other place
    geodesy::PlanePoint at;
};

/// Of two places of a line equally near the earlier counts. A line without points has none: everything is not finite.
[[nodiscard]] PlaceAlong nearestAlong(const std::vector<geodesy::PlanePoint>& line, geodesy::PlanePoint to);

/// The part of a line between two places, in the line's own direction whichever place is named first, with all corners
/// in between.
/// Laws: (1) its ends lie on the line; (2) from start to end it is the line; (3) the parts on both sides of a place are
///       together as long as the line.
[[nodiscard]] std::vector<geodesy::PlanePoint> partOf(const std::vector<geodesy::PlanePoint>& line, Metres from,
                                                      Metres to);
[[nodiscard]] Metres lengthOf(const std::vector<geodesy::PlanePoint>& line);

/// How far two lines lie apart at most, seen from the corners of each (a lower bound of the Hausdorff distance, which
/// it reaches for lines that differ by moved corners). 0 where one of them has no points.
[[nodiscard]] Metres farthestApart(const std::vector<geodesy::PlanePoint>& one,
                                   const std::vector<geodesy::PlanePoint>& other);

}  // namespace crosstick::plan
