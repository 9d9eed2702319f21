#include "core/movement/route_figures.h"

#include <cmath>

#include "core/movement/faults.h"
#include "core/movement/gm_angle.h"
#include "core/movement/hand_profile.h"
#include "core/movement/leg_ends.h"
#include "core/movement/measured_pieces.h"
#include "core/movement/noted_way.h"
#include "core/movement/relief.h"
#include "core/movement/work_grid.h"

namespace crosstick::movement {
namespace {

/// What one computation holds on to.
struct Work {
    const plan::Plan& plan;
    const plan::Route& route;
    const WorkGrid& grid;
    const sheets::HeightSource* heights;
    const std::vector<MeasuredPiece>& pieces;  ///< between each two vertices
    HandProfile byHand;
    NotedWay way;
    GmAngle gm{};
};

bool isWalked(const plan::Route& route) {
    return route.use != plan::Use::Vehicle;
}

/// @param vertex  of the route that the piece begins at; none for a piece beyond it, where nobody read contours
Piece pieceFrom(const MeasuredPiece& measured, std::optional<std::size_t> vertex, std::optional<plan::Going> going,
                Work& work) {
    Piece piece;
    piece.from = measured.from;
    piece.to = measured.to;
    piece.gridAzimuth = measured.gridAzimuth;
    piece.magneticAzimuth = geodesy::magneticAzimuth(piece.gridAzimuth, work.gm.angle);
    piece.mapDistance = measured.mapDistance;
    piece.trueAzimuth = measured.line.azimuthAtStart;
    piece.backTrueAzimuth = geodesy::backAzimuth(measured.line.azimuthAtEnd);
    piece.groundDistance = measured.line.distance;
    std::optional<Relief> byHand;
    if (!measured.relief && vertex) {
        byHand = work.byHand.after(*vertex, measured.line.distance);
        piece.fromContours = byHand.has_value();
    }
    const std::optional<Relief>& relief = byHand ? byHand : measured.relief;
    if (relief) {
        piece.climb = relief->climb;
        piece.descent = relief->descent;
        piece.slopeDistance = relief->slope;
        piece.steepest = relief->steepest;
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
    sum.fromContours = sum.fromContours || part.fromContours;
    sum.mapDistance += part.mapDistance;
    sum.groundDistance += part.groundDistance;
    add(sum.climb, part.climb);
    add(sum.descent, part.descent);
    add(sum.slopeDistance, part.slopeDistance);
}

template <class Sum>
void startAtNothing(Sum& sum) {
    sum.climb = sum.descent = sum.slopeDistance = Metres(0);
    sum.steepest = Steepest{};
}

std::string labelOf(const plan::Plan& plan, const plan::ItemId& id) {
    const auto measure = plan.measure(id);
    return measure ? label(*measure) : std::string{};
}

Leg legBetween(const LegEnd& from, const LegEnd& to, Work& work) {
    Leg leg;
    leg.from = from.stop.measure;
    leg.to = to.stop.measure;
    leg.fromLabel = from.label;
    leg.toLabel = to.label;
    leg.toGrid = work.grid.gridText(work.pieces[to.stop.vertex - 1].to);
    leg.notes = to.stop.leg;
    if (!leg.notes.rally) {
        leg.notes.rally = from.rally;
    }
    leg.rallyLabel = leg.notes.rally ? labelOf(work.plan, *leg.notes.rally) : std::string{};
    startAtNothing(leg);
    leg.pieces.reserve(to.stop.vertex - from.stop.vertex);
    for (std::size_t at = from.stop.vertex; at < to.stop.vertex; ++at) {
        leg.pieces.push_back(pieceFrom(work.pieces[at], at, to.stop.leg.going, work));
        addFigures(leg, leg.pieces.back());
    }
    work.way.addHalt(to.stop.leg.halt);
    return leg;
}

/// Half way along the legs, by map distance.
geodesy::PlanePoint middleOf(const std::vector<MeasuredPiece>& pieces, std::size_t first, std::size_t last) {
    double length = 0;
    for (std::size_t at = first; at < last; ++at) {
        length += pieces[at].mapDistance.value();
    }
    double left = length / 2;
    for (std::size_t at = first; at < last; ++at) {
        const geodesy::PlanePoint a = pieces[at].from;
        const geodesy::PlanePoint b = pieces[at].to;
        const double piece = pieces[at].mapDistance.value();
        if (piece > 0 && left <= piece) {
            const double share = left / piece;
            return {a.easting + (b.easting - a.easting) * share, a.northing + (b.northing - a.northing) * share};
        }
        left -= piece;
    }
    return pieces[first].from;
}

void countUp(RouteFigures& figures) {
    int number = 0;
    for (Leg& leg : figures.legs) {
        leg.number = ++number;
        addFigures(figures, leg);
        leg.groundSoFar = figures.groundDistance;
    }
}

std::optional<Administrative> administrativeBefore(std::size_t first, const std::vector<MeasuredPiece>& pieces) {
    if (first == 0) {
        return std::nullopt;
    }
    Administrative before;
    for (std::size_t at = 0; at < first; ++at) {
        before.mapDistance += pieces[at].mapDistance;
        before.groundDistance += pieces[at].line.distance;
    }
    return before;
}

Result<std::optional<Onward>> onwardFrom(std::size_t last, Work& work) {
    const auto measure = work.route.onwardTo ? work.plan.measure(*work.route.onwardTo) : nullptr;
    if (!measure || measure->points.empty()) {
        return std::nullopt;
    }
    const auto piece =
        measuredPiece(work.route.vertices[last], measure->points.front(), work.route, work.grid, work.heights);
    if (!piece) {
        return tl::unexpected(piece.error());
    }
    return Onward{measure->id, label(*measure), pieceFrom(*piece, std::nullopt, std::nullopt, work)};
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
    KeptPieces none;
    return routeFigures(plan, route, grid, model, heights, none);
}

Result<RouteFigures> routeFigures(const plan::Plan& plan, const plan::Route& route, const WorkGrid& grid,
                                  const geodesy::MagneticModel* model, const sheets::HeightSource* heights,
                                  KeptPieces& kept) {
    if (route.vertices.size() < 2) {
        return fail(kRouteTooShort, {{"route", route.name}});
    }
    if (const auto measured = kept.measure(route, grid, heights); !measured) {
        return tl::unexpected(measured.error());
    }
    Work work{plan, route, grid, heights, kept.pieces(), HandProfile(route), NotedWay(plan), {}};
    const std::vector<LegEnd> ends = legEnds(plan, route);
    const std::size_t first = ends.front().stop.vertex;
    const std::size_t last = ends.back().stop.vertex;
    auto gm = gmAngleAt(plan, grid, middleOf(work.pieces, first, last), model, heights);
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
    if (isWalked(route)) {
        figures.pace = plan.heading().courses.empty() ? plan.heading().pace : std::nullopt;
        figures.rate = plan.heading().rate;
        figures.timing = plan.heading().timing;
    }
    figures.administrative = administrativeBefore(first, work.pieces);
    startAtNothing(figures);
    figures.legs.reserve(ends.size() - 1);
    for (std::size_t n = 0; n + 1 < ends.size(); ++n) {
        figures.legs.push_back(legBetween(ends[n], ends[n + 1], work));
        figures.legs.back().fromGrid = n == 0 ? grid.gridText(work.pieces[first].from) : figures.legs[n - 1].toGrid;
    }
    countUp(figures);
    auto onward = onwardFrom(last, work);
    if (!onward) {
        return tl::unexpected(onward.error());
    }
    figures.onward = std::move(*onward);
    const auto place = grid.plane().geographic(gm->middle);
    if (!place) {
        return tl::unexpected(place.error());
    }
    if (isWalked(route)) {
        work.way.giveTimesAndPaces(figures, *place);
    }
    return figures;
}

}  // namespace crosstick::movement
