#include "symbols/crossings.h"

#include <cmath>

#include "symbols/construction.h"

namespace crosstick::symbols {
namespace {

constexpr drawing::Dash kFordDash{1.2, 0.7};

/// Along the way over the water and square to it.
struct Axes {
    Point spot;
    Vector u, n;
    [[nodiscard]] Point at(double along, double aside) const { return spot + u * along + n * aside; }
};

Axes axesOf(const Subject& subject) {
    const Vector u = drawing::unit(subject.points[1] - subject.points[0]);
    return {subject.points[0], u, drawing::leftOf(u)};
}

/// Its name level beyond either end, or beside.
void nameCrossing(Desk& desk, Subject& subject, const Axes& axes, double halfLong, double halfWide) {
    constexpr double kLetters = 1.8;
    const Label label{{movement::label(*subject.measure)}, kLetters};
    const auto across = [&](Vector v) { return std::abs(v.x) * label.width() / 2 + std::abs(v.y) * kLetters / 2; };
    desk.take(subject, {axes.spot, 2 * halfLong, 2 * halfWide, drawing::readable(axes.u)});
    std::vector<Desk::Place> places;
    for (const double side : {1.0, -1.0}) {
        places.push_back({axes.at(side * (halfLong + 1 + across(axes.u)), 0), Degrees(0)});
    }
    for (const double side : {1.0, -1.0}) {
        places.push_back({axes.at(0, side * (halfWide + 1 + across(axes.n))), Degrees(0)});
    }
    letterAt(desk, subject, label, places, Degrees(0));
}

}  // namespace

void placeFord(Desk& desk, Subject& subject) {
    const Axes axes = axesOf(subject);
    std::vector<drawing::Polyline> ink;
    for (const double aside : {0.9, -0.9}) {
        for (drawing::Polyline& dash : drawing::dashed(drawing::Path(Points{axes.at(-3.5, aside), axes.at(3.5, aside)}),
                                                       kFordDash, drawing::CornerRule::UsersLine)) {
            ink.push_back(std::move(dash));
        }
    }
    desk.inkOf(subject).lines(std::move(ink), desk.gauge().pen);
    nameCrossing(desk, subject, axes, 3.5, 1.1);
}

void placeBridge(Desk& desk, Subject& subject) {
    const Axes axes = axesOf(subject);
    Pencil ink = desk.inkOf(subject);
    for (const double side : {1.0, -1.0}) {
        inkSign(ink, {axes.at(-3, side * 2), axes.at(-2, side), axes.at(2, side), axes.at(3, side * 2)});
    }
    nameCrossing(desk, subject, axes, 3, 2.2);
}

void placeFerry(Desk& desk, Subject& subject) {
    const Axes axes = axesOf(subject);
    Pencil ink = desk.inkOf(subject);
    std::vector<drawing::Polyline> way;
    for (const double side : {1.0, -1.0}) {
        for (drawing::Polyline& dash :
             drawing::dashed(drawing::Path(Points{axes.at(side * 1.9, 0), axes.at(side * 6, 0)}), kFordDash,
                             drawing::CornerRule::UsersLine)) {
            way.push_back(std::move(dash));
        }
    }
    ink.lines(std::move(way), desk.gauge().pen);
    // A hull as seen from its side, its keel down on the film.
    const double up = axes.n.y > 0 || (axes.n.y == 0 && axes.n.x > 0) ? -1 : 1;
    ink.lines(
        {{{axes.at(-2.4, 1.2 * up), axes.at(2.4, 1.2 * up), axes.at(1.3, -1.2 * up), axes.at(-1.3, -1.2 * up)}, true}},
        desk.gauge().pen);
    nameCrossing(desk, subject, axes, 6, 1.4);
}

}  // namespace crosstick::symbols
