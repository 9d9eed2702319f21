#include "symbols/fires.h"

#include <algorithm>
#include <cmath>

#include "symbols/arrows.h"
#include "symbols/faults.h"

namespace crosstick::symbols {
namespace {

constexpr double kDiagonal = 0.70710678118654752;

/// The bar's two ends with the tips that belong to them, made sound (engraving B3, special cases).
struct Position {
    Point left, right, leftTip, rightTip;
};

Position positionOf(const Points& p, double symbol) {
    Position at{p[0], p[1], p[2], p[3]};
    if (drawing::length(at.right - at.left) < 0.05) {
        Vector aim = drawing::unit((at.leftTip + at.rightTip) * 0.5 - at.left);
        if (drawing::length(aim) == 0) {
            aim = {0, -1};  // the limits lie on both sides of it: across the film's top
        }
        const Vector half = drawing::leftOf(aim) * (0.45 * symbol);
        at.left = p[0] + half;
        at.right = p[0] - half;
    }
    const Vector bar = drawing::unit(at.right - at.left);
    if (drawing::dot(at.leftTip - at.left, bar) > drawing::dot(at.rightTip - at.left, bar)) {
        std::swap(at.leftTip, at.rightTip);
    }
    return at;
}

/// A line of a constructed sign: dashed where planned, all its corners inked.
void inkSign(Pencil& pencil, const Points& points) {
    pencil.lines(pencil.manner().standing == Standing::Planned
                     ? drawing::dashed(drawing::Path(points), drawing::kPlanned, drawing::CornerRule::Outline)
                     : std::vector<drawing::Polyline>{{points, false}},
                 pencil.gauge().pen);
}

/// One limit of fire; one nearer than 4 is its head alone.
void fireArrow(Pencil& pencil, Point from, Point tip, Vector back, double arms) {
    const double far = drawing::length(tip - from);
    const Vector u = far < 0.05 ? back * -1 : drawing::unit(tip - from);
    const ShaftEnd end = openHead(pencil, tip, u, arms);
    if (far >= 4) {
        inkSign(pencil, {from, end.at});
    }
}

/// A label 0.9 beside a line (+1: left of travel), clear of it also where it bends under the letters.
Desk::Place besideAt(const drawing::Path& path, double s, const Label& label, double halfInk, double side) {
    const double half = label.width() / 2 + 1;  // letters reach farther than the bent line under them
    const Vector u = path.chord(s, label.width());
    const Vector n = drawing::leftOf(u) * side;
    double bulge = 0;
    for (const Point p : path.between(std::max(0.0, s - half), std::min(path.length(), s + half))) {
        bulge = std::max(bulge, drawing::dot(p - path.at(s), n));
    }
    return {path.at(s) + n * (bulge + 0.9 + halfInk + label.height() / 2), drawing::readable(u)};
}

}  // namespace

void placeSupportByFire(Desk& desk, Subject& subject) {
    const Position at = positionOf(subject.points, desk.gauge().symbol);
    const Vector bar = drawing::unit(at.right - at.left);
    const Point middle = (at.left + at.right) * 0.5;
    Vector back = drawing::leftOf(bar);
    if (drawing::dot(back, (at.leftTip + at.rightTip) * 0.5 - middle) > 0) {
        back = back * -1;
    }
    const double bend = 0.45 * desk.gauge().symbol;
    Pencil ink = desk.inkOf(subject);
    inkSign(ink, {at.left + (back - bar) * (bend * kDiagonal), at.left, at.right,
                  at.right + (back + bar) * (bend * kDiagonal)});
    fireArrow(ink, at.left, at.leftTip, back, 0.5 * desk.gauge().symbol);
    fireArrow(ink, at.right, at.rightTip, back, 0.5 * desk.gauge().symbol);
    const Label label{{movement::label(*subject.measure)}, desk.gauge().letters};
    const Degrees angle = drawing::readable(bar);
    if (desk.writeByHand(subject, label, angle)) {
        return;
    }
    const double beyond = drawing::length(at.right - at.left) / 2 + bend + 0.9 + label.width() / 2;
    const std::vector<Desk::Place> places{{middle + back * 2.6, angle},
                                          {middle + back * (bend * kDiagonal + 0.9 + label.height() / 2), angle},
                                          {middle + bar * beyond, angle},
                                          {middle - bar * beyond, angle},
                                          {middle + back * 6, Degrees(0)}};
    if (const auto place = desk.choose(label, places, subject.order)) {
        desk.write(subject, label, place->middle, place->angle);
    } else {
        desk.remark(subject, kLabelLeftOut);
    }
}

void placeMainAttack(Desk& desk, Subject& subject) {
    Points shaft = subject.points;
    const drawing::Path path(shaft);
    const double last = std::min(2.4, path.length());
    const Vector u = path.chord(path.length() - last / 2, last);
    Pencil ink = desk.inkOf(subject);
    const ShaftEnd end = outlinedHead(ink, shaft.back(), u, path.length());
    while (shaft.size() > 1 && drawing::dot(shaft[shaft.size() - 2] - end.at, u) > 0) {
        shaft.pop_back();
    }
    shaft.back() = end.at;
    const auto pieces = subject.manner.standing == Standing::Planned
                            ? drawing::dashed(drawing::Path(shaft), drawing::kPlanned, drawing::CornerRule::UsersLine)
                            : std::vector<drawing::Polyline>{{shaft, false}};
    ink.lines(pieces, desk.gauge().pen);
    if (subject.measure->name.empty()) {
        return;
    }
    const Label label{{subject.measure->name}, desk.gauge().letters};
    const double s = path.length() / 2;
    const Degrees angle = drawing::readable(path.chord(s, label.width()));
    if (desk.writeByHand(subject, label, angle)) {
        return;
    }
    const std::vector<Desk::Place> places{besideAt(path, s, label, ink.halfInk(), 1),
                                          besideAt(path, s, label, ink.halfInk(), -1)};
    if (const auto place = desk.choose(label, places, subject.order)) {
        desk.write(subject, label, place->middle, place->angle);
    } else {
        desk.remark(subject, kLabelLeftOut);
    }
}

}  // namespace crosstick::symbols
