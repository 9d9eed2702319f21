#include "core/plan/route_edits.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "core/geodesy/plane_line.h"
#include "core/plan/edits.h"
#include "core/plan/set_edits.h"

namespace crosstick::plan {
namespace {

bool isSamePlace(geodesy::PlanePoint a, geodesy::PlanePoint b) {
    constexpr double kSame = 1e-3;  // metres
    return std::hypot((a.easting - b.easting).value(), (a.northing - b.northing).value()) <= kSame;
}

/// What holds for a leg whichever way it is walked, and the halt of the place where it ends.
LegNotes walkedBack(const LegNotes& leg, std::optional<Minutes> halt) {
    LegNotes back;
    back.going = leg.going;
    back.remark = leg.remark;
    back.halt = halt;
    return back;
}

/// The film with a change made to the figures that a hand placed of a route; nothing where it placed none.
template <class Change>
std::optional<Film> withFigures(const Film& film, const ItemId& route, Change&& change) {
    Film next = film;
    for (Showing& showing : next.shows) {
        if (showing.item == route) {
            change(showing.figures);
        }
    }
    return next == film ? std::nullopt : std::optional(std::move(next));
}

void putEach(PlanBuilder& builder, std::optional<Film> film) {
    if (film) {
        builder.put(std::move(*film));
    }
}

/// A leg walked back is the same on the paper: its figures stay where a hand put them.
void turnBack(std::vector<FiguresAt>& figures) {
    for (FiguresAt& one : figures) {
        std::swap(one.leg.from, one.leg.to);
        one.leg.piece = one.leg.bends - std::min(one.leg.piece, one.leg.bends);
    }
}

}  // namespace

Plan reversed(const Plan& plan, const ItemId& item) {
    const RoutePtr held = plan.route(item);
    if (!held || held->vertices.empty()) {
        return plan;
    }
    Route route = *held;
    std::reverse(route.vertices.begin(), route.vertices.end());
    std::reverse(route.stops.begin(), route.stops.end());
    const std::size_t last = route.vertices.size() - 1;
    for (std::size_t n = 0; n < route.stops.size(); ++n) {
        Stop& stop = route.stops[n];
        stop.vertex = last - std::min(stop.vertex, last);
        // the leg that ends here now is the one that ended at the stop before, which was the next
        stop.leg = walkedBack(n == 0 ? LegNotes{} : held->stops[held->stops.size() - n].leg, stop.leg.halt);
    }
    route.onwardTo.reset();
    route.ifNotFound.clear();
    PlanBuilder builder(plan);
    for (const FilmPtr& film : plan.films()) {
        putEach(builder, withFigures(*film, item, turnBack));
    }
    builder.put(std::move(route));
    return std::move(builder).build();
}

namespace {

/// Each contour stays with the part that it was read on.
void shareContours(Route& front, Route& back) {
    const auto isBehind = [&](const ContourSpot& spot) {
        return geodesy::nearestOn(back.vertices, geodesy::Ends::Open, spot.at)->away <
               geodesy::nearestOn(front.vertices, geodesy::Ends::Open, spot.at)->away;
    };
    std::erase_if(front.contours, isBehind);
    std::erase_if(back.contours, std::not_fn(isBehind));
}

}  // namespace

Plan splitAt(const Plan& plan, const ItemId& item, std::size_t vertex, const ItemId& second, std::string name) {
    const RoutePtr held = plan.route(item);
    if (!held || vertex == 0 || vertex + 1 >= held->vertices.size()) {
        return plan;
    }
    Route front = *held;
    Route back = *held;
    const auto at = static_cast<std::ptrdiff_t>(vertex);
    front.vertices.erase(front.vertices.begin() + at + 1, front.vertices.end());
    back.vertices.erase(back.vertices.begin(), back.vertices.begin() + at);
    std::erase_if(front.stops, [&](const Stop& stop) { return stop.vertex > vertex; });
    std::erase_if(back.stops, [&](const Stop& stop) { return stop.vertex < vertex; });
    for (Stop& stop : back.stops) {
        stop.leg = stop.vertex == vertex ? LegNotes{} : stop.leg;
        stop.vertex -= vertex;
    }
    shareContours(front, back);
    front.onwardTo.reset();
    back.id = second;
    back.name = std::move(name);
    back.start.reset();
    front.notLaterThan.reset();  // the whole had to have closed at the end, which the other part has now
    back.decision.reset();
    PlanBuilder builder(plan);
    builder.put(std::move(front)).put(std::move(back));
    return shownAbove(std::move(builder).build(), item, second);
}

Plan joined(const Plan& plan, const ItemId& first, const ItemId& second) {
    const RoutePtr front = plan.route(first);
    const RoutePtr back = plan.route(second);
    if (!front || !back || first == second || front->vertices.empty() || back->vertices.empty()) {
        return plan;
    }
    Route route = *front;
    const std::size_t meet = isSamePlace(front->vertices.back(), back->vertices.front()) ? 1 : 0;
    const std::size_t shift = route.vertices.size() - meet;
    route.vertices.insert(route.vertices.end(), back->vertices.begin() + static_cast<std::ptrdiff_t>(meet),
                          back->vertices.end());
    for (Stop stop : back->stops) {
        stop.vertex += shift;
        const bool isTaken = !route.stops.empty() && route.stops.back().vertex >= stop.vertex;
        if (!isTaken) {
            route.stops.push_back(std::move(stop));
        }
    }
    route.contours.insert(route.contours.end(), back->contours.begin(), back->contours.end());
    route.onwardTo = back->onwardTo;
    route.notLaterThan = back->notLaterThan;
    const Plan next = without(plan, second);
    PlanBuilder builder(next);
    for (const FilmPtr& film : plan.films()) {
        const auto taken = std::find_if(film->shows.begin(), film->shows.end(),
                                        [&](const Showing& showing) { return showing.item == second; });
        if (taken != film->shows.end()) {
            putEach(builder, withFigures(*next.film(film->id), first, [&](std::vector<FiguresAt>& figures) {
                        figures.insert(figures.end(), taken->figures.begin(), taken->figures.end());
                    }));
        }
    }
    builder.put(std::move(route));
    return std::move(builder).build();
}

Plan withStop(const Plan& plan, const ItemId& item, std::size_t vertex, const ItemId& measure) {
    const RoutePtr held = plan.route(item);
    if (!held || !plan.measure(measure) || vertex >= held->vertices.size()) {
        return plan;
    }
    const auto at =
        std::find_if(held->stops.begin(), held->stops.end(), [&](const Stop& stop) { return stop.vertex >= vertex; });
    if (at != held->stops.end() && at->vertex == vertex) {
        return plan;
    }
    Route route = *held;
    Stop stop;
    stop.vertex = vertex;
    stop.measure = measure;
    route.stops.insert(route.stops.begin() + (at - held->stops.begin()), std::move(stop));
    const geodesy::PlanePoint place = route.vertices[vertex];
    return withPoint(std::move(PlanBuilder(plan).put(std::move(route))).build(), measure, 0, place);
}

Plan withContour(const Plan& plan, const ItemId& route, ContourSpot spot) {
    const RoutePtr held = plan.route(route);
    if (!held) {
        return plan;
    }
    Route changed = *held;
    changed.contours.push_back(spot);
    return std::move(PlanBuilder(plan).put(std::move(changed))).build();
}

Plan withoutLastContour(const Plan& plan, const ItemId& route) {
    const RoutePtr held = plan.route(route);
    if (!held || held->contours.empty()) {
        return plan;
    }
    Route changed = *held;
    changed.contours.pop_back();
    return std::move(PlanBuilder(plan).put(std::move(changed))).build();
}

Plan withLegNotes(const Plan& plan, const ItemId& item, const ItemId& point, const LegNotes& notes) {
    const RoutePtr held = plan.route(item);
    if (!held) {
        return plan;
    }
    Route route = *held;
    for (Stop& stop : route.stops) {
        if (stop.measure == point) {
            stop.leg = notes;
        }
    }
    return std::move(PlanBuilder(plan).put(std::move(route))).build();
}

Plan swappedUse(const Plan& plan, const ItemId& one, const ItemId& other) {
    const RoutePtr a = plan.route(one);
    const RoutePtr b = plan.route(other);
    if (!a || !b || a->use == b->use) {
        return plan;
    }
    Route first = *a;
    Route second = *b;
    std::swap(first.use, second.use);
    return std::move(PlanBuilder(plan).put(std::move(first)).put(std::move(second))).build();
}

}  // namespace crosstick::plan
