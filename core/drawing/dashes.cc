#include "core/drawing/dashes.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace crosstick::drawing {
namespace {

constexpr double kCorner = std::numbers::pi / 6;

bool isCorner(const Points& points, std::size_t before, std::size_t at, std::size_t after) {
    return std::abs(turn(points[at] - points[before], points[after] - points[at])) > kCorner;
}

/// Positions of the corners that count, those of a closed line's first vertex as 0.
std::vector<double> cornersOf(const Path& path, Dash dash, CornerRule rule) {
    const Points& points = path.points();
    std::vector<double> corners;
    const double room = rule == CornerRule::UsersLine ? dash.on + dash.off : 0;
    const std::size_t last = points.size() - 1;
    if (path.closed() && isCorner(points, last - 1, 0, 1)) {
        corners.push_back(0);
    }
    double before = 0;
    for (std::size_t n = 1; n < last; ++n) {
        const double s = path.position(n);
        if (isCorner(points, n - 1, n, n + 1) && s - before >= room && path.length() - s >= room) {
            corners.push_back(s);
            before = s;
        }
    }
    return corners;
}

enum class End { Free, Corner };

/// The dashes of one stretch, as stretches of the path.
void dashStretch(double from, double to, End start, End end, Dash dash, std::vector<Stretch>& out) {
    const double l = to - from;
    const double a = start == End::Corner ? dash.on / 2 : dash.on;
    const double b = end == End::Corner ? dash.on / 2 : dash.on;
    if (l < a + b + 0.6 * dash.off) {
        out.push_back({from, to});
        return;
    }
    const double inner = std::max(0.0, std::round((l - a - b - dash.off) / (dash.on + dash.off)));
    const double f = l / (a + b + inner * dash.on + (inner + 1) * dash.off);
    double s = from;
    for (int n = 0; n <= static_cast<int>(inner) + 1; ++n) {
        const double on = n == 0 ? a : n == static_cast<int>(inner) + 1 ? b : dash.on;
        out.push_back({s, s + on * f});
        s += (on + dash.off) * f;
    }
    out.back().to = to;
}

/// Pieces that touch at a corner become one.
std::vector<Stretch> joined(const std::vector<Stretch>& pieces) {
    std::vector<Stretch> whole;
    for (const Stretch& piece : pieces) {
        if (!whole.empty() && piece.from - whole.back().to < 1e-9) {
            whole.back().to = piece.to;
        } else {
            whole.push_back(piece);
        }
    }
    return whole;
}

/// Which counted corners there are depends on where counting begins. It begins at the western end (then the southern;
/// on a ring, toward the more western neighbour of its first vertex), so that a line drawn backwards looks the same.
bool runsBackwards(const Path& path) {
    const Points& points = path.points();
    const bool isRing = path.closed() && points.size() > 3;
    const Point first = isRing ? points[1] : points.front();
    const Point last = isRing ? points[points.size() - 2] : points.back();
    return last.x != first.x ? last.x < first.x : last.y > first.y;
}

std::vector<Polyline> solid(const Path& path) {
    Points points = path.points();
    if (path.closed() && points.size() > 1) {
        points.pop_back();
    }
    return {{std::move(points), path.closed()}};
}

std::vector<Polyline> dashedForwards(const Path& path, Dash dash, CornerRule rule) {
    const double whole = path.length();
    std::vector<double> ends = cornersOf(path, dash, rule);
    const bool wraps = path.closed();
    const bool cornerAtStart = !ends.empty() && ends.front() == 0;
    if (!cornerAtStart) {
        ends.insert(ends.begin(), 0);
    }
    ends.push_back(whole);
    std::vector<Stretch> pieces;
    for (std::size_t n = 0; n + 1 < ends.size(); ++n) {
        // A closed line's seam is dashed like a corner, so that its two half dashes join to a whole one.
        const End start = n > 0 || wraps ? End::Corner : End::Free;
        const End end = n + 2 < ends.size() || wraps ? End::Corner : End::Free;
        dashStretch(ends[n], ends[n + 1], start, end, dash, pieces);
    }
    pieces = joined(pieces);
    if (pieces.size() == 1) {
        return solid(path);
    }
    std::vector<Polyline> out;
    const bool joinSeam = wraps;
    for (std::size_t n = joinSeam ? 1 : 0; n < pieces.size(); ++n) {
        out.push_back({path.between(pieces[n].from, pieces[n].to), false});
    }
    if (joinSeam) {
        const Points first = path.between(pieces.front().from, pieces.front().to);
        out.back().points.insert(out.back().points.end(), first.begin() + 1, first.end());
    }
    return out;
}

}  // namespace

std::vector<Polyline> dashed(const Path& path, Dash dash, CornerRule rule) {
    if (path.points().empty()) {
        return {};
    }
    if (path.points().size() < 2 || path.length() < dash.on + dash.off) {
        return solid(path);
    }
    if (!runsBackwards(path)) {
        return dashedForwards(path, dash, rule);
    }
    std::vector<Polyline> pieces =
        dashedForwards(Path({path.points().rbegin(), path.points().rend()}, path.closed()), dash, rule);
    std::reverse(pieces.begin(), pieces.end());
    for (Polyline& piece : pieces) {
        std::reverse(piece.points.begin(), piece.points.end());
    }
    return pieces;
}

std::vector<Polyline> dotted(const Path& path, double pitch) {
    std::vector<Polyline> dots;
    if (path.points().empty()) {
        return dots;
    }
    if (path.length() == 0) {
        return {{{path.at(0), path.at(0)}, false}};
    }
    const double count = std::max(1.0, std::round(path.length() / pitch));
    for (int n = 0; n <= static_cast<int>(count); ++n) {
        const Point p = path.at(path.length() * n / count);
        dots.push_back({{p, p}, false});
    }
    return dots;
}

}  // namespace crosstick::drawing
