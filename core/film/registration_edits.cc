#include "core/film/registration_edits.h"

#include <algorithm>
#include <cmath>

#include "core/film/faults.h"
#include "core/film/registration.h"
#include "core/geodesy/crs.h"

namespace crosstick::film {
namespace {

using geodesy::PlanePoint;

constexpr double kNear = 0.05;         ///< of the interval: what is typed to 10 m still means its crossing
constexpr double kLeastSpread = 0.05;  ///< of the window: the largest triangle of three ticks

Metres onLine(Metres at, Metres interval) {
    return interval * std::round(at / interval);
}

PlanePoint nearestCrossing(PlanePoint point, Metres interval) {
    return {onLine(point.easting, interval), onLine(point.northing, interval)};
}

std::optional<PlanePoint> crossingAt(PlanePoint point, Metres interval) {
    const PlanePoint crossing = nearestCrossing(point, interval);
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

/// Where a tick at `place` goes when the window has moved: there, or to the nearest crossing inside that none of the
/// others stands on; nothing where there is none.
std::optional<PlanePoint> heldInside(const plan::Registration& window, PlanePoint place,
                                     const std::vector<PlanePoint>& others, Metres interval, Metres inset) {
    const auto isFree = [&](PlanePoint p) {
        return isInside(window, p, inset) && std::find(others.begin(), others.end(), p) == others.end();
    };
    const auto within = [&](Metres at, Metres low, Metres high) {
        const Metres first = interval * std::ceil((low + inset) / interval);
        const Metres last = interval * std::floor((high - inset) / interval);
        return std::max(first, std::min(at, last));
    };
    const PlanePoint near{within(place.easting, window.southWest.easting, window.northEast.easting),
                          within(place.northing, window.southWest.northing, window.northEast.northing)};
    // So many others take so many crossings at most: a free one lies within as many lines.
    const auto reach = static_cast<int>(others.size());
    std::optional<PlanePoint> best;
    double least = 0;
    for (int row = -reach; row <= reach; ++row) {
        for (int column = -reach; column <= reach; ++column) {
            const PlanePoint crossing{near.easting + interval * column, near.northing + interval * row};
            const double far =
                std::hypot((crossing.easting - place.easting).value(), (crossing.northing - place.northing).value());
            if (isFree(crossing) && (!best || far < least)) {
                best = crossing;
                least = far;
            }
        }
    }
    return best;
}

Error crossingTaken(PlanePoint crossing) {
    return {kCrossingTaken, {{"easting", crossing.easting.value()}, {"northing", crossing.northing.value()}}};
}

}  // namespace

PlanePoint crossingNear(PlanePoint place, const TickGrid& grid) {
    return nearestCrossing(place, grid.interval);
}

Result<plan::Registration> withTickMoved(const plan::Registration& registration, std::size_t tick, PlanePoint to,
                                         const TickGrid& grid) {
    std::vector<PlanePoint> ticks = registration.ticks;
    const PlanePoint crossing = crossingNear(to, grid);
    const auto there = std::find(ticks.begin(), ticks.end(), crossing);
    if (there != ticks.end() && static_cast<std::size_t>(there - ticks.begin()) != tick) {
        return tl::unexpected(crossingTaken(crossing));
    }
    ticks[tick] = crossing;
    return withTicksAt(registration, ticks, grid);
}

Result<plan::Registration> withTickAdded(const plan::Registration& registration, PlanePoint place,
                                         const TickGrid& grid) {
    std::vector<PlanePoint> ticks = registration.ticks;
    const PlanePoint crossing = crossingNear(place, grid);
    if (std::find(ticks.begin(), ticks.end(), crossing) != ticks.end()) {
        return tl::unexpected(crossingTaken(crossing));
    }
    ticks.push_back(crossing);
    return withTicksAt(registration, ticks, grid);
}

Result<plan::Registration> withTickRemoved(const plan::Registration& registration, std::size_t tick,
                                           const TickGrid& grid) {
    std::vector<PlanePoint> ticks = registration.ticks;
    ticks.erase(ticks.begin() + static_cast<std::ptrdiff_t>(tick));
    return withTicksAt(registration, ticks, grid);
}

Result<plan::Registration> withWindowPulled(const plan::Registration& registration, const WindowPull& pull,
                                            const TickGrid& grid) {
    const Metres interval = grid.interval;
    const auto pulled = [interval](Metres edge, Metres by) {
        return by == Metres(0) ? edge : onLine(edge + by, interval / 10);
    };
    plan::Registration next = registration;
    next.southWest = {pulled(next.southWest.easting, pull.west), pulled(next.southWest.northing, pull.south)};
    next.northEast = {pulled(next.northEast.easting, pull.east), pulled(next.northEast.northing, pull.north)};
    if (next.northEast.easting - next.southWest.easting < interval ||
        next.northEast.northing - next.southWest.northing < interval) {
        return fail(kWindowTooSmall, {{"least", interval.value()}});
    }
    const Metres inset = onGround(kTickInset, grid.scale);
    std::vector<PlanePoint> ticks;
    std::vector<PlanePoint> driven;
    for (const PlanePoint tick : registration.ticks) {
        (isInside(next, tick, inset) ? ticks : driven).push_back(tick);
    }
    for (const PlanePoint tick : driven) {
        if (const auto held = heldInside(next, tick, ticks, interval, inset)) {
            ticks.push_back(*held);
        }
    }
    return withTicksAt(next, ticks, grid);
}

Result<plan::Registration> withTicksAt(const plan::Registration& registration, const std::vector<PlanePoint>& crossings,
                                       const TickGrid& grid) {
    const Metres interval = grid.interval;
    plan::Registration next = registration;
    next.ticks.clear();
    for (const PlanePoint point : crossings) {
        const auto crossing = crossingAt(point, interval);
        if (!crossing) {
            return fail(kNotACrossing, {{"easting", std::round(point.easting.value())},
                                        {"northing", std::round(point.northing.value())},
                                        {"interval", interval.value()}});
        }
        if (!isInside(registration, *crossing, onGround(kTickInset, grid.scale))) {
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

Result<plan::Registration> withTicksOf(const plan::Sheet& film, const plan::Plan& plan) {
    const plan::Sheet* ground = plan.sheets().empty() ? nullptr : plan.sheets().front().get();
    const auto link = geodesy::PlaneLink::between(film.crs, ground == nullptr ? plan.planeCrs() : ground->crs);
    if (!link) {
        return tl::unexpected(link.error());
    }
    auto window = plan.registration() ? Result<plan::Registration>(*plan.registration()) : proposeRegistration(plan);
    if (!window) {
        return window;
    }
    const Scale scale = ground == nullptr ? Scale{} : ground->scale;
    const Metres inset = onGround(kTickInset, scale);
    const Metres step = gridInterval(scale) / 10;
    const auto below = [step](Metres held, Metres needed) {
        return needed < held ? step * std::floor(needed / step) : held;
    };
    const auto above = [step](Metres held, Metres needed) {
        return needed > held ? step * std::ceil(needed / step) : held;
    };
    std::vector<PlanePoint> ticks;
    for (const plan::GridMark& mark : film.marks) {
        const auto place = link->forward(mark.place);
        if (!place) {
            return tl::unexpected(place.error());
        }
        ticks.push_back(*place);
        PlanePoint& low = window->southWest;
        PlanePoint& high = window->northEast;
        low = {below(low.easting, place->easting - inset), below(low.northing, place->northing - inset)};
        high = {above(high.easting, place->easting + inset), above(high.northing, place->northing + inset)};
    }
    return withTicksAt(*window, ticks, printedTicks(scale));
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
