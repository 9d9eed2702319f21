#include "symbols/point_marks.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/drawing/steps.h"
#include "symbols/extension.h"
#include "symbols/faults.h"

namespace crosstick::symbols {
namespace {

constexpr double kBeside = 0.9;

bool seen(Desk& desk, Subject& subject) {
    const bool inside = desk.window().contains(subject.points.front());
    if (!inside) {
        desk.remark(subject, kOutsideWindow);
    }
    return inside;
}

/// A symbol round its centre 0, 0: a closed outline, and lines of the main pen.
struct Mark {
    Points outline;
    std::vector<drawing::Polyline> lines;
    drawing::Join join = drawing::Join::Miter;
};

drawing::Box boundsOf(const Points& points) {
    drawing::Box box;
    for (const Point p : points) {
        box = box.joined({p.x, p.y, p.x, p.y});
    }
    return box;
}

/// Of the ink, mitres and a second stroke included.
drawing::Box inkBounds(const Mark& mark, const Pencil& pencil) {
    drawing::Box box = boundsOf(widened(mark.outline, pencil.outlineReach()));
    for (const drawing::Polyline& line : mark.lines) {
        // Arms end butt: across they are as wide as their ink, along they end at their points.
        box = box.joined(boundsOf(line.points));
    }
    return box;
}

TurnedBox boxAt(const drawing::Box& bounds, Point centre) {
    return {centre + bounds.middle(), bounds.width(), bounds.height(), Degrees(0)};
}

/// 8 to 24 aside, in the order E, W, SE, SW, NE, NW, S, N; best where no line crosses the symbol and its own line runs
/// over no other symbol.
std::optional<Point> placeAside(Desk& desk, const drawing::Box& bounds, Point spot, std::size_t owner) {
    constexpr double kDiagonal = std::numbers::sqrt2 / 2;
    constexpr std::array<Vector, 8> kDirections{{{1, 0},
                                                 {-1, 0},
                                                 {kDiagonal, kDiagonal},
                                                 {-kDiagonal, kDiagonal},
                                                 {kDiagonal, -kDiagonal},
                                                 {-kDiagonal, -kDiagonal},
                                                 {0, 1},
                                                 {0, -1}}};
    std::optional<Point> second;
    int least = 3;
    for (const double distance : drawing::steps(8, 24, 2)) {
        for (const Vector direction : kDirections) {
            const Point centre = spot + direction * distance;
            const TurnedBox box = boxAt(bounds, centre);
            if (!desk.fits(box)) {
                continue;
            }
            const int cost =
                (desk.taken().crossings(box, owner) > 0 ? 1 : 0) + (desk.taken().isFree(centre, spot) ? 0 : 2);
            if (cost == 0) {
                return centre;
            }
            if (!second || cost < least) {
                second = centre;
                least = cost;
            }
        }
    }
    return second;
}

/// Where a line from the centre leaves the outline.
Point leavesAt(const Points& outline, Vector u) {
    double farthest = 0;
    for (std::size_t n = 0; n < outline.size(); ++n) {
        const Point a = outline[n];
        const Vector span = outline[(n + 1) % outline.size()] - a;
        const double across = drawing::cross(u, span);
        if (std::abs(across) > 1e-12) {
            const double along = drawing::cross(a, span) / across;
            const double share = drawing::cross(a, u) / across;
            farthest = share >= -1e-9 && share <= 1 + 1e-9 ? std::max(farthest, along) : farthest;
        }
    }
    return u * farthest;
}

void drawMark(Desk& desk, Subject& subject, const Mark& mark, Point centre) {
    Pencil ink = desk.inkOf(subject);
    Points ring;
    for (const Point p : mark.outline) {
        ring.push_back(centre + p);
    }
    std::vector<drawing::Polyline> lines = mark.lines;
    for (drawing::Polyline& line : lines) {
        for (Point& p : line.points) {
            p = p + centre;
        }
    }
    ink.outline(ring, mark.join);
    ink.lines(std::move(lines), desk.gauge().pen);
}

/// Draws a symbol on its spot; where it was set aside by hand; or, where its spot is taken or too near the window's
/// edge, aside by an extension line. Gives the box of its ink, nothing where there is no room.
std::optional<drawing::Box> placeMark(Desk& desk, Subject& subject, const Mark& mark) {
    const Point spot = subject.points.front();
    const drawing::Box bounds = inkBounds(mark, desk.inkOf(subject));
    std::optional<Point> centre;
    if (subject.symbolAt) {
        centre = *subject.symbolAt +
                 (desk.movedInside(boxAt(bounds, *subject.symbolAt)) - boxAt(bounds, *subject.symbolAt).middle);
    } else {
        centre = desk.fits(boxAt(bounds, spot)) ? spot : placeAside(desk, bounds, spot, subject.order);
    }
    if (!centre) {
        desk.remark(subject, kLabelLeftOut);
        return std::nullopt;
    }
    if (*centre != spot) {
        const Point from = *centre + leavesAt(mark.outline, drawing::unit(spot - *centre));
        extensionLine(desk, subject, from, spot, ExtensionEnd::Dot);
    }
    drawMark(desk, subject, mark, *centre);
    const TurnedBox box = boxAt(bounds, *centre);
    desk.taken().take(box);
    return box.bounds();
}

void nameAt(Desk& desk, Subject& subject, const Label& label, const std::vector<Desk::Place>& places) {
    if (desk.writeByHand(subject, label, Degrees(0))) {
        return;
    }
    if (const auto place = desk.choose(label, places, subject.order)) {
        desk.write(subject, label, place->middle, place->angle);
    } else {
        desk.remark(subject, kLabelLeftOut);
    }
}

/// Letters right of a symbol, else left, above or below it.
void nameBeside(Desk& desk, Subject& subject, const std::string& name, const drawing::Box& symbol) {
    if (name.empty()) {
        return;
    }
    const Label label{{name}, desk.gauge().letters};
    const double w = label.width() / 2;
    const double h = label.height() / 2;
    const Point m = symbol.middle();
    nameAt(desk, subject, label,
           {{{symbol.right + kBeside + w, m.y}, Degrees(0)},
            {{symbol.left - kBeside - w, m.y}, Degrees(0)},
            {{m.x, symbol.top - kBeside - h}, Degrees(0)},
            {{m.x, symbol.bottom + kBeside + h}, Degrees(0)}});
}

}  // namespace

// Circle of 0.80 H with an X to the circle at 45 degrees, centred on the spot.
void placeCoordinationPoint(Desk& desk, Subject& subject) {
    if (!seen(desk, subject)) {
        return;
    }
    const double diameter = 0.8 * desk.gauge().symbol;
    const double reach = diameter / 2 / std::sqrt(2.0);
    const Mark mark{circlePoints({0, 0}, diameter),
                    {{{{-reach, -reach}, {reach, reach}}, false}, {{{-reach, reach}, {reach, -reach}}, false}},
                    drawing::Join::Round};
    if (const auto box = placeMark(desk, subject, mark)) {
        const std::string number = subject.measure->number;
        nameBeside(desk, subject, number.empty() ? subject.measure->name : "CO " + number, *box);
    }
}

// Equilateral triangle, point up, of height H on its centroid; nothing inside.
void placeObservationPost(Desk& desk, Subject& subject) {
    if (!seen(desk, subject)) {
        return;
    }
    const double h = desk.gauge().symbol;
    const double half = h / std::sqrt(3.0);
    const Mark mark{{{0, -2 * h / 3}, {half, h / 3}, {-half, h / 3}}, {}};
    if (const auto box = placeMark(desk, subject, mark)) {
        // Beside the lower half, where the triangle is widest.
        const double shoulder = box->bottom - 2 * h / 3;
        const std::string name = movement::label(*subject.measure);
        nameBeside(desk, subject, name, {box->left, shoulder, box->right, box->bottom});
    }
}

// A cross with arms of 0.60 H and a square of 0.40 H on its centre.
void placeTargetReferencePoint(Desk& desk, Subject& subject) {
    if (!seen(desk, subject)) {
        return;
    }
    const double arm = 0.6 * desk.gauge().symbol;
    const double side = 0.2 * desk.gauge().symbol;
    const Mark mark{{{-side, -side}, {side, -side}, {side, side}, {-side, side}},
                    {{{{-arm, 0}, {arm, 0}}, false}, {{{0, -arm}, {0, arm}}, false}}};
    const auto box = placeMark(desk, subject, mark);
    if (!box) {
        return;
    }
    const Label label{{movement::label(*subject.measure)}, desk.gauge().letters};
    const double w = label.width() / 2;
    std::vector<Desk::Place> places;
    for (const Vector quadrant : {Vector{1, -1}, Vector{1, 1}, Vector{-1, -1}, Vector{-1, 1}}) {
        places.push_back({box->middle() + Vector{quadrant.x * (arm + kBeside + w), quadrant.y * 2.7}, Degrees(0)});
    }
    nameAt(desk, subject, label, places);
}

void placeWords(Desk& desk, Subject& subject) {
    if (!seen(desk, subject)) {
        return;
    }
    const Label label{{subject.measure->name}, desk.gauge().letters};
    if (subject.measure->name.empty() || desk.writeByHand(subject, label, Degrees(0))) {
        return;
    }
    // Begun at their spot; else a row up or down, else ended there; else aside.
    const Point spot = subject.points.front();
    const double half = label.width() / 2;
    std::vector<Desk::Place> places;
    for (const double side : {half, -half}) {
        for (const double down : {0.0, -label.pitch(), label.pitch()}) {
            places.push_back({spot + Vector{side, down}, Degrees(0)});
        }
    }
    if (const auto place = desk.choose(label, places, subject.order)) {
        desk.write(subject, label, place->middle, place->angle);
    } else if (!letterAside(desk, subject, label, spot, ExtensionEnd::Dot)) {
        desk.remark(subject, kLabelLeftOut);
    }
}

void placeUnknown(Desk& desk, Subject& subject) {
    desk.remark(subject, kUnknownKind);
    std::vector<drawing::Polyline> ink;
    for (drawing::Polyline& part : drawing::clipped({subject.points, false}, desk.window())) {
        ink.push_back(std::move(part));
    }
    desk.inkOf(subject).lines(std::move(ink), desk.gauge().thin());
    const Point p = subject.points.front();
    nameBeside(desk, subject, movement::label(*subject.measure), drawing::Box{p.x, p.y, p.x, p.y}.grown(0.4));
}

}  // namespace crosstick::symbols
