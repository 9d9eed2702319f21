#include "symbols/route_lines.h"

#include <algorithm>

namespace crosstick::symbols {
namespace {

constexpr double kAside = 0.6;
constexpr double kTransition = 3.0;
constexpr double kShortestShared = 10;

bool isSame(Point a, Point b) {
    return drawing::length(a - b) < 0.05;
}

struct Shared {
    bool any = false;
    bool withPrimary = false;
};

/// Does another route run along the same piece, in either direction?
Shared sharedBy(Point from, Point to, const Subject& route, const std::vector<Subject*>& all) {
    Shared shared;
    for (const Subject* other : all) {
        if (other == &route) {
            continue;
        }
        for (std::size_t n = 0; n + 1 < other->points.size(); ++n) {
            const Point a = other->points[n];
            const Point b = other->points[n + 1];
            if ((isSame(a, from) && isSame(b, to)) || (isSame(a, to) && isSame(b, from))) {
                shared.any = true;
                shared.withPrimary = shared.withPrimary || other->route->use == plan::Use::Primary;
            }
        }
    }
    return shared;
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
    const bool isPrimary = route.route->use == plan::Use::Primary;
    for (std::size_t n = 0; n + 1 < route.points.size(); ++n) {
        const Shared shared = sharedBy(route.points[n], route.points[n + 1], route, all);
        const double aside = !shared.any ? 0 : isPrimary ? kAside : -kAside;
        pieces.push_back({route.points[n], route.points[n + 1], aside, !isPrimary && shared.withPrimary});
    }
    dropShortStretches(pieces);
    return pieces;
}

LegSpan legSpan(const Subject& route) {
    const std::size_t last = route.points.size() - 1;
    const auto& stops = route.route->stops;
    if (stops.size() < 2) {
        return {0, last};
    }
    return {std::min(stops.front().vertex, last), std::min(stops.back().vertex, last)};
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
