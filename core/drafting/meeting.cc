#include "core/drafting/meeting.h"

#include <algorithm>

#include "core/drafting/faults.h"
#include "core/geodesy/plane_angles.h"

namespace crosstick::drafting {
namespace {

constexpr Metres kThere{0.001};

std::size_t piecesOf(const Line& line, Ends ends) {
    return line.size() - (ends == Ends::Closed ? 0 : 1);
}

/// The last way at which a line meets the other.
std::optional<double> lastMeeting(const Line& line, const Line& other, Ends otherEnds) {
    std::optional<double> last;
    for (std::size_t n = 0; n + 1 < line.size(); ++n) {
        for (std::size_t k = 0; k < piecesOf(other, otherEnds); ++k) {
            const auto met = crossing(line[n], line[n + 1], other[k], other[(k + 1) % other.size()]);
            const bool isOnBoth =
                met && met->ofFirst >= 0 && met->ofFirst <= 1 && met->ofSecond >= 0 && met->ofSecond <= 1;
            if (isOnBoth && (!last || static_cast<double>(n) + met->ofFirst > *last)) {
                last = static_cast<double>(n) + met->ofFirst;
            }
        }
    }
    return last;
}

Result<Line> drawnOn(Line line, const Line& other, Ends otherEnds) {
    const geodesy::PlanePoint end = line.back();
    const geodesy::PlanePoint before = line[line.size() - 2];
    const Metres step = geodesy::planeDistance(before, end);
    if (!(step > kThere)) {
        return fail(kNoLine);
    }
    std::optional<double> least;  // in the last piece's own length
    for (std::size_t k = 0; k < piecesOf(other, otherEnds); ++k) {
        const auto met = crossing(before, end, other[k], other[(k + 1) % other.size()]);
        if (met && met->ofFirst >= 1 && met->ofSecond >= 0 && met->ofSecond <= 1 && (!least || met->ofFirst < *least)) {
            least = met->ofFirst;
        }
    }
    if (!least || step * (*least - 1) > kFarthestReach) {
        return fail(kNeverMeets, {{"metres", kFarthestReach.value()}});
    }
    line.back() = {before.easting + (end.easting - before.easting) * *least,
                   before.northing + (end.northing - before.northing) * *least};
    return line;
}

}  // namespace

Result<Line> endedOn(const Line& line, End end, const Line& other, Ends otherEnds) {
    if (line.size() < 2 || other.size() < 2) {
        return fail(kNoLine);
    }
    Line forward = line;
    if (end == End::First) {
        std::reverse(forward.begin(), forward.end());
    }
    const auto there = nearestOn(other, otherEnds, forward.back());
    Result<Line> ended = forward;
    if (!(there && there->away <= kThere)) {
        const auto last = lastMeeting(forward, other, otherEnds);
        ended = last && *last > 0 ? Result<Line>(lineOf(forward, {0, *last})) : drawnOn(forward, other, otherEnds);
    }
    if (ended && end == End::First) {
        std::reverse(ended->begin(), ended->end());
    }
    return ended;
}

}  // namespace crosstick::drafting
