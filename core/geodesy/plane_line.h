#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

#include "core/geodesy/points.h"
#include "core/units/quantity.h"

namespace crosstick::geodesy {

/// Places of a plane, one after the other, with straight pieces between them.
using Line = std::vector<PlanePoint>;
enum class Ends { Open, Closed };  ///< closed: a piece leads from the last place to the first

/// A place on a line. Its way counts vertices: 2.25 lies a quarter on from the third vertex to the fourth.
struct OnLine {
    PlanePoint at;
    double way = 0;
    Metres away;  ///< from the place that was asked for
};

/// The place of a line that is nearest to another; the earlier one where two are. Nothing for a line without places.
[[nodiscard]] std::optional<OnLine> nearestOn(const Line& line, Ends ends, PlanePoint at);

/// The place at a way along a line: 0 to the number of its vertices less one (open), to that number (closed).
[[nodiscard]] PlanePoint placeAt(const Line& line, double way);

/// A part of an open line, by ways along it, from < to.
struct Stretch {
    double from = 0, to = 0;
    friend bool operator==(const Stretch&, const Stretch&) = default;
};
/// The line of a stretch: its ends and the vertices between them.
[[nodiscard]] Line lineOf(const Line& line, Stretch stretch);

/// The part of an open line between the places nearest to two others, in the line's own direction whichever is named
/// first, with all corners in between; nothing of a line without places.
/// Laws: (1) its ends lie on the line; (2) from start to end it is the line; (3) the parts on both sides of a place are
///       together as long as the line.
[[nodiscard]] Line partBetween(const Line& line, PlanePoint one, PlanePoint other);

/// Where a straight piece crosses another: the share of both at which it does; nothing for parallel ones.
struct Crossing {
    double ofFirst = 0, ofSecond = 0;
};
[[nodiscard]] std::optional<Crossing> crossing(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d);

/// Which places of a row have to stay so that none that is left out lies farther than the tolerance from the straight
/// piece that goes by it (Douglas and Peucker's way). The first and the last stay.
/// @param away  of the place n from the piece between two others
[[nodiscard]] std::vector<std::size_t> placesToKeep(
    std::size_t count, double tolerance,
    const std::function<double(std::size_t n, std::size_t from, std::size_t to)>& away);
/// The same line with fewer places: none that is left out lies farther from it than the tolerance. The ends
/// stay.
[[nodiscard]] Line simplified(const Line& line, Metres tolerance);

[[nodiscard]] Metres lengthOf(const Line& line);
/// How far two lines lie apart at most, seen from the corners of each (a lower bound of the Hausdorff distance, which
/// it reaches for lines that differ by moved corners). 0 where one of them has no places.
[[nodiscard]] Metres farthestApart(const Line& one, const Line& other);

/// Is a place inside a ring? By the even-odd rule; one on the edge may be either.
[[nodiscard]] bool isInside(PlanePoint at, const Line& ring);

}  // namespace crosstick::geodesy
