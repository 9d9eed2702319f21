#include "core/drawing/clip.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/drawing/path.h"

namespace crosstick::drawing {
namespace {

/// One side of the box: how far a point lies inside it.
struct Side {
    Vector inward;
    double at;
    [[nodiscard]] double depth(Point p) const { return dot(p, inward) - at; }
};

/// Sutherland and Hodgman: a ring cut at one side.
Points cut(const Points& ring, const Side& side) {
    Points kept;
    for (std::size_t n = 0; n < ring.size(); ++n) {
        const Point a = ring[n];
        const Point b = ring[(n + 1) % ring.size()];
        const double inA = side.depth(a);
        const double inB = side.depth(b);
        if (inA >= 0) {
            kept.push_back(a);
        }
        if ((inA >= 0) != (inB >= 0)) {
            kept.push_back(a + (b - a) * (inA / (inA - inB)));
        }
    }
    return kept;
}

struct Cutter {
    Box box;

    /// Is anything left?
    bool operator()(Stroke& stroke) const {
        std::vector<Polyline> pieces;
        for (const Polyline& piece : stroke.pieces) {
            for (Polyline& part : clipped(piece, box)) {
                pieces.push_back(std::move(part));
            }
        }
        stroke.pieces = std::move(pieces);
        return !stroke.pieces.empty();
    }
    bool operator()(Fill& fill) const {
        for (Points& ring : fill.rings) {
            ring = clippedRing(std::move(ring), box);
        }
        std::erase_if(fill.rings, [](const Points& ring) { return ring.size() < 3; });
        return !fill.rings.empty();
    }
    bool operator()(Text& /*letters*/) const { return true; }
};

struct Remover {
    Box box;

    bool operator()(Stroke& stroke) const {
        std::vector<Polyline> pieces;
        for (Polyline& piece : stroke.pieces) {
            const Path path(piece.points, piece.closed);
            const std::vector<Stretch> covered = inside(path, box);
            if (covered.empty()) {
                pieces.push_back(std::move(piece));
                continue;
            }
            for (const Stretch& rest : without({{0, path.length()}}, covered)) {
                pieces.push_back({path.between(rest.from, rest.to), false});
            }
        }
        stroke.pieces = std::move(pieces);
        return !stroke.pieces.empty();
    }
    bool operator()(Fill& fill) const {
        std::erase_if(fill.rings, [this](const Points& ring) {
            Box round;
            for (const Point p : ring) {
                round = round.joined({p.x, p.y, p.x, p.y});
            }
            return box.contains(round.middle());
        });
        return !fill.rings.empty();
    }
    bool operator()(Text& /*letters*/) const { return true; }
};

}  // namespace

std::vector<Point> clippedRing(std::vector<Point> ring, const Box& box) {
    const std::array<Side, 4> sides{
        {{{1, 0}, box.left}, {{-1, 0}, -box.right}, {{0, 1}, box.top}, {{0, -1}, -box.bottom}}};
    for (const Side& side : sides) {
        ring = cut(ring, side);
    }
    return ring;
}

Drawing clipped(Drawing drawing, const Box& box) {
    std::erase_if(drawing.marks, [&](Mark& mark) { return !std::visit(Cutter{box}, mark); });
    return drawing;
}

Drawing cutAway(Drawing drawing, const Box& box) {
    std::erase_if(drawing.marks, [&](Mark& mark) { return !std::visit(Remover{box}, mark); });
    return drawing;
}

}  // namespace crosstick::drawing
