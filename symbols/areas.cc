#include "symbols/areas.h"

#include <algorithm>
#include <cmath>

#include "symbols/area_names.h"
#include "symbols/pole.h"

namespace crosstick::symbols {
namespace {

/// The same ring from its western point on, clockwise as seen: what is found in it must not depend on how it was drawn.
Points inOrder(Points ring) {
    const auto west =
        std::min_element(ring.begin(), ring.end(), [](Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
    std::rotate(ring.begin(), west, ring.end());
    const Point next = ring[1];
    const Point before = ring.back();
    if (next.y != before.y ? next.y > before.y : next.x > before.x) {
        std::reverse(ring.begin() + 1, ring.end());
    }
    return ring;
}

/// Is there a place inside a ring farther from its edge than that?
bool hasRoom(const Points& ring, double than) {
    if (ring.size() < 3) {
        return false;
    }
    const Point pole = poleOf(ring);
    const TurnedBox box{pole, 2 * than, 2 * than, Degrees(0)};
    return holds(ring, box);
}

/// The farthest two points of a ring that is no more than a line, with what lies between them.
Points asLine(const Points& ring) {
    std::size_t from = 0;
    std::size_t to = 0;
    for (std::size_t a = 0; a < ring.size(); ++a) {
        for (std::size_t b = a + 1; b < ring.size(); ++b) {
            if (drawing::length(ring[b] - ring[a]) > drawing::length(ring[to] - ring[from])) {
                from = a;
                to = b;
            }
        }
    }
    return {ring.begin() + static_cast<std::ptrdiff_t>(from), ring.begin() + static_cast<std::ptrdiff_t>(to) + 1};
}

/// What an area of no size is drawn as: a square on its middle where it is small both ways, a line where it is long.
drawing::Polyline edgeOf(const Points& points) {
    constexpr double kSmall = 2.0;
    constexpr double kNoArea = 0.5;
    drawing::Box bounds;
    Point middle;
    double twice = 0;
    for (std::size_t n = 0; n < points.size(); ++n) {
        const Point p = points[n];
        bounds = bounds.joined({p.x, p.y, p.x, p.y});
        middle = middle + p * (1.0 / static_cast<double>(points.size()));
        twice += drawing::cross(p - points[0], points[(n + 1) % points.size()] - points[0]);
    }
    if (bounds.width() < kSmall && bounds.height() < kSmall) {
        constexpr double kHalf = kSmall / 2;
        return {{middle + Vector{-kHalf, -kHalf}, middle + Vector{kHalf, -kHalf}, middle + Vector{kHalf, kHalf},
                 middle + Vector{-kHalf, kHalf}},
                true};
    }
    // An area that crosses itself may sum up to nothing: one that has room inside is no line.
    const bool isThin =
        std::abs(twice) / 2 < kNoArea && !hasRoom(points, kNoArea / std::hypot(bounds.width(), bounds.height()));
    return isThin ? drawing::Polyline{asLine(points), false} : drawing::Polyline{points, true};
}

}  // namespace

drawing::Polyline areaEdge(Subject& subject) {
    drawing::Polyline edge = edgeOf(inOrder(subject.points));
    subject.points = edge.points;
    return edge;
}

void inkEdge(Desk& desk, Subject& subject, const drawing::Polyline& edge, const std::vector<drawing::Stretch>& gaps) {
    const drawing::Path path(edge.points, edge.closed);
    std::vector<drawing::Polyline> ink;
    std::vector<drawing::Polyline> pieces{edge};
    if (!gaps.empty()) {
        pieces.clear();
        for (const drawing::Stretch& piece : drawing::without({{0, path.length()}}, gaps)) {
            pieces.push_back({path.between(piece.from, piece.to), false});
        }
    }
    for (const drawing::Polyline& piece : pieces) {
        const auto parts = subject.manner.standing == Standing::Planned
                               ? drawing::dashed(drawing::Path(piece.points, piece.closed), drawing::kPlanned,
                                                 drawing::CornerRule::UsersLine)
                               : std::vector<drawing::Polyline>{piece};
        for (const drawing::Polyline& part : parts) {
            for (drawing::Polyline& seen : drawing::clipped(part, desk.window())) {
                ink.push_back(std::move(seen));
            }
        }
    }
    Pencil pencil = desk.inkOf(subject);
    if (!subject.manner.doubled || !edge.closed) {
        pencil.lines(std::move(ink), desk.gauge().pen);
        return;
    }
    // The outer stroke is the edge, the second runs inside it: the area is as large as it is.
    std::vector<drawing::Polyline> both;
    const double inward = -outwardSide(edge.points) * kDoubleApart;
    for (drawing::Polyline& piece : ink) {
        both.push_back({drawing::offset(piece.points, inward, piece.closed), piece.closed});
        both.push_back(std::move(piece));
    }
    pencil.single().lines(std::move(both), desk.gauge().thin());
}

Points insideRing(const Subject& subject, const Points& ring) {
    return subject.manner.doubled ? widened(ring, -kDoubleApart) : ring;
}

void placeArea(Desk& desk, Subject& subject) {
    const drawing::Polyline edge = areaEdge(subject);
    inkEdge(desk, subject, edge);
    std::vector<Label> wordings = areaWordings(*subject.measure, desk.gauge().letters);
    if (const auto agent = subject.measure->fields.find("agent");
        agent != subject.measure->fields.end() && !agent->second.empty()) {
        for (Label& label : wordings) {
            label.rows.push_back(agent->second);
        }
    }
    (void)nameArea(desk, subject, edge, wordings);
}

}  // namespace crosstick::symbols
