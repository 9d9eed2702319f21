#pragma once

#include <optional>
#include <vector>

#include "core/geodesy/points.h"
#include "core/units/quantity.h"

namespace crosstick::drafting {

/// Places of a plane, one after the other, with straight pieces between them.
using Line = std::vector<geodesy::PlanePoint>;
enum class Ends { Open, Closed };  ///< closed: a piece leads from the last place to the first

/// A place on a line. Its way counts vertices: 2.25 lies a quarter on from the third vertex to the fourth.
struct OnLine {
    geodesy::PlanePoint at;
    double way = 0;
    Metres away;  ///< from the place that was asked for
};

/// The place of a line that is nearest to another; the earlier one where two are. Nothing for a line without places.
[[nodiscard]] std::optional<OnLine> nearestOn(const Line& line, Ends ends, geodesy::PlanePoint at);

/// The place at a way along a line: 0 to the number of its vertices less one (open), to that number (closed).
[[nodiscard]] geodesy::PlanePoint placeAt(const Line& line, double way);

/// A part of an open line, by ways along it, from < to.
struct Stretch {
    double from = 0, to = 0;
    friend bool operator==(const Stretch&, const Stretch&) = default;
};
/// The line of a stretch: its ends and the vertices between them.
[[nodiscard]] Line lineOf(const Line& line, Stretch stretch);

/// Where a straight piece crosses another: the share of both at which it does; nothing for parallel ones.
struct Crossing {
    double ofFirst = 0, ofSecond = 0;
};
[[nodiscard]] std::optional<Crossing> crossing(geodesy::PlanePoint a, geodesy::PlanePoint b, geodesy::PlanePoint c,
                                               geodesy::PlanePoint d);

/// The same line with fewer places: none that is left out lies farther from it than the tolerance (Douglas and
/// Peucker's way). The ends stay.
[[nodiscard]] Line simplified(const Line& line, Metres tolerance);

[[nodiscard]] Metres lengthOf(const Line& line);

/// Is a place inside a ring? By the even-odd rule; one on the edge may be either.
[[nodiscard]] bool isInside(geodesy::PlanePoint at, const Line& ring);

}  // namespace crosstick::drafting
