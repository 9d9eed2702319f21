#include "symbols/tasks.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "symbols/arrows.h"
#include "symbols/construction.h"
#include "symbols/words.h"

namespace crosstick::symbols {
namespace {

constexpr double kLeastBar = 8;
constexpr double kLeastStem = 10;
constexpr double kLeastShaft = 12;

double armsOf(const Desk& desk) {
    return 0.5 * desk.gauge().symbol;
}

/// A straight shaft with an open V on its tip.
void inkArrow(Desk& desk, Subject& subject, Point from, Point tip, double arms) {
    const Vector u = drawing::unit(tip - from);
    Pencil ink = desk.inkOf(subject);
    const ShaftEnd end = openHead(ink, tip, u, arms);
    if (drawing::dot(end.at - from, u) > 0) {
        inkSign(ink, {from, end.at});
    }
}

/// A bar between the first two anchors, and how far behind it the third lies.
struct BarAndDepth {
    Point a, b;
    Vector u;      ///< along the bar
    Vector depth;  ///< square to the bar, to the third anchor's side
    [[nodiscard]] Point middle() const { return (a + b) * 0.5; }
};

std::optional<BarAndDepth> barOf(const Points& p, double leastDepth) {
    const Vector u = drawing::unit(p[1] - p[0]);
    const Vector n = drawing::leftOf(u);
    const BarAndDepth bar{p[0], p[1], u, n * drawing::dot(p[2] - p[0], n)};
    const bool isLarge = drawing::length(p[1] - p[0]) >= kLeastBar && drawing::length(bar.depth) >= leastDepth;
    return isLarge ? std::optional(bar) : std::nullopt;
}

enum class ArmEnd { Diverging, Converging, Arrow };

/// Three sides of a box open to the enemy, with a sign on the ends of its arms.
void placeBracket(Desk& desk, Subject& subject, ArmEnd end) {
    constexpr double kLeastDepth = 4;
    const auto bar = barOf(subject.points, kLeastDepth);
    if (!bar) {
        return taskInWords(desk, subject, subject.points.front());
    }
    const Vector front = drawing::unit(bar->depth) * -1;
    Pencil ink = desk.inkOf(subject);
    Point left = bar->a;
    Point right = bar->b;
    if (end == ArmEnd::Arrow) {
        const double arms = 0.6 * desk.gauge().symbol;
        left = openHead(ink, bar->a, front, arms).at;
        right = openHead(ink, bar->b, front, arms).at;
    } else {
        const double half = 0.85 * desk.gauge().symbol / 2;
        const double way = end == ArmEnd::Diverging ? 1 : -1;
        for (const auto& [at, outward] : {std::pair{bar->a, bar->u * -1}, std::pair{bar->b, bar->u}}) {
            const Vector u = drawing::unit(front + outward * way) * half;
            inkSign(ink, {at - u, at + u});
        }
    }
    const Points line{left, bar->a + bar->depth, bar->b + bar->depth, right};
    const double rear = drawing::length(left - line[1]) + drawing::length(line[2] - line[1]) / 2;
    inkLettered(desk, subject, line, rear, letterOf(*subject.measure));
}

}  // namespace

void placeBlock(Desk& desk, Subject& subject) {
    const Points& p = subject.points;
    const Point middle = (p[0] + p[1]) * 0.5;
    if (drawing::length(p[1] - p[0]) < kLeastBar || drawing::length(p[2] - middle) < kLeastStem) {
        return taskInWords(desk, subject, middle);
    }
    Pencil ink = desk.inkOf(subject);
    inkSign(ink, {p[0], p[1]});
    const Point foot = middle + drawing::unit(p[2] - middle) * ink.toStroke();
    inkLettered(desk, subject, {p[2], foot}, drawing::length(p[2] - foot) / 2, letterOf(*subject.measure));
}

void placeBreach(Desk& desk, Subject& subject) {
    placeBracket(desk, subject, ArmEnd::Diverging);
}
void placeCanalize(Desk& desk, Subject& subject) {
    placeBracket(desk, subject, ArmEnd::Converging);
}
void placeBypass(Desk& desk, Subject& subject) {
    placeBracket(desk, subject, ArmEnd::Arrow);
}

void placeClear(Desk& desk, Subject& subject) {
    const auto bar = barOf(subject.points, kLeastShaft);
    if (!bar) {
        return taskInWords(desk, subject, subject.points.front());
    }
    Pencil ink = desk.inkOf(subject);
    inkSign(ink, {bar->a, bar->b});
    const Vector back = drawing::unit(bar->depth);
    const double arms = std::min(armsOf(desk), drawing::length(bar->b - bar->a) * 0.25);
    for (const double share : {0.15, 0.5, 0.85}) {
        const Point at = bar->a + (bar->b - bar->a) * share;
        const Point tip = at + back * ink.halfInk();  // on the bar's near ink edge
        if (share != 0.5) {
            inkArrow(desk, subject, at + bar->depth, tip, arms);
            continue;
        }
        const ShaftEnd end = openHead(ink, tip, back * -1, arms);
        const Point tail = at + bar->depth;
        inkLettered(desk, subject, {tail, end.at}, drawing::length(end.at - tail) * 0.43, letterOf(*subject.measure));
    }
}

void placeDisrupt(Desk& desk, Subject& subject) {
    const Points& p = subject.points;
    const Vector longest = p[2] - p[0];
    const double l = drawing::length(longest);
    if (drawing::length(p[1] - p[0]) < kLeastBar || l < kLeastShaft) {
        return taskInWords(desk, subject, p[0]);
    }
    Pencil ink = desk.inkOf(subject);
    const Vector u = drawing::unit(longest);
    const Point middle = (p[0] + p[1]) * 0.5;
    const Vector toStroke = u * ink.toStroke();
    // Bar and outer arrows are one line, so that their corners are whole.
    const ShaftEnd first = openHead(ink, p[2], u, armsOf(desk));
    const ShaftEnd last = openHead(ink, p[1] + longest * 0.47, u, armsOf(desk));
    inkSign(ink, {first.at, p[0], p[1], last.at});
    inkArrow(desk, subject, middle + toStroke, middle + longest * 0.73, armsOf(desk));
    const Point tail = middle - longest * 0.47;
    const Point foot = middle - toStroke;
    inkLettered(desk, subject, {tail, foot}, drawing::length(foot - tail) / 2, letterOf(*subject.measure));
}

void placeFix(Desk& desk, Subject& subject) {
    constexpr int kHalfWaves = 7;
    constexpr double kPitch = 2.2;
    const Point tip = subject.points[0];
    const Point tail = subject.points[1];
    const double l = drawing::length(tip - tail);
    if (l < kLeastShaft) {
        return taskInWords(desk, subject, tip);
    }
    const Vector u = drawing::unit(tip - tail);
    const Vector n = drawing::leftOf(u);
    const double third = l / 3;
    const double arms = armsOf(desk);
    const double pitch = std::min(kPitch, std::max(0.6, (l - third - arms - 1) / kHalfWaves));
    Pencil ink = desk.inkOf(subject);
    const ShaftEnd end = openHead(ink, tip, u, arms);
    Points line{tail, tail + u * third};
    for (int n2 = 0; n2 < kHalfWaves; ++n2) {
        const double side = n2 % 2 == 0 ? 1 : -1;
        line.push_back(tail + u * (third + pitch * (n2 + 0.5)) + n * (side * 0.35 * desk.gauge().symbol));
    }
    line.push_back(tail + u * (third + pitch * kHalfWaves));
    line.push_back(end.at);
    inkLettered(desk, subject, line, third / 2, letterOf(*subject.measure));
}

void placeSecurity(Desk& desk, Subject& subject) {
    const Point centre = subject.points[0];
    const double h = desk.gauge().symbol;
    // Of the unit symbol that it is drawn to: a friend's rectangle, an enemy's diamond with its second outline.
    const double side = subject.manner.side == Side::Enemy ? 0.72 * h : 0.75 * h;
    const double symbol = side + (subject.manner.doubled ? kDoubleApart * std::numbers::sqrt2 : 0);
    const double room = symbol + 0.9;
    if (drawing::length(subject.points[1] - centre) < room + kLeastShaft ||
        drawing::length(subject.points[2] - centre) < room + kLeastShaft) {
        return taskInWords(desk, subject, centre);
    }
    Pencil ink = desk.inkOf(subject);
    const auto byHand = subject.labelAt;  // one letter of the two: that of the nearer arrow
    const auto away = [&](Point tip) { return drawing::length((centre + tip) * 0.5 - *byHand); };
    for (const Point tip : {subject.points[1], subject.points[2]}) {
        const Point other = tip == subject.points[1] ? subject.points[2] : subject.points[1];
        subject.labelAt = byHand && away(tip) < away(other) ? byHand : std::nullopt;
        const Vector u = drawing::unit(tip - centre);
        // From the middle of the symbol's side.
        const Point from = centre + Vector{u.x < 0 ? -symbol : symbol, 0};
        const double l = drawing::length(tip - from);
        const Vector way = drawing::unit(tip - from);
        const Vector n = drawing::leftOf(way);
        const Point there = from + way * (0.62 * l) + n * (0.25 * h);
        const Point back = from + way * (0.48 * l) - n * (0.25 * h);
        const Vector last = drawing::unit(tip - back);
        const ShaftEnd end = openHead(ink, tip, last, armsOf(desk));
        inkLettered(desk, subject, {from, there, back, end.at}, 0.22 * l, letterOf(*subject.measure));
    }
    subject.labelAt = byHand;
}

void placeWithdraw(Desk& desk, Subject& subject) {
    const Points& p = subject.points;
    const double l = drawing::length(p[0] - p[1]);
    if (l < kLeastShaft || drawing::length(p[2] - p[1]) < 1) {
        return taskInWords(desk, subject, p[0]);
    }
    const Vector u = drawing::unit(p[0] - p[1]);
    Pencil ink = desk.inkOf(subject);
    const ShaftEnd end = openHead(ink, p[0], u, armsOf(desk));
    // Half a circle from the straight's end to the hook's other end, on the side away from the tip.
    constexpr int kSteps = 20;
    const Point middle = (p[1] + p[2]) * 0.5;
    const Vector radius = p[1] - middle;
    Vector out = drawing::leftOf(radius);
    if (drawing::dot(out, u) > 0) {
        out = out * -1;
    }
    Points line;
    for (int n = 0; n < kSteps; ++n) {
        const double turn = std::numbers::pi * (kSteps - n) / kSteps;
        line.push_back(middle + radius * std::cos(turn) + out * std::sin(turn));
    }
    const double hook = drawing::Path(line).length() + drawing::length(line.back() - p[1]);
    line.push_back(p[1]);
    line.push_back(end.at);
    inkLettered(desk, subject, line, hook + l / 2, letterOf(*subject.measure));
}

}  // namespace crosstick::symbols
