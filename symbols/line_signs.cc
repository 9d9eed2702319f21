#include "symbols/line_signs.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/steps.h"
#include "symbols/arrows.h"
#include "symbols/construction.h"
#include "symbols/extension.h"
#include "symbols/faults.h"
#include "symbols/line_labels.h"
#include "symbols/runs.h"

namespace crosstick::symbols {
namespace {

/// An arrow head that stands on a line.
struct OnLine {
    double s;  ///< of its middle
    Point tip;
    Vector along;
};

bool standsIn(const std::vector<OnLine>& heads, double from, double to) {
    constexpr double kClear = 2.4;
    return std::any_of(heads.begin(), heads.end(),
                       [=](const OnLine& head) { return head.s > from - kClear && head.s < to + kClear; });
}

/// Heads of a way that is used in one direction, as it was drawn: at 0.2 and 0.8 of each 120 (engraving B2), of each
/// share where a stretch is shorter.
std::vector<OnLine> oneWayHeads(const Desk& desk, const Subject& subject, const drawing::Path& path) {
    constexpr double kHead = 2.4;
    std::vector<OnLine> heads;
    if (!isYes(*subject.measure, "one_way")) {
        return heads;
    }
    const bool isTurned = path.points().front() != subject.points.front();
    for (const SeenStretch& seen : seenStretches(path, desk.window())) {
        for (const drawing::Stretch& share : seen.shares) {
            for (const double part : {0.2, 0.8}) {
                const double s = share.from + part * share.length();
                const Vector along = path.chord(s, kHead) * (isTurned ? -1.0 : 1.0);
                if (share.length() >= 4 * kHead) {
                    heads.push_back({s, path.at(s) + along * (kHead / 2), along});
                }
            }
        }
    }
    return heads;
}

/// Writes a name in a break, as near the middle of a share as the line is straight and free; gives the gap.
std::optional<drawing::Stretch> nameInBreak(Desk& desk, Subject& subject, const drawing::Path& path,
                                            const drawing::Stretch& share, const Label& label,
                                            const std::vector<OnLine>& heads) {
    constexpr double kStraight = 20 * std::numbers::pi / 180;
    constexpr double kMove = 15;  // engraving A11; farther along it would jump when its place is taken
    const double half = label.width() / 2 + 1;
    const double nominal = (share.from + share.to) / 2;
    for (const double aside : drawing::steps(0, std::min(kMove, share.length() / 2), 1)) {
        for (const double s : {nominal + aside, nominal - aside}) {
            const Point from = path.at(s - half);
            const Point to = path.at(s + half);
            const TurnedBox box = label.boxAt((from + to) * 0.5, drawing::readable(to - from));
            if (s - half >= share.from && s + half <= share.to &&
                path.turning(s - half - 3, s + half + 3) <= kStraight && desk.fits(box) &&
                !desk.isCrossed(box, subject.order) && !standsIn(heads, s - half, s + half)) {
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
    const std::vector<OnLine> heads = oneWayHeads(desk, subject, path);
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
            if (const auto gap = nameInBreak(desk, subject, path, share, label, heads)) {
                gaps.push_back(*gap);
            }
        }
        if (gaps.size() == before && (seen[n].mustCarry() || seen.size() == 1)) {
            nameBeside(desk, subject, path, seen[n].whole, label);
        }
    }
    drawLine(desk, subject, path, gaps);
    Pencil ink = desk.inkOf(subject).single();
    for (const OnLine& head : heads) {
        (void)filledHead(ink, head.tip, head.along);
    }
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
