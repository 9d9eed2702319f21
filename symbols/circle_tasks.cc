#include "symbols/circle_tasks.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/drawing/steps.h"
#include "symbols/arrows.h"
#include "symbols/construction.h"
#include "symbols/words.h"

namespace crosstick::symbols {
namespace {

constexpr double kHalfGap = 2.6;
constexpr double kLeastRadius = 5;
constexpr double kFromHead = 4.0;  ///< of ticks and teeth

enum class Ends { Plain, ArrowsAhead };

/// Two diagonals through the middle, which is left for the letter.
void placeDiagonals(Desk& desk, Subject& subject, Ends ends) {
    const Point centre = subject.points[0];
    const Vector corner = subject.points[1] - centre;
    const double x = std::abs(corner.x);
    const double y = std::abs(corner.y);
    if (std::min(x, y) < kLeastRadius / 2 || std::hypot(x, y) < kLeastRadius + kHalfGap) {
        return taskInWords(desk, subject, centre);
    }
    Pencil ink = desk.inkOf(subject);
    const double gap = kHalfGap * desk.taskLetter() / kTaskLetter;
    // The enemy's side is the one that the sign's corner lies farther toward.
    const bool isLevel = x >= y;
    const double ahead = (isLevel ? corner.x : corner.y) < 0 ? -1 : 1;
    for (const double sx : {-1.0, 1.0}) {
        for (const double sy : {-1.0, 1.0}) {
            const Vector end{sx * x, sy * y};
            const Vector u = drawing::unit(end);
            Point to = centre + end;
            if (ends == Ends::ArrowsAhead && (isLevel ? sx : sy) == ahead) {
                to = openHead(ink, to, u, 0.5 * desk.gauge().symbol).at;
            }
            inkSign(ink, {centre + u * gap, to});
        }
    }
    letterAt(desk, subject, {{letterOf(*subject.measure)}, desk.taskLetter()}, {{centre, Degrees(0)}}, Degrees(0));
}

/// A circle from one side of its gap clockwise to the other.
struct Circle {
    Point centre;
    double radius;
    Points arc;
};

Circle circleOf(const Subject& subject) {
    constexpr double kGap = 35 * std::numbers::pi / 180;
    constexpr int kSteps = 96;
    Circle circle{subject.points[0], drawing::length(subject.points[1] - subject.points[0]), {}};
    const Vector to = subject.points[1] - circle.centre;
    const double gapAt = std::atan2(to.y, to.x);  // clockwise as seen, since y runs down
    for (int n = 0; n <= kSteps; ++n) {
        const double turn = gapAt + kGap / 2 + (2 * std::numbers::pi - kGap) * n / kSteps;
        circle.arc.push_back(circle.centre + Vector{std::cos(turn), std::sin(turn)} * circle.radius);
    }
    return circle;
}

enum class End { Head, Cross };

/// Where a circle's letter stands: opposite the gap; an I where the circle is not as upright as the letter, which would
/// be taken for a piece of it.
double letterPlace(const drawing::Path& path, const std::string& letter) {
    constexpr double kLeast = 0.7;  // of the line's direction that is level
    const double middle = path.length() / 2;
    for (const double aside : drawing::steps(0, middle / 2, std::max(0.25, middle / 200))) {
        for (const double s : {middle + aside, middle - aside}) {
            if (letter != "I" || std::abs(path.chord(s, 1).x) >= kLeast) {
                return s;
            }
        }
    }
    return middle;
}

/// The circle with its letter opposite the gap and a sign at its end; nothing where it is too small.
std::optional<Circle> placeCircle(Desk& desk, Subject& subject, End end) {
    Circle circle = circleOf(subject);
    if (circle.radius < kLeastRadius) {
        taskInWords(desk, subject, circle.centre);
        return std::nullopt;
    }
    Pencil ink = desk.inkOf(subject);
    const drawing::Path path(circle.arc);
    Points line = circle.arc;
    const Vector u = path.chord(path.length() - 1.2, 2.4);
    if (end == End::Head) {
        const ShaftEnd shaft = openHead(ink, circle.arc.back(), u, 0.5 * desk.gauge().symbol);
        line = cutBack(line, shaft.at, u);
    } else {
        const double half = 0.79 * desk.gauge().symbol / 2;
        const Vector n = drawing::leftOf(u);
        for (const double side : {1.0, -1.0}) {
            const Vector way = drawing::unit(u + n * side) * half;
            inkSign(ink, {circle.arc.back() - way, circle.arc.back() + way});
        }
    }
    inkLettered(desk, subject, line, letterPlace(path, letterOf(*subject.measure)), letterOf(*subject.measure));
    return circle;
}

/// Places along the circle at about a pitch, the first half a pitch in, 4.0 clear of the head and 2.0 of the letter's
/// gap.
/// @param letter  where on the circle it stands  @param capital  how high it is
/// @param half  half of what stands on a place covers along the circle  @param head  length of the head
std::vector<double> placesRound(const drawing::Path& path, double letter, double capital, double pitch, double half,
                                double head) {
    const double fromLetter = 2.0 + 2.2 * capital / kTaskLetter;
    std::vector<double> places;
    const double from = pitch / 2;
    const double to = path.length() - head - kFromHead - half;
    const auto count = std::max(1L, std::lround((to - from) / pitch));
    for (long n = 0; n <= count && to > from; ++n) {
        const double s = from + (to - from) * static_cast<double>(n) / static_cast<double>(count);
        if (std::abs(s - letter) > fromLetter + half) {
            places.push_back(s);
        }
    }
    return places;
}

/// How long an open head of a task is.
double headLength(const drawing::Gauge& gauge) {
    return 0.5 * gauge.symbol * std::cos(std::numbers::pi / 6);
}

}  // namespace

void placeDestroy(Desk& desk, Subject& subject) {
    placeDiagonals(desk, subject, Ends::Plain);
}
void placeNeutralize(Desk& desk, Subject& subject) {
    placeDiagonals(desk, subject, Ends::Plain);
}
void placeInterdict(Desk& desk, Subject& subject) {
    placeDiagonals(desk, subject, Ends::ArrowsAhead);
}

void placeSecure(Desk& desk, Subject& subject) {
    (void)placeCircle(desk, subject, End::Head);
}
void placeOccupy(Desk& desk, Subject& subject) {
    (void)placeCircle(desk, subject, End::Cross);
}

void placeRetain(Desk& desk, Subject& subject) {
    constexpr double kTick = 2.0;
    constexpr double kPitch = 3.0;
    const std::size_t before = subject.ink.marks.size();
    if (const auto circle = placeCircle(desk, subject, End::Head)) {
        const drawing::Path path(circle->arc);
        Pencil ink = desk.inkOf(subject);
        const double head = headLength(desk.gauge());
        Points feet;
        if (subject.manner.standing == Standing::Planned) {  // on the dashes: beside one a tick belongs to nothing
            for (std::size_t n = before + 1; n < subject.ink.marks.size(); ++n) {
                for (const DashMiddle& dash : dashMiddles(subject.ink.marks[n], subject.manner)) {
                    if (drawing::length(dash.at - circle->arc.back()) > head + kFromHead) {
                        feet.push_back(dash.at);
                    }
                }
            }
        } else {
            for (const double s :
                 placesRound(path, path.length() / 2, desk.taskLetter(), kPitch, desk.gauge().pen / 2, head)) {
                feet.push_back(path.at(s));
            }
        }
        std::vector<drawing::Polyline> ticks;
        for (const Point foot : feet) {
            const Vector out = drawing::unit(foot - circle->centre);
            ticks.push_back({{foot + out * ink.toStroke(), foot + out * kTick}, false});
        }
        ink.single().lines(std::move(ticks), desk.gauge().pen);
    }
}

void placeIsolate(Desk& desk, Subject& subject) {
    constexpr double kBase = 2.0;
    constexpr double kHigh = 1.8;
    constexpr double kPitch = 5.0;
    if (const auto circle = placeCircle(desk, subject, End::Head)) {
        const drawing::Path path(circle->arc);
        std::vector<drawing::Polyline> teeth;
        const double letter = letterPlace(path, letterOf(*subject.measure));
        Pencil ink = desk.inkOf(subject);
        for (const double s :
             placesRound(path, letter, desk.taskLetter(), kPitch, kBase / 2, headLength(desk.gauge()))) {
            const Point foot = path.at(s);
            const Vector in = drawing::unit(circle->centre - foot);
            const Vector onStroke = in * ink.toStroke();
            teeth.push_back(
                {{path.at(s - kBase / 2) + onStroke, foot + in * kHigh, path.at(s + kBase / 2) + onStroke}, false});
        }
        ink.single().lines(std::move(teeth), desk.gauge().pen);
    }
}

}  // namespace crosstick::symbols
