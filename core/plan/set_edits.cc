#include "core/plan/set_edits.h"

#include <algorithm>
#include <set>

#include "core/plan/edits.h"

namespace crosstick::plan {
namespace {

/// What moves: routes, and measures with those that sit on the routes.
struct Movers {
    std::set<ItemId> routes, measures;
};

Movers moversOf(const Plan& plan, const std::vector<ItemId>& items) {
    Movers movers;
    for (const ItemId& item : items) {
        if (const RoutePtr route = plan.route(item)) {
            movers.routes.insert(item);
            for (const Stop& stop : route->stops) {
                movers.measures.insert(stop.measure);
            }
        } else if (const MeasurePtr measure = plan.measure(item); measure && measure->anchor == Anchor::Ground) {
            movers.measures.insert(item);
        }
    }
    return movers;
}

geodesy::PlanePoint by(geodesy::PlanePoint point, Metres east, Metres north) {
    return {point.easting + east, point.northing + north};
}

}  // namespace

Plan allMovedBy(const Plan& plan, const std::vector<ItemId>& items, Metres east, Metres north) {
    const Movers movers = moversOf(plan, items);
    PlanBuilder builder(plan);
    for (const ItemId& item : movers.measures) {
        if (const MeasurePtr held = plan.measure(item)) {
            Measure measure = *held;
            for (geodesy::PlanePoint& point : measure.points) {
                point = by(point, east, north);
            }
            builder.put(std::move(measure));
        }
    }
    for (const RoutePtr& held : plan.routes()) {
        std::set<std::size_t> vertices;
        for (std::size_t n = 0; movers.routes.contains(held->id) && n < held->vertices.size(); ++n) {
            vertices.insert(n);
        }
        for (const Stop& stop : held->stops) {
            if (movers.measures.contains(stop.measure) && plan.measure(stop.measure) &&
                stop.vertex < held->vertices.size()) {
                vertices.insert(stop.vertex);
            }
        }
        if (!vertices.empty()) {
            Route route = *held;
            for (const std::size_t n : vertices) {
                route.vertices[n] = by(route.vertices[n], east, north);
            }
            builder.put(std::move(route));
        }
    }
    return std::move(builder).build();
}

Plan withoutAll(const Plan& plan, const std::vector<ItemId>& items) {
    Plan next = plan;
    for (const ItemId& item : items) {
        next = without(next, item);
    }
    return next;
}

Plan allMovedToFilm(const Plan& plan, const std::vector<ItemId>& items, const FilmId& from, const FilmId& to) {
    Plan next = plan;
    for (const ItemId& item : items) {
        next = movedToFilm(next, item, from, to);
    }
    return next;
}

Plan shownAbove(const Plan& plan, const ItemId& below, const ItemId& item) {
    PlanBuilder builder(plan);
    for (const FilmPtr& held : plan.films()) {
        const auto at = std::find_if(held->shows.begin(), held->shows.end(),
                                     [&](const Showing& showing) { return showing.item == below; });
        if (at == held->shows.end() || isShownOn(*held, item)) {
            continue;
        }
        Film film = *held;
        const std::string next = std::next(at) == held->shows.end() ? std::string{} : std::next(at)->order;
        film.shows.push_back({item, orderBetween(at->order, next), {}, {}, {}, {}, at->figures});
        builder.put(std::move(film));
    }
    return std::move(builder).build();
}

}  // namespace crosstick::plan
