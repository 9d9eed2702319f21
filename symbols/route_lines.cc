#include "symbols/route_lines.h"

#include <algorithm>

#include "core/movement/leg_ends.h"

namespace crosstick::symbols {
namespace {

constexpr double kAside = 0.6;
constexpr double kTransition = 3.0;
constexpr double kShortestShared = 10;

bool isSame(Point a, Point b) {
    return drawing::length(a - b) < 0.05;
}

/// Which way a route runs along a piece: 1 as it is given, -1 backwards, 0 not at all.
int wayAlong(const Subject& route, Point from, Point to) {
    for (std::size_t n = 0; n + 1 < route.points.size(); ++n) {
        if (isSame(route.points[n], from) && isSame(route.points[n + 1], to)) {
            return 1;
        }
        if (isSame(route.points[n], to) && isSame(route.points[n + 1], from)) {
            return -1;
        }
    }
    return 0;
}

bool isPrimary(const Subject& route) {
    return route.route->use == plan::Use::Primary;
}

struct Sharer {
    const Subject* route;
    int way;
};

/// All routes along a piece, the first primary ahead of the others: the lanes are counted in its direction.
std::vector<Sharer> sharersOf(Point from, Point to, const std::vector<Subject*>& all) {
    std::vector<Sharer> sharers;
    for (const Subject* route : all) {
        if (const int way = wayAlong(*route, from, to); way != 0) {
            sharers.push_back({route, way});
        }
    }
    std::stable_partition(sharers.begin(), sharers.end(), [](const Sharer& one) { return isPrimary(*one.route); });
    return sharers;
}

/// How far left of the first sharer's travel a lane lies: two at 0.6 to both sides, of three the first in the middle,
/// more of them further out by turns.
double laneOf(std::size_t place, std::size_t count) {
    if (count == 2) {
        return place == 0 ? kAside : -kAside;
    }
    const std::size_t turns = (place + 1) / 2;
    const double out = 2 * kAside * static_cast<double>(turns);
    return place % 2 == 1 ? out : -out;
}

struct Shared {
    double aside = 0;  ///< left of the route's own travel
    bool withPrimary = false;
};

Shared sharedBy(Point from, Point to, const Subject& route, const std::vector<Subject*>& all) {
    const auto sharers = sharersOf(from, to, all);
    const auto own =
        std::find_if(sharers.begin(), sharers.end(), [&](const Sharer& one) { return one.route == &route; });
    if (sharers.size() < 2 || own == sharers.end()) {
        return {};
    }
    const double lane = laneOf(static_cast<std::size_t>(own - sharers.begin()), sharers.size());
    const bool sameWay = own->way == sharers.front().way;
    return {sameWay ? lane : -lane, isPrimary(*sharers.front().route) && !isPrimary(route)};
}

/// Stretches shared over less than 10 mm stay on the true line: two lines would only blot.
void dropShortStretches(std::vector<RoutePiece>& pieces) {
    for (std::size_t n = 0; n < pieces.size();) {
        std::size_t end = n;
        double length = 0;
        while (end < pieces.size() && pieces[end].aside != 0) {
            length += pieces[end++].length();
        }
        if (end > n && length < kShortestShared) {
            for (std::size_t m = n; m < end; ++m) {
                pieces[m].aside = 0;
            }
        }
        n = std::max(end, n + 1);
    }
}

}  // namespace

std::vector<RoutePiece> piecesOf(const Subject& route, const std::vector<Subject*>& all) {
    std::vector<RoutePiece> pieces;
    for (std::size_t n = 0; n + 1 < route.points.size(); ++n) {
        const Shared shared = sharedBy(route.points[n], route.points[n + 1], route, all);
        pieces.push_back({route.points[n], route.points[n + 1], shared.aside, shared.withPrimary});
    }
    dropShortStretches(pieces);
    return pieces;
}

LegSpan legSpan(const Desk& desk, const Subject& route) {
    const auto ends = movement::legEnds(desk.engraving().plan, *route.route);
    return {ends.front().stop.vertex, ends.back().stop.vertex};
}

drawing::Stroke administrativeDots(const drawing::Path& path, drawing::Ink ink) {
    constexpr double kDot = 0.5;
    constexpr double kPitch = 1.2;
    return {drawing::dotted(path, kPitch), kDot, ink, drawing::Join::Round, drawing::Cap::Round};
}

std::vector<drawing::Polyline> routePattern(const drawing::Path& path, plan::Use use) {
    constexpr drawing::Dash kVehicle{6.0, 2.8};
    constexpr double kShortStroke = 0.6;
    if (use == plan::Use::Primary) {
        return {{path.points(), false}};
    }
    if (use == plan::Use::Alternate) {
        return drawing::dashed(path, drawing::kAlternateRoute, drawing::CornerRule::UsersLine);
    }
    std::vector<drawing::Polyline> pieces = drawing::dashed(path, kVehicle, drawing::CornerRule::UsersLine);
    for (std::size_t n = 0, dashes = pieces.size(); n + 1 < dashes; ++n) {
        const Point from = pieces[n].points.back();
        const Point to = pieces[n + 1].points.front();
        const Vector half = drawing::unit(to - from) * (kShortStroke / 2);
        const Point middle = (from + to) * 0.5;
        pieces.push_back({{middle - half, middle + half}, false});
    }
    return pieces;
}

Points inkLine(const std::vector<RoutePiece>& pieces, std::size_t first, std::size_t last) {
    Points line;
    for (std::size_t n = first; n < last;) {
        if (pieces[n].aside == 0) {
            line.push_back(pieces[n].from);
            ++n;
            continue;
        }
        std::size_t end = n;
        Points shared{pieces[n].from};
        while (end < last && pieces[end].aside == pieces[n].aside) {
            shared.push_back(pieces[end++].to);
        }
        const drawing::Path beside(drawing::offset(shared, pieces[n].aside));
        const double step = std::min(kTransition, beside.length() / 3);
        line.push_back(shared.front());
        const Points middle = beside.between(step, beside.length() - step);
        line.insert(line.end(), middle.begin(), middle.end());
        n = end;
    }
    if (last > first) {
        line.push_back(pieces[last - 1].to);
    }
    return line;
}

}  // namespace crosstick::symbols
