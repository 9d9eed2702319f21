#include "symbols/fires.h"

#include <algorithm>
#include <cmath>

#include "symbols/arrows.h"
#include "symbols/construction.h"

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

/// One limit of fire; one nearer than 4 is its head alone.
void fireArrow(Pencil& pencil, Point from, Point tip, Vector back, double arms) {
    const double far = drawing::length(tip - from);
    const Vector u = far < 0.05 ? back * -1 : drawing::unit(tip - from);
    const ShaftEnd end = openHead(pencil, tip, u, arms);
    if (far >= 4) {
        inkSign(pencil, {from + u * pencil.toStroke(), end.at});
    }
}

/// Where the label of a bar goes: behind it, beyond a bend, level behind it.
std::vector<Desk::Place> placesAtBar(Point left, Point right, Vector back, double bend, const Label& label) {
    const Vector bar = drawing::unit(right - left);
    const Point middle = (left + right) * 0.5;
    const Degrees angle = drawing::readable(bar);
    const double beyond = drawing::length(right - left) / 2 + bend + 0.9 + label.width() / 2;
    if (drawing::length(right - left) < label.width() + 2) {  // beyond a bend: between them there is no room
        return {{middle + bar * beyond, angle}, {middle - bar * beyond, angle}, {middle + back * 6, Degrees(0)}};
    }
    return {{middle + back * 2.6, angle},
            {middle + back * (bend * kDiagonal + 0.9 + label.height() / 2), angle},
            {middle + bar * beyond, angle},
            {middle - bar * beyond, angle},
            {middle + back * 6, Degrees(0)}};
}

/// The bar with its ends bent outward and back from the enemy.
void inkBar(Pencil& ink, Point left, Point right, Vector back, double bend) {
    const Vector bar = drawing::unit(right - left);
    inkSign(ink, {left + (back - bar) * (bend * kDiagonal), left, right, right + (back + bar) * (bend * kDiagonal)});
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
    inkBar(ink, at.left, at.right, back, bend);
    fireArrow(ink, at.left, at.leftTip, back, 0.5 * desk.gauge().symbol);
    fireArrow(ink, at.right, at.rightTip, back, 0.5 * desk.gauge().symbol);
    const Label label{{movement::label(*subject.measure)}, desk.gauge().letters};
    letterAt(desk, subject, label, placesAtBar(at.left, at.right, back, bend, label), drawing::readable(bar));
}

void placeAttackByFire(Desk& desk, Subject& subject) {
    const Points& p = subject.points;
    const Position at = positionOf({p[0], p[1], p[2], p[2]}, desk.gauge().symbol);
    const Point middle = (at.left + at.right) * 0.5;
    const Vector bar = drawing::unit(at.right - at.left);
    Vector back = drawing::leftOf(bar);
    if (drawing::dot(back, p[2] - middle) > 0) {
        back = back * -1;
    }
    const double bend = 0.45 * desk.gauge().symbol;
    Pencil ink = desk.inkOf(subject);
    inkBar(ink, at.left, at.right, back, bend);
    fireArrow(ink, middle, p[2], back, 0.5 * desk.gauge().symbol);
    const Label label{{movement::label(*subject.measure)}, desk.gauge().letters};
    letterAt(desk, subject, label, placesAtBar(at.left, at.right, back, bend, label), drawing::readable(bar));
}

}  // namespace crosstick::symbols
