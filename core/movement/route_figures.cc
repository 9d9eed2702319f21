#include "core/movement/route_figures.h"

#include <cmath>

#include "core/geodesy/geodesic.h"
#include "core/movement/faults.h"
#include "core/movement/gm_angle.h"
#include "core/movement/relief.h"
#include "core/movement/work_grid.h"

namespace crosstick::movement {
namespace {

/// A vertex in every form that the figures need.
struct Spot {
    geodesy::PlanePoint inPlan, onGrid;
    geodesy::GeoPoint place;
};

Result<Spot> spotOf(geodesy::PlanePoint inPlan, const WorkGrid& grid, const plan::Route& route) {
    const auto lost = [&] { return fail(kRouteNotOnGrid, {{"route", route.name}}); };
    const auto onGrid = grid.onGrid(inPlan);
    if (!onGrid) {
        return lost();
    }
    const auto place = grid.plane().geographic(*onGrid);
    if (!place) {
        return lost();
    }
    return Spot{inPlan, *onGrid, *place};
}

/// What one computation holds on to.
struct Work {
    const plan::Plan& plan;
    const plan::Route& route;
    const WorkGrid& grid;
    const sheets::HeightSource* heights;
    GmAngle gm{};
};

Piece pieceBetween(const Spot& from, const Spot& to, const Work& work) {
    Piece piece;
    piece.from = from.onGrid;
    piece.to = to.onGrid;
    piece.gridAzimuth = geodesy::planeAzimuth(from.onGrid, to.onGrid);
    piece.magneticAzimuth = geodesy::magneticAzimuth(piece.gridAzimuth, work.gm.angle);
    piece.mapDistance = geodesy::planeDistance(from.onGrid, to.onGrid);
    const geodesy::Geodesic line = geodesy::geodesic(from.place, to.place);
    piece.trueAzimuth = line.azimuthAtStart;
    piece.groundDistance = line.distance;
    if (work.heights != nullptr) {
        if (const auto relief = reliefBetween(from.inPlan, to.inPlan, line.distance, *work.heights)) {
            piece.climb = relief->climb;
            piece.descent = relief->descent;
            piece.slopeDistance = relief->slope;
        }
    }
    const plan::Heading& heading = work.plan.heading();
    if (heading.pace) {
        piece.paces = piece.groundDistance.value() / 100 * heading.pace->doublePacesPer100;
    }
    if (heading.rate && heading.rate->rate.value() > 0) {
        piece.time = Minutes(piece.groundDistance.value() / (heading.rate->rate.value() * 1000 / 60));
    }
    return piece;
}

/// An unknown part makes the sum unknown.
template <class T>
void add(std::optional<T>& sum, const std::optional<T>& part) {
    sum = sum && part ? std::optional<T>(*sum + *part) : std::nullopt;
}

template <class Sum, class Part>
void addFigures(Sum& sum, const Part& part) {
    sum.mapDistance += part.mapDistance;
    sum.groundDistance += part.groundDistance;
    add(sum.climb, part.climb);
    add(sum.descent, part.descent);
    add(sum.slopeDistance, part.slopeDistance);
    add(sum.paces, part.paces);
    add(sum.time, part.time);
}

template <class Sum>
void startAtNothing(Sum& sum) {
    sum.climb = sum.descent = sum.slopeDistance = Metres(0);
    sum.paces = 0;
    sum.time = Minutes(0);
}

/// Where legs begin and end: the stops, or both ends of a route that has fewer than two.
std::vector<plan::Stop> legEnds(const plan::Route& route) {
    std::vector<plan::Stop> ends;
    for (const plan::Stop& stop : route.stops) {
        if (stop.vertex < route.vertices.size() && (ends.empty() || stop.vertex > ends.back().vertex)) {
            ends.push_back(stop);
        }
    }
    if (ends.size() < 2) {
        const auto named = [&](std::size_t vertex) {
            return !ends.empty() && ends.front().vertex == vertex ? ends.front() : plan::Stop{vertex, {}};
        };
        ends = {named(0), named(route.vertices.size() - 1)};
    }
    return ends;
}

std::string labelOf(const plan::Plan& plan, const plan::ItemId& id) {
    const auto measure = plan.measure(id);
    return measure ? label(*measure) : std::string{};
}

Leg legBetween(const plan::Stop& from, const plan::Stop& to, const std::vector<Spot>& spots, const Work& work) {
    Leg leg;
    leg.from = from.measure;
    leg.to = to.measure;
    leg.fromLabel = labelOf(work.plan, from.measure);
    leg.toLabel = labelOf(work.plan, to.measure);
    leg.fromGrid = work.grid.gridText(spots[from.vertex].onGrid);
    leg.toGrid = work.grid.gridText(spots[to.vertex].onGrid);
    startAtNothing(leg);
    for (std::size_t at = from.vertex; at < to.vertex; ++at) {
        leg.pieces.push_back(pieceBetween(spots[at], spots[at + 1], work));
        addFigures(leg, leg.pieces.back());
    }
    return leg;
}

/// Half way along the legs, by map distance.
geodesy::PlanePoint middleOf(const std::vector<Spot>& spots, std::size_t first, std::size_t last) {
    double length = 0;
    for (std::size_t at = first; at < last; ++at) {
        length += geodesy::planeDistance(spots[at].onGrid, spots[at + 1].onGrid).value();
    }
    double left = length / 2;
    for (std::size_t at = first; at < last; ++at) {
        const geodesy::PlanePoint a = spots[at].onGrid;
        const geodesy::PlanePoint b = spots[at + 1].onGrid;
        const double piece = geodesy::planeDistance(a, b).value();
        if (piece > 0 && left <= piece) {
            const double share = left / piece;
            return {a.easting + (b.easting - a.easting) * share, a.northing + (b.northing - a.northing) * share};
        }
        left -= piece;
    }
    return spots[first].onGrid;
}

void countUp(RouteFigures& figures) {
    int number = 0;
    for (Leg& leg : figures.legs) {
        leg.number = ++number;
        addFigures(figures, leg);
        leg.groundSoFar = figures.groundDistance;
        leg.timeSoFar = figures.time;
        leg.arrival = arrivalAfter(figures.start, figures.time);
    }
    figures.arrival = arrivalAfter(figures.start, figures.time);
}

Result<std::optional<Onward>> onwardFrom(const Spot& last, const Work& work) {
    if (!work.route.onwardTo) {
        return std::nullopt;
    }
    const auto measure = work.plan.measure(*work.route.onwardTo);
    if (!measure || measure->points.empty()) {
        return std::nullopt;
    }
    const auto to = spotOf(measure->points.front(), work.grid, work.route);
    if (!to) {
        return tl::unexpected(to.error());
    }
    return Onward{measure->id, label(*measure), pieceBetween(last, *to, work)};
}

/// Without a profile, a rate or heights a sum is unknown, not nothing.
void forgetUnknown(RouteFigures& figures) {
    const auto forget = [&](auto& sum) {
        sum.paces = figures.pace ? sum.paces : std::nullopt;
        sum.time = figures.rate ? sum.time : std::nullopt;
    };
    forget(figures);
    for (Leg& leg : figures.legs) {
        forget(leg);
    }
}

}  // namespace

std::optional<Instant> arrivalAfter(std::optional<Instant> start, std::optional<Minutes> time) {
    constexpr double kCenturyInMinutes = 60.0 * 24 * 366 * 100;
    if (!start || !time || !(abs(*time).value() < kCenturyInMinutes)) {
        return std::nullopt;
    }
    return *start + std::chrono::seconds(static_cast<std::int64_t>(std::floor(time->value() * 60)));
}

Result<RouteFigures> routeFigures(const plan::Plan& plan, const plan::Route& route, const geodesy::MagneticModel* model,
                                  const sheets::HeightSource* heights) {
    if (route.vertices.size() < 2) {
        return fail(kRouteTooShort, {{"route", route.name}});
    }
    const auto grid = WorkGrid::of(plan);
    if (!grid) {
        return tl::unexpected(grid.error());
    }
    return routeFigures(plan, route, *grid, model, heights);
}

Result<RouteFigures> routeFigures(const plan::Plan& plan, const plan::Route& route, const WorkGrid& grid,
                                  const geodesy::MagneticModel* model, const sheets::HeightSource* heights) {
    if (route.vertices.size() < 2) {
        return fail(kRouteTooShort, {{"route", route.name}});
    }
    Work work{plan, route, grid, heights, {}};
    std::vector<Spot> spots;
    spots.reserve(route.vertices.size());
    for (const geodesy::PlanePoint vertex : route.vertices) {
        const auto spot = spotOf(vertex, grid, route);
        if (!spot) {
            return tl::unexpected(spot.error());
        }
        spots.push_back(*spot);
    }
    const std::vector<plan::Stop> ends = legEnds(route);
    auto gm = gmAngleAt(plan, grid, middleOf(spots, ends.front().vertex, ends.back().vertex), model, heights);
    if (!gm) {
        return tl::unexpected(gm.error());
    }
    work.gm = *gm;

    RouteFigures figures;
    figures.route = route.id;
    figures.name = route.name;
    figures.use = route.use;
    figures.gridCrs = grid.plane().crs();
    figures.gm = *gm;
    figures.start = route.start;
    figures.pace = plan.heading().pace;
    figures.rate = plan.heading().rate;
    startAtNothing(figures);
    for (std::size_t n = 0; n + 1 < ends.size(); ++n) {
        figures.legs.push_back(legBetween(ends[n], ends[n + 1], spots, work));
    }
    countUp(figures);
    forgetUnknown(figures);
    auto onward = onwardFrom(spots[ends.back().vertex], work);
    if (!onward) {
        return tl::unexpected(onward.error());
    }
    figures.onward = std::move(*onward);
    return figures;
}

}  // namespace crosstick::movement
