#include "core/sky/crossings.h"

namespace crosstick::sky {
namespace {

constexpr Seconds kStep{1200};
constexpr Seconds kFine{0.01};

/// The highest or lowest point of a curve that has one between two times, by thirds.
Seconds turnBetween(const Curve& curve, Seconds from, Seconds until, bool highest) {
    while (until - from > kFine) {
        const Seconds third = (until - from) / 3;
        const bool firstIsHigher = curve(from + third) > curve(until - third);
        (firstIsHigher == highest ? until : from) += firstIsHigher == highest ? -third : third;
    }
    return (from + until) / 2;
}

Seconds rootBetween(const Curve& curve, Knot a, Knot b, Degrees level) {
    const bool rises = b.altitude > a.altitude;
    while (b.at - a.at > kFine) {
        const Seconds middle = (a.at + b.at) / 2;
        ((curve(middle) < level) == rises ? a.at : b.at) = middle;
    }
    return (a.at + b.at) / 2;
}

bool isCrossed(const Knot& a, const Knot& b, Degrees level) {
    return (a.altitude < level) != (b.altitude < level);
}

}  // namespace

std::vector<Knot> knotsOf(const Curve& curve, Seconds from, Seconds until) {
    std::vector<Knot> knots{{from, curve(from), false}};
    Knot before = knots.front();
    Knot here = before;
    for (Seconds at = std::min(from + kStep, until);; at = std::min(at + kStep, until)) {
        const Knot next{at, curve(at), false};
        const bool highest = here.altitude > before.altitude && here.altitude >= next.altitude;
        const bool lowest = here.altitude < before.altitude && here.altitude <= next.altitude;
        if (highest || lowest) {
            const Seconds turn = turnBetween(curve, before.at, next.at, highest);
            knots.push_back({turn, curve(turn), true});
        }
        before = here;
        here = next;
        if (at >= until) {
            break;
        }
    }
    knots.push_back(here);
    return knots;
}

std::vector<Crossing> crossingsOf(const Curve& curve, const std::vector<Knot>& knots, Degrees level, Way way,
                                  Degrees tolerance) {
    const auto isNear = [&](const Knot& knot) { return knot.turns && abs(knot.altitude - level) < tolerance; };
    std::vector<Crossing> found;
    for (std::size_t n = 0; n + 1 < knots.size(); ++n) {
        const Knot& a = knots[n];
        const Knot& b = knots[n + 1];
        const Way runs = b.altitude > a.altitude ? Way::Up : Way::Down;
        const bool crossed = isCrossed(a, b, level);
        if (crossed && runs == way) {
            found.push_back({rootBetween(curve, a, b, level), isNear(a) || isNear(b) ? Kind::Grazes : Kind::Sure});
        }
        // A turn that just misses the level could be an event either way.
        if (isNear(b) && !crossed && n + 2 < knots.size() && !isCrossed(b, knots[n + 2], level)) {
            found.push_back({b.at, Kind::FallsShort});
        }
    }
    return found;
}

}  // namespace crosstick::sky
