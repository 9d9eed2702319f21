#include "symbols/areas.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/steps.h"
#include "core/measures/catalogue.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/pole.h"

namespace crosstick::symbols {
namespace {

constexpr double kInside = 0.8;

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

bool contains(const Points& ring, Point p) {
    bool in = false;
    for (std::size_t n = 0, before = ring.size() - 1; n < ring.size(); before = n++) {
        const Point a = ring[n];
        const Point b = ring[before];
        if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) {
            in = !in;
        }
    }
    return in;
}

/// Places inside, the pole first, then a net of 1.5 mm outwards from it.
Points insidePlaces(const Points& ring) {
    const Point pole = poleOf(ring);
    Points places{pole};
    for (const double away : drawing::steps(1.5, 12, 1.5)) {
        const int count = std::max(8, static_cast<int>(away * 4));
        for (int n = 0; n < count; ++n) {
            const double turn = 2 * std::numbers::pi * n / count;
            places.push_back(pole + Vector{std::cos(turn), std::sin(turn)} * away);
        }
    }
    return places;
}

std::optional<TurnedBox> placeInside(Desk& desk, Subject& subject, const std::vector<Label>& labels) {
    // Well apart from other letters, so that nobody reads the two as one; else as near as letters may stand.
    struct Pass {
        double apart;
        int crossed;
    };
    const Points places = insidePlaces(subject.points);
    for (const Pass pass : {Pass{2.0, 0}, Pass{0.6, 0}, Pass{0.6, 99}}) {
        for (const Label& label : labels) {
            for (const Point middle : places) {
                const TurnedBox box = label.boxAt(middle, Degrees(0));
                if (holds(subject.points, box.grown(kInside)) && desk.fits(box) &&
                    desk.taken().isFree(box, pass.apart) &&
                    desk.taken().crossings(box.grown(0.3), subject.order) <= pass.crossed) {
                    desk.write(subject, label, middle, Degrees(0));
                    return box;
                }
            }
        }
    }
    return std::nullopt;
}

/// The nearest point of the edge to where the label stands.
Point edgeToward(const Points& ring, Point from) {
    Point best = ring.front();
    for (std::size_t n = 0; n < ring.size(); ++n) {
        const Vector span = ring[(n + 1) % ring.size()] - ring[n];
        const double size = drawing::dot(span, span);
        const double share = size > 0 ? std::clamp(drawing::dot(from - ring[n], span) / size, 0.0, 1.0) : 0;
        const Point p = ring[n] + span * share;
        if (drawing::length(p - from) < drawing::length(best - from)) {
            best = p;
        }
    }
    return best;
}

std::optional<TurnedBox> placeOutside(Desk& desk, Subject& subject, const Label& label) {
    drawing::Box bounds;
    for (const Point p : subject.points) {
        bounds = bounds.joined({p.x, p.y, p.x, p.y});
    }
    for (const int allowed : {0, 99}) {
        for (const double away : drawing::steps(4, 22, 3)) {
            for (const Vector corner : {Vector{1, -1}, Vector{-1, -1}, Vector{1, 1}, Vector{-1, 1}, Vector{1, 0},
                                        Vector{-1, 0}, Vector{0, -1}, Vector{0, 1}}) {
                const Point middle =
                    bounds.middle() + Vector{corner.x * (bounds.width() / 2 + away * 0.7 + label.width() / 2),
                                             corner.y * (bounds.height() / 2 + away * 0.7 + label.height() / 2)};
                const TurnedBox box = label.boxAt(middle, Degrees(0));
                const Point edge = edgeToward(subject.points, middle);
                const bool isClear = allowed > 0 || desk.taken().isFree(labelEdge(box, edge), edge);
                if (!desk.fits(box) || !isClear || desk.taken().crossings(box.grown(0.3), subject.order) > allowed) {
                    continue;
                }
                desk.write(subject, label, middle, Degrees(0));
                extensionLine(desk, subject, labelEdge(box, edge), edge, ExtensionEnd::Tick);
                return box;
            }
        }
    }
    return std::nullopt;
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

bool holds(const Points& ring, const TurnedBox& box) {
    for (const Point corner : box.corners()) {
        if (!contains(ring, corner)) {
            return false;
        }
    }
    for (std::size_t n = 0; n < ring.size(); ++n) {
        if (box.meets(ring[n], ring[(n + 1) % ring.size()])) {
            return false;
        }
    }
    return true;
}

std::vector<Label> areaWordings(const plan::Measure& measure, double letters) {
    const measures::Entry* entry = measures::find(measure.kind);
    const bool isBare = entry == nullptr || entry->wording == measures::Wording::Bare;
    const std::string abbreviation(isBare ? std::string_view{} : entry->abbreviation);
    const std::string name = bareName(measure.name.empty() ? measure.number : measure.name, abbreviation);
    const std::string one = abbreviation + (abbreviation.empty() || name.empty() ? "" : " ") + name;
    if (one.empty()) {
        return {};
    }
    if (abbreviation.empty() || name.empty() || !measure.number.empty()) {
        return {{{one}, letters}};
    }
    return {{{abbreviation, name}, letters}, {{one}, letters}};
}

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

std::optional<TurnedBox> nameArea(Desk& desk, Subject& subject, const drawing::Polyline& edge,
                                  const std::vector<Label>& wordings) {
    if (wordings.empty()) {
        return std::nullopt;
    }
    if (desk.writeByHand(subject, wordings.front(), Degrees(0))) {
        const TurnedBox box = wordings.front().boxAt(*subject.labelAt, Degrees(0));
        return TurnedBox{desk.movedInside(box), box.width, box.height, box.angle};
    }
    std::optional<TurnedBox> box;
    if (edge.closed && subject.points.size() > 2) {
        box = placeInside(desk, subject, wordings);
    }
    if (!box) {
        box = placeOutside(desk, subject, wordings.back());
    }
    if (!box) {
        desk.remark(subject, kLabelLeftOut);
    }
    return box;
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
