#include "core/movement/leg_ends.h"

#include <algorithm>

#include "core/movement/route_figures.h"

namespace crosstick::movement {
namespace {

/// Both ends of a route; the one stop that it has counts where it stands on one of them.
std::vector<LegEnd> bothEnds(const plan::Route& route, const std::vector<LegEnd>& stops) {
    const auto named = [&](std::size_t vertex) {
        return !stops.empty() && stops.front().stop.vertex == vertex ? stops.front()
                                                                     : LegEnd{plan::Stop{vertex, {}}, {}, {}};
    };
    return {named(0), named(route.vertices.size() - 1)};
}

}  // namespace

bool isRally(const plan::Measure& measure) {
    return measure.kind == "rally-point" || measure.kind == "objective-rally-point";
}

std::vector<LegEnd> legEnds(const plan::Plan& plan, const plan::Route& route) {
    std::vector<LegEnd> ends;
    ends.reserve(route.stops.size());
    std::optional<std::size_t> start;
    std::optional<plan::ItemId> rally;
    for (const plan::Stop& stop : route.stops) {
        if (stop.vertex >= route.vertices.size() || (!ends.empty() && stop.vertex <= ends.back().stop.vertex)) {
            continue;
        }
        const plan::MeasurePtr measure = plan.measure(stop.measure);
        if (measure && isRally(*measure)) {
            rally = stop.measure;
        }
        if (measure && measure->kind == "start-point" && !start) {
            start = ends.size();
        }
        ends.push_back({stop, measure ? label(*measure) : std::string{}, rally});
    }
    if (ends.size() < 2) {
        return bothEnds(route, ends);
    }
    if (start && *start + 2 <= ends.size()) {
        ends.erase(ends.begin(), ends.begin() + static_cast<std::ptrdiff_t>(*start));
    }
    return ends;
}

}  // namespace crosstick::movement
