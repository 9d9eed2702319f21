#include "core/plan/line_part.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace crosstick::plan {
namespace {

using geodesy::PlanePoint;
using Line = std::vector<PlanePoint>;

Metres between(PlanePoint a, PlanePoint b) {
    return Metres(std::hypot((b.easting - a.easting).value(), (b.northing - a.northing).value()));
}

PlanePoint onPiece(PlanePoint a, PlanePoint b, double share) {
    return {a.easting + (b.easting - a.easting) * share, a.northing + (b.northing - a.northing) * share};
}

/// Where on a piece the foot of a place lies, from 0 to 1.
double shareOf(PlanePoint a, PlanePoint b, PlanePoint p) {
    const double dx = (b.easting - a.easting).value();
    const double dy = (b.northing - a.northing).value();
    const double square = dx * dx + dy * dy;
    const double foot = (p.easting - a.easting).value() * dx + (p.northing - a.northing).value() * dy;
    return square > 0 ? std::clamp(foot / square, 0.0, 1.0) : 0.0;
}

Metres farthestFrom(const Line& line, const Line& corners) {
    Metres most{0};
    for (const PlanePoint corner : corners) {
        most = std::max(most, nearestAlong(line, corner).away);
    }
    return most;
}

}  // namespace

PlaceAlong nearestAlong(const Line& line, PlanePoint to) {
    constexpr double kNowhere = std::numeric_limits<double>::quiet_NaN();
    if (line.empty()) {
        return {Metres(kNowhere), Metres(kNowhere), {Metres(kNowhere), Metres(kNowhere)}};
    }
    PlaceAlong best{Metres(0), between(line.front(), to), line.front()};
    Metres before{0};
    for (std::size_t n = 1; n < line.size(); ++n) {
        const double share = shareOf(line[n - 1], line[n], to);
        const PlanePoint foot = onPiece(line[n - 1], line[n], share);
        const Metres long_ = between(line[n - 1], line[n]);
        if (const Metres away = between(foot, to); away < best.away) {
            best = {before + long_ * share, away, foot};
        }
        before += long_;
    }
    return best;
}

Line partOf(const Line& line, Metres from, Metres to) {
    const Metres whole = lengthOf(line);
    if (!(whole > Metres(0))) {
        return line;
    }
    const auto inside = [whole](Metres at) { return std::clamp(at, Metres(0), whole); };
    const Metres first = inside(std::min(from, to));
    const Metres last = inside(std::max(from, to));
    Line part;
    Metres before{0};
    for (std::size_t n = 1; n < line.size(); ++n) {
        const Metres long_ = between(line[n - 1], line[n]);
        const Metres after = before + long_;
        const auto placed = [&](Metres at) { return onPiece(line[n - 1], line[n], (at - before) / long_); };
        if (part.empty() && first <= after && long_ > Metres(0)) {
            part.push_back(first == before ? line[n - 1] : placed(first));
        }
        if (!part.empty() && last <= after) {
            part.push_back(last == after ? line[n] : placed(last));
            break;
        }
        if (!part.empty() && after > first) {
            part.push_back(line[n]);
        }
        before = after;
    }
    return part;
}

Metres lengthOf(const Line& line) {
    Metres whole{0};
    for (std::size_t n = 1; n < line.size(); ++n) {
        whole += between(line[n - 1], line[n]);
    }
    return whole;
}

Metres farthestApart(const Line& one, const Line& other) {
    if (one.empty() || other.empty()) {
        return Metres(0);
    }
    return std::max(farthestFrom(one, other), farthestFrom(other, one));
}

}  // namespace crosstick::plan
