#include "core/movement/route_figures.h"

#include <cmath>

#include "core/geodesy/geodesic.h"
#include "core/movement/faults.h"
#include "core/movement/gm_angle.h"
#include "core/movement/leg_ends.h"
#include "core/movement/noted_way.h"
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
    NotedWay way;
    GmAngle gm{};
};

Piece pieceBetween(const Spot& from, const Spot& to, std::optional<plan::Going> going, Work& work) {
    Piece piece;
    piece.from = from.onGrid;
    piece.to = to.onGrid;
    piece.gridAzimuth = geodesy::planeAzimuth(from.onGrid, to.onGrid);
    piece.magneticAzimuth = geodesy::magneticAzimuth(piece.gridAzimuth, work.gm.angle);
    piece.mapDistance = geodesy::planeDistance(from.onGrid, to.onGrid);
    const geodesy::Geodesic line = geodesy::geodesic(from.place, to.place);
    piece.trueAzimuth = line.azimuthAtStart;
    piece.backTrueAzimuth = geodesy::backAzimuth(line.azimuthAtEnd);
    piece.groundDistance = line.distance;
    const auto relief = work.heights != nullptr ? reliefBetween(from.inPlan, to.inPlan, line.distance, *work.heights)
                                                : std::optional<Relief>{};
    if (relief) {
        piece.climb = relief->climb;
        piece.descent = relief->descent;
        piece.slopeDistance = relief->slope;
        piece.steepest = relief->steepest;
    }
    if (const auto& pace = work.plan.heading().pace) {
        piece.paces = piece.groundDistance.value() / 100 * pace->doublePacesPer100;
    }
    work.way.addPiece(piece.groundDistance, going, relief);
    return piece;
}

/// An unknown part makes the sum unknown.
template <class T>
void add(std::optional<T>& sum, const std::optional<T>& part) {
    sum = sum && part ? std::optional<T>(*sum + *part) : std::nullopt;
}

template <class Sum, class Part>
void addFigures(Sum& sum, const Part& part) {
    if (sum.steepest && part.steepest && std::abs(part.steepest->slope) > std::abs(sum.steepest->slope)) {
        sum.steepest = Steepest{part.steepest->slope, sum.groundDistance + part.steepest->along};
    } else if (!part.steepest) {
        sum.steepest.reset();
    }
    sum.mapDistance += part.mapDistance;
    sum.groundDistance += part.groundDistance;
    add(sum.climb, part.climb);
    add(sum.descent, part.descent);
    add(sum.slopeDistance, part.slopeDistance);
    add(sum.paces, part.paces);
}

template <class Sum>
void startAtNothing(Sum& sum) {
    sum.climb = sum.descent = sum.slopeDistance = Metres(0);
    sum.steepest = Steepest{};
    sum.paces = 0;
}

std::string labelOf(const plan::Plan& plan, const plan::ItemId& id) {
    const auto measure = plan.measure(id);
    return measure ? label(*measure) : std::string{};
}

Leg legBetween(const LegEnd& from, const LegEnd& to, const std::vector<Spot>& spots, Work& work) {
    Leg leg;
    leg.from = from.stop.measure;
    leg.to = to.stop.measure;
    leg.fromLabel = from.label;
    leg.toLabel = to.label;
    leg.toGrid = work.grid.gridText(spots[to.stop.vertex].onGrid);
    leg.notes = to.stop.leg;
    if (!leg.notes.rally) {
        leg.notes.rally = from.rally;
    }
    leg.rallyLabel = leg.notes.rally ? labelOf(work.plan, *leg.notes.rally) : std::string{};
    startAtNothing(leg);
    for (std::size_t at = from.stop.vertex; at < to.stop.vertex; ++at) {
        leg.pieces.push_back(pieceBetween(spots[at], spots[at + 1], to.stop.leg.going, work));
        addFigures(leg, leg.pieces.back());
    }
    work.way.addHalt(to.stop.leg.halt);
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
    }
}

std::optional<Administrative> administrativeBefore(std::size_t first, const std::vector<Spot>& spots) {
    if (first == 0) {
        return std::nullopt;
    }
    Administrative before;
    for (std::size_t at = 0; at < first; ++at) {
        before.mapDistance += geodesy::planeDistance(spots[at].onGrid, spots[at + 1].onGrid);
        before.groundDistance += geodesy::geodesic(spots[at].place, spots[at + 1].place).distance;
    }
    return before;
}

Result<std::optional<Onward>> onwardFrom(const Spot& last, Work& work) {
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
    return Onward{measure->id, label(*measure), pieceBetween(last, *to, std::nullopt, work)};
}

/// Without a profile a sum is unknown, not nothing.
void forgetPaces(RouteFigures& figures) {
    if (!figures.pace) {
        figures.paces.reset();
        for (Leg& leg : figures.legs) {
            leg.paces.reset();
        }
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
    Work work{plan, route, grid, heights, NotedWay(plan), {}};
    std::vector<Spot> spots;
    spots.reserve(route.vertices.size());
    for (const geodesy::PlanePoint vertex : route.vertices) {
        const auto spot = spotOf(vertex, grid, route);
        if (!spot) {
            return tl::unexpected(spot.error());
        }
        spots.push_back(*spot);
    }
    const std::vector<LegEnd> ends = legEnds(plan, route);
    const std::size_t first = ends.front().stop.vertex;
    const std::size_t last = ends.back().stop.vertex;
    auto gm = gmAngleAt(plan, grid, middleOf(spots, first, last), model, heights);
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
    figures.timing = plan.heading().timing;
    figures.administrative = administrativeBefore(first, spots);
    startAtNothing(figures);
    figures.legs.reserve(ends.size() - 1);
    for (std::size_t n = 0; n + 1 < ends.size(); ++n) {
        figures.legs.push_back(legBetween(ends[n], ends[n + 1], spots, work));
        figures.legs.back().fromGrid = n == 0 ? grid.gridText(spots[first].onGrid) : figures.legs[n - 1].toGrid;
    }
    countUp(figures);
    forgetPaces(figures);
    auto onward = onwardFrom(spots[last], work);
    if (!onward) {
        return tl::unexpected(onward.error());
    }
    figures.onward = std::move(*onward);
    const auto place = grid.plane().geographic(gm->middle);
    if (!place) {
        return tl::unexpected(place.error());
    }
    work.way.giveTimes(figures, *place);
    return figures;
}

}  // namespace crosstick::movement
