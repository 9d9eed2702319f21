#include "core/movement/lines_met.h"

#include <algorithm>
#include <set>

#include "core/measures/catalogue.h"

namespace crosstick::movement {
namespace {

std::set<plan::ItemId> itemsShownWith(const plan::Plan& plan, const plan::ItemId& route) {
    std::set<plan::ItemId> with;
    std::set<plan::ItemId> all;
    for (const plan::FilmPtr& film : plan.films()) {
        const bool showsRoute = std::any_of(film->shows.begin(), film->shows.end(),
                                            [&](const plan::Showing& showing) { return showing.item == route; });
        for (const plan::Showing& showing : film->shows) {
            all.insert(showing.item);
            if (showsRoute) {
                with.insert(showing.item);
            }
        }
    }
    return with.empty() ? all : with;
}

/// None where one does not reach the grid.
std::vector<geodesy::PlanePoint> onGrid(const plan::Measure& line, const WorkGrid& grid) {
    std::vector<geodesy::PlanePoint> points;
    for (const geodesy::PlanePoint inPlan : line.points) {
        const auto point = grid.onGrid(inPlan);
        if (!point) {
            return {};
        }
        points.push_back(*point);
    }
    return points;
}

}  // namespace

std::vector<GroundLine> linesBeside(const plan::Plan& plan, const plan::ItemId& route, const WorkGrid& grid) {
    std::vector<GroundLine> lines;
    for (const plan::ItemId& item : itemsShownWith(plan, route)) {
        const auto line = plan.measure(item);
        if (!line || line->anchor != plan::Anchor::Ground) {
            continue;
        }
        const measures::Entry* entry = measures::find(line->kind);
        if (entry != nullptr && measures::isCrossedOnTheMarch(*entry)) {
            lines.push_back({line, onGrid(*line, grid)});
        }
    }
    return lines;
}

SeenPiece seenFrom(const Piece& piece, geodesy::PlanePoint a, geodesy::PlanePoint b) {
    const double length = piece.mapDistance.value();
    const double ux = (piece.to.easting - piece.from.easting).value() / length;
    const double uy = (piece.to.northing - piece.from.northing).value() / length;
    const auto along = [&](geodesy::PlanePoint p) {
        return (p.easting - piece.from.easting).value() * ux + (p.northing - piece.from.northing).value() * uy;
    };
    const auto across = [&](geodesy::PlanePoint p) {
        return (p.northing - piece.from.northing).value() * ux - (p.easting - piece.from.easting).value() * uy;
    };
    return {along(a), across(a), along(b), across(b)};
}

}  // namespace crosstick::movement
