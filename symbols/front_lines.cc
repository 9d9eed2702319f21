#include "symbols/front_lines.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>

#include "symbols/construction.h"
#include "symbols/line_labels.h"
#include "symbols/manner.h"
#include "symbols/runs.h"

namespace crosstick::symbols {
namespace {

constexpr double kChord = 3.0;

/// A half circle over a chord, bulging to a side.
void addHalfCircle(Points& line, Point from, Point to, double side) {
    constexpr int kSteps = 12;
    const Point middle = (from + to) * 0.5;
    const Vector half = (to - from) * 0.5;
    const Vector out = drawing::leftOf(half) * side;
    for (int n = line.empty() ? 0 : 1; n <= kSteps; ++n) {
        const double turn = std::numbers::pi * n / kSteps;
        line.push_back(middle - half * std::cos(turn) + out * std::sin(turn));
    }
}

/// Where half circles meet along a line, evened between its corners.
std::vector<double> stationsOf(const drawing::Path& path, double side) {
    std::vector<double> stations{0};
    for (const Run& run : runsOf(path)) {
        // At a corner that closes toward the side one chord bridges it, half before and half behind.
        const double from = run.stretch.from + (closesToward(run.turnBefore, side) ? kChord / 2 : 0);
        const double to = run.stretch.to - (closesToward(run.turnAfter, side) ? kChord / 2 : 0);
        const double room = to - from;
        if (room <= 0.05) {
            continue;
        }
        if (from - stations.back() > 0.05) {
            stations.push_back(from);
        }
        const int count = std::max(1, static_cast<int>(std::lround(room / kChord)));
        for (int n = 1; n <= count; ++n) {
            stations.push_back(from + room * n / count);
        }
    }
    return stations;
}

/// One row along a line, and which of its stretches letters leave free.
struct HalfCircles {
    drawing::Path path;
    double side;  ///< that it bulges to
    std::function<bool(double from, double to)> isLeftOut;
};

/// A second row of smaller half circles inside the first: parallels of the first would run into each other.
std::vector<drawing::Polyline> innerRow(const HalfCircles& row, const std::vector<double>& stations) {
    std::vector<drawing::Polyline> inner;
    for (std::size_t n = 1; n < stations.size(); ++n) {
        if (!row.isLeftOut(stations[n - 1], stations[n])) {
            const Point a = row.path.at(stations[n - 1]);
            const Point b = row.path.at(stations[n]);
            const Vector in = drawing::unit(b - a) * std::min(kDoubleApart, drawing::length(b - a) / 4);
            Points arc;
            addHalfCircle(arc, a + in, b - in, row.side);
            inner.push_back({std::move(arc), false});
        }
    }
    return inner;
}

/// One continuous stroke from gap to gap, dashed where planned.
std::vector<drawing::Polyline> outerRow(const HalfCircles& row, const std::vector<double>& stations,
                                        Standing standing) {
    std::vector<Points> strokes(1);
    for (std::size_t n = 1; n < stations.size(); ++n) {
        if (row.isLeftOut(stations[n - 1], stations[n])) {
            strokes.emplace_back();
        } else {
            addHalfCircle(strokes.back(), row.path.at(stations[n - 1]), row.path.at(stations[n]), row.side);
        }
    }
    std::vector<drawing::Polyline> pieces;
    for (Points& stroke : strokes) {
        if (standing == Standing::Planned && stroke.size() > 1) {
            const auto dashes =
                drawing::dashed(drawing::Path(stroke), drawing::kSmallOutline, drawing::CornerRule::UsersLine);
            pieces.insert(pieces.end(), dashes.begin(), dashes.end());
        } else {
            pieces.push_back({std::move(stroke), false});
        }
    }
    return pieces;
}

void ink(const Pencil& pencil, const HalfCircles& row) {
    const auto stations = stationsOf(row.path, row.side);
    const Manner& manner = pencil.manner();
    std::vector<drawing::Polyline> pieces = outerRow(row, stations, manner.standing);
    if (!manner.doubled) {
        Pencil(pencil).lines(std::move(pieces), pencil.gauge().pen, drawing::Join::Round);
        return;
    }
    std::vector<drawing::Polyline> both = innerRow(row, stations);
    both.insert(both.end(), std::make_move_iterator(pieces.begin()), std::make_move_iterator(pieces.end()));
    pencil.single().lines(std::move(both), pencil.gauge().thin(), drawing::Join::Round);
}

}  // namespace

void placeFrontLine(Desk& desk, Subject& subject) {
    const drawing::Path path(subject.points);
    const bool isNamed = !subject.measure->name.empty() || !subject.measure->number.empty();
    const auto gaps = letterEnds(desk, subject, path, isNamed ? lineRows(*subject.measure) : std::vector<std::string>{},
                                 kChord / 2 + desk.inkOf(subject).halfInk());
    ink(desk.inkOf(subject),
        {path, enemySide(*subject.measure), [&](double from, double to) { return isInGap(from, to, gaps); }});
}

void placeContactLine(Desk& desk, Subject& subject) {
    constexpr double kAside = 1.9;  // so that the crowns of both rows stand 0.8 apart
    if (!isYes(*subject.measure, "half_circles")) {
        placeNamedLine(desk, subject);
        return;
    }
    const drawing::Path path(subject.points);
    const auto gaps = letterEnds(desk, subject, path, lineRows(*subject.measure), kAside + desk.gauge().pen);
    for (const plan::Whose whose : {plan::Whose::Own, plan::Whose::Enemy}) {
        plan::Measure row = *subject.measure;
        row.whose = whose;
        const double enemy = enemySide(*subject.measure);
        const double bulges = whose == plan::Whose::Own ? enemy : -enemy;
        const drawing::Path along(drawing::offset(path.points(), -bulges * kAside));
        const Pencil pencil(subject.ink, mannerOf(row, Place::ByItself, desk.engraving()), desk.gauge());
        ink(pencil, {along, bulges, [&](double from, double to) {
                         const double s = nearestOn(path, along.at((from + to) / 2));
                         return isInGap(s - (to - from) / 2, s + (to - from) / 2, gaps);
                     }});
    }
}

}  // namespace crosstick::symbols
