#include "core/film/registration_edits.h"

#include <algorithm>
#include <cmath>

#include "core/film/faults.h"
#include "core/film/registration.h"

namespace crosstick::film {
namespace {

using geodesy::PlanePoint;

constexpr double kNear = 0.05;         ///< of the interval: what is typed to 10 m still means its crossing
constexpr double kLeastSpread = 0.05;  ///< of the window: the largest triangle of three ticks

std::optional<PlanePoint> crossingAt(PlanePoint point, Metres interval) {
    const auto nearest = [interval](Metres v) { return interval * std::round(v / interval); };
    const PlanePoint crossing{nearest(point.easting), nearest(point.northing)};
    const double off =
        std::hypot((crossing.easting - point.easting).value(), (crossing.northing - point.northing).value());
    return off <= kNear * interval.value() ? std::optional(crossing) : std::nullopt;
}

bool isInside(const plan::Registration& window, PlanePoint p, Metres inset) {
    return p.easting >= window.southWest.easting + inset && p.easting <= window.northEast.easting - inset &&
           p.northing >= window.southWest.northing + inset && p.northing <= window.northEast.northing - inset;
}

/// The area of the largest triangle of three ticks, in square metres.
double spread(const std::vector<PlanePoint>& ticks) {
    double most = 0;
    for (std::size_t a = 0; a < ticks.size(); ++a) {
        for (std::size_t b = a + 1; b < ticks.size(); ++b) {
            for (std::size_t c = b + 1; c < ticks.size(); ++c) {
                const double cross =
                    ((ticks[b].easting - ticks[a].easting).value() * (ticks[c].northing - ticks[a].northing).value()) -
                    ((ticks[c].easting - ticks[a].easting).value() * (ticks[b].northing - ticks[a].northing).value());
                most = std::max(most, std::abs(cross) / 2);
            }
        }
    }
    return most;
}

}  // namespace

Result<plan::Registration> withTicksAt(const plan::Registration& registration, const std::vector<PlanePoint>& crossings,
                                       Scale scale) {
    const Metres interval = gridInterval(scale);
    plan::Registration next = registration;
    next.ticks.clear();
    for (const PlanePoint point : crossings) {
        const auto crossing = crossingAt(point, interval);
        if (!crossing) {
            return fail(kNotACrossing, {{"easting", std::round(point.easting.value())},
                                        {"northing", std::round(point.northing.value())},
                                        {"interval", interval.value()}});
        }
        if (!isInside(registration, *crossing, onGround(kTickInset, scale))) {
            return fail(kTickOutsideWindow,
                        {{"easting", crossing->easting.value()}, {"northing", crossing->northing.value()}});
        }
        if (std::find(next.ticks.begin(), next.ticks.end(), *crossing) == next.ticks.end()) {
            next.ticks.push_back(*crossing);
        }
    }
    if (next.ticks.size() < 3) {
        return fail(kTooFewTicks, {{"count", static_cast<std::int64_t>(next.ticks.size())}});
    }
    const double window = (registration.northEast.easting - registration.southWest.easting).value() *
                          (registration.northEast.northing - registration.southWest.northing).value();
    if (spread(next.ticks) < kLeastSpread * window) {
        return fail(kTicksInARow);
    }
    return next;
}

Result<plan::Registration> withWindow(const plan::Plan& plan, PlanePoint corner, PlanePoint opposite) {
    const Metres interval = gridInterval(plan.sheets().empty() ? Scale{} : plan.sheets().front()->scale);
    const Metres step = interval / 10;
    const auto below = [step](Metres a, Metres b) { return step * std::floor(std::min(a, b) / step); };
    const auto above = [step](Metres a, Metres b) { return step * std::ceil(std::max(a, b) / step); };
    const PlanePoint southWest{below(corner.easting, opposite.easting), below(corner.northing, opposite.northing)};
    const PlanePoint northEast{above(corner.easting, opposite.easting), above(corner.northing, opposite.northing)};
    if (northEast.easting - southWest.easting < interval || northEast.northing - southWest.northing < interval) {
        return fail(kWindowTooSmall, {{"least", interval.value()}});
    }
    return proposeTicks(plan, southWest, northEast);
}

}  // namespace crosstick::film
