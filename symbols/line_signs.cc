#include "symbols/line_signs.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/steps.h"
#include "symbols/construction.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/line_labels.h"

namespace crosstick::symbols {
namespace {

constexpr double kCorner = 30 * std::numbers::pi / 180;

/// A stretch between corners, and how much the line turns at both of them (0 at a free end).
struct Run {
    drawing::Stretch stretch;
    double turnBefore = 0;
    double turnAfter = 0;
};

std::vector<Run> runsOf(const drawing::Path& path) {
    const Points& points = path.points();
    std::vector<Run> sides;
    Run side{{0, path.length()}};
    for (std::size_t n = 1; n + 1 < points.size(); ++n) {
        const double turn = drawing::turn(points[n] - points[n - 1], points[n + 1] - points[n]);
        if (std::abs(turn) > kCorner) {
            side.stretch.to = path.position(n);
            side.turnAfter = turn;
            sides.push_back(side);
            side = {{path.position(n), path.length()}, turn, 0};
        }
    }
    sides.push_back(side);
    return sides;
}

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

/// Does the line turn toward the side? There half circles and teeth would run into each other. Left turns are negative
/// on the y-down page.
bool closesToward(double turn, double side) {
    return turn * side < 0;
}

/// Writes a name in a break, as near the middle of a share as the line is straight and free; gives the gap.
std::optional<drawing::Stretch> nameInBreak(Desk& desk, Subject& subject, const drawing::Path& path,
                                            const drawing::Stretch& share, const Label& label) {
    constexpr double kStraight = 20 * std::numbers::pi / 180;
    const double half = label.width() / 2 + 1;
    const double nominal = (share.from + share.to) / 2;
    for (const double aside : drawing::steps(0, share.length() / 2, 1)) {
        for (const double s : {nominal + aside, nominal - aside}) {
            const Point from = path.at(s - half);
            const Point to = path.at(s + half);
            const TurnedBox box = label.boxAt((from + to) * 0.5, drawing::readable(to - from));
            if (s - half >= share.from && s + half <= share.to &&
                path.turning(s - half - 3, s + half + 3) <= kStraight && desk.fits(box) &&
                !desk.isCrossed(box.grown(0.6), subject.order)) {
                desk.write(subject, label, box.middle, box.angle);
                return drawing::Stretch{s - half, s + half};
            }
        }
    }
    return std::nullopt;
}

/// Writes the name of a stretch that has no room for a break beside it, or aside of it by an extension line.
void nameBeside(Desk& desk, Subject& subject, const drawing::Path& path, const drawing::Stretch& stretch,
                const Label& label) {
    const drawing::Path seen(path.between(stretch.from, stretch.to));
    const auto place = desk.choose(label, besidePlaces(seen, label, desk.inkOf(subject).halfInk()), subject.order);
    if (place) {
        desk.write(subject, label, place->middle, place->angle);
    } else if (!asideOfStretch(desk, subject, label, path, stretch)) {
        desk.remark(subject, kLabelLeftOut);
    }
}

/// Does a stretch of a line lie in one of the gaps left for its letters?
bool isInGap(double from, double to, const std::vector<drawing::Stretch>& gaps) {
    return std::any_of(gaps.begin(), gaps.end(),
                       [=](const drawing::Stretch& gap) { return to > gap.from && from < gap.to; });
}

/// A second row of smaller half circles inside the first: parallels of the first would run into each other.
std::vector<drawing::Polyline> innerHalfCircles(const drawing::Path& path, const std::vector<double>& stations,
                                                const std::vector<drawing::Stretch>& gaps, double side) {
    std::vector<drawing::Polyline> inner;
    for (std::size_t n = 1; n < stations.size(); ++n) {
        if (!isInGap(stations[n - 1], stations[n], gaps)) {
            const Point a = path.at(stations[n - 1]);
            const Point b = path.at(stations[n]);
            const Vector in = drawing::unit(b - a) * std::min(kDoubleApart, drawing::length(b - a) / 4);
            Points arc;
            addHalfCircle(arc, a + in, b - in, side);
            inner.push_back({std::move(arc), false});
        }
    }
    return inner;
}

constexpr double kToothBase = 2.0;
constexpr double kToothHigh = 1.6;

/// Where the teeth of an obstacle line begin: evened in each stretch between corners, the first and last flush with its
/// ends, set back where the corner closes toward them.
std::vector<double> toothPlaces(const drawing::Path& path, double side, const std::vector<drawing::Stretch>& gaps) {
    constexpr double kPitch = 4.0;
    std::vector<double> places;
    for (const Run& one : runsOf(path)) {
        const auto setBack = [side](double turn) {
            return closesToward(turn, side) ? kToothHigh * std::tan(std::abs(turn) / 2) + 0.2 : 0;
        };
        const double from = one.stretch.from + setBack(one.turnBefore);
        const double to = one.stretch.to - setBack(one.turnAfter);
        const double room = to - from - kToothBase;
        if (room < 0) {
            continue;
        }
        const int spaces = static_cast<int>(std::lround(room / kPitch));
        for (int n = 0; n <= spaces; ++n) {
            const double s = from + (spaces == 0 ? room / 2 : room * n / spaces);
            if (!isInGap(s, s + kToothBase, gaps)) {
                places.push_back(s);
            }
        }
    }
    return places;
}

}  // namespace

void placeFrontLine(Desk& desk, Subject& subject) {
    constexpr double kChord = 3.0;
    const drawing::Path path(subject.points);
    const double side = enemySide(*subject.measure);
    const bool isNamed = !subject.measure->name.empty() || !subject.measure->number.empty();
    const auto gaps = letterEnds(desk, subject, path, isNamed ? lineRows(*subject.measure) : std::vector<std::string>{},
                                 kChord / 2 + desk.inkOf(subject).halfInk());
    std::vector<double> stations{0};
    for (const Run& run : runsOf(path)) {
        // At a corner that closes toward the enemy one chord bridges it, half before and half behind.
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
    std::vector<Points> rows(1);
    for (std::size_t n = 1; n < stations.size(); ++n) {
        if (isInGap(stations[n - 1], stations[n], gaps)) {
            rows.emplace_back();
        } else {
            addHalfCircle(rows.back(), path.at(stations[n - 1]), path.at(stations[n]), side);
        }
    }
    std::vector<drawing::Polyline> pieces;
    for (Points& row : rows) {
        if (subject.manner.standing == Standing::Planned && row.size() > 1) {
            const auto dashes =
                drawing::dashed(drawing::Path(row), drawing::kSmallOutline, drawing::CornerRule::UsersLine);
            pieces.insert(pieces.end(), dashes.begin(), dashes.end());
        } else {
            pieces.push_back({std::move(row), false});
        }
    }
    Pencil pencil = desk.inkOf(subject);
    if (!subject.manner.doubled) {
        pencil.lines(std::move(pieces), desk.gauge().pen, drawing::Join::Round);
        return;
    }
    std::vector<drawing::Polyline> both = innerHalfCircles(path, stations, gaps, side);
    both.insert(both.end(), std::make_move_iterator(pieces.begin()), std::make_move_iterator(pieces.end()));
    pencil.single().lines(std::move(both), desk.gauge().thin(), drawing::Join::Round);
}

void placeObstacleLine(Desk& desk, Subject& subject) {
    const drawing::Path path(subject.points);
    const double side = enemySide(*subject.measure);
    const auto gaps =
        letterEnds(desk, subject, path, lineRows(*subject.measure), kToothHigh + desk.inkOf(subject).halfInk());
    drawLine(desk, subject, path, gaps);
    Pencil pencil = desk.inkOf(subject);
    std::vector<drawing::Polyline> teeth;
    const auto add = [&](Point a, Point b) {
        const Vector out = drawing::leftOf(drawing::unit(b - a)) * side;
        const Vector onStroke = out * pencil.toStroke();
        teeth.push_back({{a + onStroke, (a + b) * 0.5 + out * kToothHigh, b + onStroke}, false});
    };
    if (subject.manner.standing == Standing::Planned && !subject.ink.marks.empty()) {
        for (const DashMiddle& dash : dashMiddles(subject.ink.marks.back(), subject.manner)) {
            const Vector half =
                dash.along * (kToothBase / 2);  // on the dashes, whole: beside one it belongs to nothing
            add(dash.at - half, dash.at + half);
        }
    } else {
        for (const double s : toothPlaces(path, side, gaps)) {
            add(path.at(s), path.at(s + kToothBase));
        }
    }
    pencil.single().lines(std::move(teeth), desk.gauge().pen);
}

void placeDangerLine(Desk& desk, Subject& subject) {
    constexpr double kTick = 1.5;
    constexpr double kPitch = 3.0;
    const drawing::Path path(fromTheWest(subject.points));
    const auto gaps = letterEnds(desk, subject, path, lineRows(*subject.measure), kTick);
    drawLine(desk, subject, path, gaps);
    std::vector<drawing::Polyline> ticks;
    if (subject.manner.standing == Standing::Planned && !subject.ink.marks.empty()) {
        // On the dashes: beside one a tick belongs to nothing.
        for (const DashMiddle& dash : dashMiddles(subject.ink.marks.back(), subject.manner)) {
            const Vector out = drawing::leftOf(dash.along) * kTick;
            ticks.push_back({{dash.at + out, dash.at - out}, false});
        }
        desk.inkOf(subject).single().lines(std::move(ticks), desk.gauge().thin());
        return;
    }
    const int count = std::max(1, static_cast<int>(std::lround(path.length() / kPitch)));
    for (int n = 0; n < count; ++n) {
        const double s = (n + 0.5) * path.length() / count;
        // Along a corner a tick would lie on the next piece of the line.
        const bool isAtCorner = path.turning(s - kTick, s + kTick) > kCorner;
        if (!isInGap(s - 0.4, s + 0.4, gaps) && !isAtCorner) {
            const Vector out = drawing::leftOf(path.chord(s, 1)) * kTick;
            ticks.push_back({{path.at(s) + out, path.at(s) - out}, false});
        }
    }
    desk.inkOf(subject).single().lines(std::move(ticks), desk.gauge().thin());
}

void placeLane(Desk& desk, Subject& subject) {
    constexpr double kFlare = 1.6;
    const drawing::Path path(subject.points);
    const double width = numberOf(*subject.measure, "width", 4, 40);
    Pencil ink = desk.inkOf(subject);
    for (const double side : {1.0, -1.0}) {
        Points line = drawing::offset(path.points(), side * width / 2);
        const double out = kFlare / std::numbers::sqrt2;
        const Vector first = path.chord(0, 1);
        const Vector last = path.chord(path.length(), 1);
        const Point head = line.front() + (drawing::leftOf(first) * side - first) * out;
        const Point foot = line.back() + (drawing::leftOf(last) * side + last) * out;
        line.insert(line.begin(), head);
        line.push_back(foot);
        inkSign(ink, line);
    }
    const std::string words = wordsOf(*subject.measure);
    const Label label{{words}, std::max(1.8, desk.gauge().letters - 0.2)};
    const double s = path.length() / 2;
    const Degrees angle = drawing::readable(path.chord(s, label.width()));
    std::vector<Desk::Place> places;
    if (width >= 4.4 && path.turning(s - label.width() / 2, s + label.width() / 2) < kCorner / 3) {
        places.push_back({path.at(s), angle});
    }
    for (const double side : {1.0, -1.0}) {
        places.push_back(besideAt(path, s, label, width / 2 + ink.halfInk(), side));
    }
    letterAt(desk, subject, label, places, angle);
}

void placeWay(Desk& desk, Subject& subject) {
    const drawing::Path path(fromTheWest(subject.points));
    const Label label{{wordsOf(*subject.measure)}, desk.gauge().letters};
    const std::vector<SeenStretch> seen = seenStretches(path, desk.window());
    const bool isByHand =
        desk.writeByHand(subject, label, drawing::readable(path.chord(path.length() / 2, label.width())));
    const std::size_t hand = isByHand ? stretchOfHand(seen, path, *subject.labelAt) : seen.size();
    std::vector<drawing::Stretch> gaps;
    for (std::size_t n = 0; n < seen.size(); ++n) {
        if (n == hand) {
            continue;
        }
        const std::size_t before = gaps.size();
        for (const drawing::Stretch& share : seen[n].shares) {
            if (const auto gap = nameInBreak(desk, subject, path, share, label)) {
                gaps.push_back(*gap);
            }
        }
        if (gaps.size() == before && (seen[n].mustCarry() || seen.size() == 1)) {
            nameBeside(desk, subject, path, seen[n].whole, label);
        }
    }
    drawLine(desk, subject, path, gaps);
}

void placeHalt(Desk& desk, Subject& subject) {
    constexpr double kHalf = 1.5;
    const double apart = subject.manner.doubled ? 1.0 : 0.6;  // two strokes each must stay two bars
    const Point spot = subject.points[0];
    const Vector u = drawing::unit(subject.points[1] - spot);
    const Vector n = drawing::leftOf(u);
    Pencil ink = desk.inkOf(subject);
    for (const double along : {-apart, apart}) {
        ink.line({spot + u * along + n * kHalf, spot + u * along - n * kHalf});
    }
    const Label label{{movement::label(*subject.measure)}, desk.gauge().letters};
    std::vector<Desk::Place> places;
    for (const double side : {1.0, -1.0}) {
        places.push_back({spot + n * (side * 2.9), drawing::readable(u)});
    }
    letterAt(desk, subject, label, places, drawing::readable(u));
}

}  // namespace crosstick::symbols
