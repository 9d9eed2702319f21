#include "core/plan/alternates.h"

#include <algorithm>

namespace crosstick::plan {
namespace {

bool passes(const Route& route, const ItemId& measure) {
    return std::any_of(route.stops.begin(), route.stops.end(),
                       [&](const Stop& stop) { return stop.measure == measure; });
}

}  // namespace

std::optional<Division> divisionOf(const Plan& plan, const Route& route) {
    if (route.use != Use::Alternate) {
        return std::nullopt;
    }
    for (const RoutePtr& primary : plan.routes()) {
        if (primary->use != Use::Primary) {
            continue;
        }
        const auto parted = std::find_if(route.stops.begin(), route.stops.end(),
                                         [&](const Stop& stop) { return !passes(*primary, stop.measure); });
        const bool leaves = parted != route.stops.end() ||
                            (!route.stops.empty() && route.stops.back().vertex + 1 < route.vertices.size());
        if (parted != route.stops.begin() && leaves) {
            return Division{primary, std::prev(parted)->measure};
        }
    }
    return std::nullopt;
}

AlternateEnd endOf(const Plan& plan, const Route& alternate) {
    if (alternate.stops.empty() || alternate.stops.back().vertex + 1 != alternate.vertices.size()) {
        return AlternateEnd::Open;
    }
    const MeasurePtr last = plan.measure(alternate.stops.back().measure);
    if (!last) {
        return AlternateEnd::Open;
    }
    const bool shared = std::any_of(plan.routes().begin(), plan.routes().end(), [&](const RoutePtr& route) {
        return route->use == Use::Primary && passes(*route, last->id);
    });
    if (last->kind == "release-point") {
        return shared ? AlternateEnd::SharesReleasePoint : AlternateEnd::OwnReleasePoint;
    }
    if (shared) {
        return AlternateEnd::Rejoins;
    }
    return last->kind == "checkpoint" ? AlternateEnd::AtCheckpoint : AlternateEnd::Open;
}

bool endsWell(AlternateEnd end) {
    return end != AlternateEnd::OwnReleasePoint && end != AlternateEnd::Open;
}

bool isDecided(const Route& route) {
    return route.decision && !route.decision->criterion.empty() && !route.decision->decider.empty();
}

}  // namespace crosstick::plan
