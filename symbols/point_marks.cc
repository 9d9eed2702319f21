#include "symbols/point_marks.h"

#include <cmath>

#include "symbols/faults.h"

namespace crosstick::symbols {
namespace {

constexpr double kBeside = 0.9;

/// Letters right of a symbol, else left, above or below it.
void nameBeside(Desk& desk, Subject& subject, const std::string& name, const drawing::Box& symbol) {
    if (name.empty()) {
        return;
    }
    const Label label{{name}, desk.gauge().letters};
    const double w = label.width() / 2;
    const double h = label.height() / 2;
    const Point m = symbol.middle();
    const std::vector<Desk::Place> places{{{symbol.right + kBeside + w, m.y}, Degrees(0)},
                                          {{symbol.left - kBeside - w, m.y}, Degrees(0)},
                                          {{m.x, symbol.top - kBeside - h}, Degrees(0)},
                                          {{m.x, symbol.bottom + kBeside + h}, Degrees(0)}};
    if (const auto place = desk.choose(label, places, subject.order)) {
        desk.write(subject, label, place->middle, place->angle);
    } else {
        desk.remark(subject, kLabelLeftOut);
    }
}

bool seen(Desk& desk, Subject& subject) {
    const bool inside = desk.window().contains(subject.points.front());
    if (!inside) {
        desk.remark(subject, kOutsideWindow);
    }
    return inside;
}

TurnedBox boxOf(const drawing::Box& box) {
    return {box.middle(), box.width(), box.height(), Degrees(0)};
}

}  // namespace

// Circle of 0.80 H with an X to the circle at 45 degrees, centred on the spot.
void placeCoordinationPoint(Desk& desk, Subject& subject) {
    if (!seen(desk, subject)) {
        return;
    }
    const Point c = subject.points.front();
    const double diameter = 0.8 * desk.gauge().symbol;
    const double reach = diameter / 2 / std::sqrt(2.0);
    Pencil ink = desk.inkOf(subject);
    ink.circle(c, diameter, desk.gauge().pen);
    ink.lines({{{c + Vector{-reach, -reach}, c + Vector{reach, reach}}, false},
               {{c + Vector{-reach, reach}, c + Vector{reach, -reach}}, false}},
              desk.gauge().pen);
    const drawing::Box box = drawing::Box{c.x, c.y, c.x, c.y}.grown(diameter / 2 + desk.gauge().pen / 2);
    desk.taken().take(boxOf(box));
    const std::string number = subject.measure->number;
    nameBeside(desk, subject, number.empty() ? subject.measure->name : "CO " + number, box);
}

// Equilateral triangle, point up, of height H on its centroid; nothing inside.
void placeObservationPost(Desk& desk, Subject& subject) {
    if (!seen(desk, subject)) {
        return;
    }
    const Point c = subject.points.front();
    const double h = desk.gauge().symbol;
    const double half = h / std::sqrt(3.0);
    desk.inkOf(subject).outline({c + Vector{0, -2 * h / 3}, c + Vector{half, h / 3}, c + Vector{-half, h / 3}});
    const drawing::Box box{c.x - half - 0.3, c.y - 2 * h / 3 - 0.4, c.x + half + 0.3, c.y + h / 3 + 0.2};
    desk.taken().take(boxOf(box));
    nameBeside(desk, subject, movement::label(*subject.measure), {box.left, c.y - h / 3, box.right, box.bottom});
}

// A cross with arms of 0.60 H and a square of 0.40 H on its centre.
void placeTargetReferencePoint(Desk& desk, Subject& subject) {
    if (!seen(desk, subject)) {
        return;
    }
    const Point c = subject.points.front();
    const double arm = 0.6 * desk.gauge().symbol;
    const double side = 0.2 * desk.gauge().symbol;
    Pencil ink = desk.inkOf(subject);
    ink.lines({{{c + Vector{-arm, 0}, c + Vector{arm, 0}}, false}, {{c + Vector{0, -arm}, c + Vector{0, arm}}, false}},
              desk.gauge().pen);
    ink.outline({c + Vector{-side, -side}, c + Vector{side, -side}, c + Vector{side, side}, c + Vector{-side, side}});
    const drawing::Box box = drawing::Box{c.x, c.y, c.x, c.y}.grown(arm);
    desk.taken().take(boxOf(box));
    const Label label{{movement::label(*subject.measure)}, desk.gauge().letters};
    const double w = label.width() / 2;
    std::vector<Desk::Place> places;
    for (const Vector quadrant : {Vector{1, -1}, Vector{1, 1}, Vector{-1, -1}, Vector{-1, 1}}) {
        places.push_back({c + Vector{quadrant.x * (arm + 0.9 + w), quadrant.y * 2.7}, Degrees(0)});
    }
    if (const auto place = desk.choose(label, places, subject.order)) {
        desk.write(subject, label, place->middle, place->angle);
    } else {
        desk.remark(subject, kLabelLeftOut);
    }
}

void placeWords(Desk& desk, Subject& subject) {
    if (!seen(desk, subject)) {
        return;
    }
    const Label label{{subject.measure->name}, desk.gauge().letters};
    const Point start = subject.points.front();
    const Point middle = start + Vector{label.width() / 2, 0};
    if (desk.fits(label.boxAt(middle, Degrees(0)))) {
        desk.write(subject, label, middle, Degrees(0));
    } else {
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
