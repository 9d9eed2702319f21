#include "symbols/ground_signs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/units/number_text.h"
#include "symbols/arrows.h"
#include "symbols/construction.h"
#include "symbols/faults.h"
#include "symbols/point_symbol.h"

namespace crosstick::symbols {
namespace {

constexpr double kSmallLetters = 1.8;
constexpr double kFull = 2 * std::numbers::pi;

double bearingOf(Vector v) {
    const double turn = std::atan2(v.x, -v.y);
    return turn < 0 ? turn + kFull : turn;
}
Vector toward(double bearing) {
    return {std::sin(bearing), -std::cos(bearing)};
}

Points arcOf(Point centre, double radius, double from, double sweep) {
    const int count = std::max(8, static_cast<int>(std::abs(sweep) * radius / 0.8));
    Points arc;
    for (int n = 0; n <= count; ++n) {
        arc.push_back(centre + toward(from + sweep * n / count) * radius);
    }
    return arc;
}

/// "020" of a grid azimuth on the film: its grid lines run to the top.
std::string azimuthWords(double bearing) {
    return fmt::format("{:03}", std::lround(bearing * 360 / kFull) % 360);
}

}  // namespace

void placeViewpoint(Desk& desk, Subject& subject) {
    constexpr double kRing = 2.4;
    constexpr double kDefaultRay = 22;
    const Point spot = subject.points[0];
    std::array<Vector, 2> rays{subject.points[1] - spot, subject.points[2] - spot};
    for (Vector& ray : rays) {  // a limit on the spot itself: across the film's top
        ray = drawing::length(ray) < kRing ? Vector{0, -kDefaultRay} : ray;
    }
    Pencil ink = desk.inkOf(subject);
    ink.circle(spot, kRing, desk.gauge().pen);
    ink.disc(spot, 0.6);
    for (const Vector ray : rays) {
        inkThinSign(ink, {{spot + drawing::unit(ray) * (kRing / 2), spot + ray}, false});
    }
    const double radius = 0.82 * std::min(drawing::length(rays[0]), drawing::length(rays[1]));
    const double from = bearingOf(rays[0]);
    double sweep = bearingOf(rays[1]) - from;
    sweep += sweep <= 0 ? kFull : 0;
    if (drawing::length(drawing::unit(rays[0]) - drawing::unit(rays[1])) < 1e-6) {
        sweep = kFull;
    }
    const Label limits{{azimuthWords(from) + '-' + azimuthWords(bearingOf(rays[1]))}, kSmallLetters};
    const Point onArc = spot + toward(from + sweep / 2) * radius;
    const Degrees angle = drawing::readable(drawing::leftOf(toward(from + sweep / 2)));
    const double half = (limits.width() / 2 + 1) / radius;
    if (2 * half < sweep && desk.fits(limits.boxAt(onArc, angle))) {
        inkThinSign(ink, {arcOf(spot, radius, from, sweep / 2 - half), false});
        inkThinSign(ink, {arcOf(spot, radius, from + sweep / 2 + half, sweep / 2 - half), false});
        desk.write(subject, limits, onArc, angle);
    } else {
        inkThinSign(ink, {arcOf(spot, radius, from, sweep), false});
    }
    desk.take(subject, {spot, kRing, kRing, Degrees(0)});
    const Label label{{movement::label(*subject.measure)}, desk.gauge().letters};
    const Vector away = toward(from + sweep / 2) * -1;
    std::vector<Desk::Place> places;
    for (const Vector way : {away, Vector{1, 0}, Vector{-1, 0}, Vector{0, 1}, Vector{0, -1}}) {
        // As near as the whole box is beside the ring or above it.
        const double clear = kRing / 2 + 0.9;
        const double far = std::min((label.width() / 2 + clear) / std::max(std::abs(way.x), 1e-6),
                                    (label.height() / 2 + clear) / std::max(std::abs(way.y), 1e-6));
        for (const double farther : {1.0, 2.0, 3.0}) {
            places.push_back({spot + way * (far * farther), Degrees(0)});
        }
    }
    std::erase_if(places, [&](const Desk::Place& place) {  // its own rays are in nobody's way but the name's
        const TurnedBox box = label.boxAt(place.middle, place.angle).grown(0.9);
        return box.meets(spot, spot + rays[0]) || box.meets(spot, spot + rays[1]);
    });
    letterAt(desk, subject, label, places, Degrees(0));
}

void placeRangeRing(Desk& desk, Subject& subject) {
    if (!isSeen(desk, subject)) {
        return;
    }
    const Point spot = subject.points.front();
    const Metres metres(numberOf(*subject.measure, "radius", 1, 100000));
    const double radius = metres.value() * 1000 / desk.engraving().frame.scale().denominator;
    const Label label{{fmt::format("{} m", std::lround(metres.value()))}, kSmallLetters};
    Pencil ink = desk.inkOf(subject);
    ink.disc(spot, 0.8);
    const double half = (label.width() / 2 + 1) / radius;
    if (desk.writeByHand(subject, label, Degrees(0))) {
        inkThinSign(ink, {circlePoints(spot, 2 * radius), true});
        return;
    }
    for (const double bearing : {0.0, kFull / 4, kFull / 2, 3 * kFull / 4}) {
        const Point middle = spot + toward(bearing) * radius;
        const Degrees angle = drawing::readable(drawing::leftOf(toward(bearing)));
        if (half < 0.6 && desk.fits(label.boxAt(middle, angle)) &&
            desk.taken().crossings(label.boxAt(middle, angle), subject.order) == 0) {
            desk.write(subject, label, middle, angle);
            inkThinSign(ink, {arcOf(spot, radius, bearing + half, kFull - 2 * half), false});
            return;
        }
    }
    inkThinSign(ink, {circlePoints(spot, 2 * radius), true});
    letterAt(desk, subject, label,
             {{spot + Vector{0, -radius - 0.9 - label.height() / 2}, Degrees(0)},
              {spot + Vector{radius + 0.9 + label.width() / 2, 0}, Degrees(0)},
              {spot + Vector{0, radius + 0.9 + label.height() / 2}, Degrees(0)}},
             Degrees(0));
}

void placeSlopeArrows(Desk& desk, Subject& subject) {
    constexpr double kHead = 1.6;
    constexpr double kApart = 0.4;
    constexpr double kWide = 1.2;  // of a head's base
    const Point spot = subject.points[0];
    const Vector u = drawing::unit(subject.points[1] - spot);
    const double percent = numberOf(*subject.measure, "slope", 1, 100);
    const int heads = percent >= 14 ? 4 : percent >= 10 ? 3 : percent >= 7 ? 2 : 1;
    const double whole = heads * kHead + (heads - 1) * kApart;
    Pencil ink = desk.inkOf(subject).single();
    for (int n = 0; n < heads; ++n) {
        (void)filledHead(ink, spot + u * (kHead - whole / 2 + n * (kHead + kApart)), u, 1.5 * kHead);
    }
    const TurnedBox box{spot, whole, kWide, drawing::readable(u)};
    desk.take(subject, box);
    const std::string typed = fieldOf(*subject.measure, "slope");
    if (!parseNumber(typed)) {
        return;
    }
    const Label label{{typed + " %"}, kSmallLetters};
    const drawing::Box b = box.bounds().grown(0.9);
    const double half = label.width() / 2;
    letterAt(desk, subject, label,
             {{{b.right + half, spot.y}, Degrees(0)},
              {{b.left - half, spot.y}, Degrees(0)},
              {{spot.x, b.top - label.height() / 2}, Degrees(0)},
              {{spot.x, b.bottom + label.height() / 2}, Degrees(0)}},
             Degrees(0));
}

}  // namespace crosstick::symbols
