#include "core/plan/edits.h"

#include <algorithm>

#include "core/measures/afterwards.h"
#include "core/plan/showings.h"

namespace crosstick::plan {
namespace {

std::string topKey(const Film& film) {
    return orderBetween(film.shows.empty() ? std::string{} : film.shows.back().order, "");
}

void show(PlanBuilder& builder, const Film& film, const std::vector<ItemId>& items) {
    Film next = film;
    for (const ItemId& item : items) {
        if (!isShownOn(next, item)) {
            next.shows.push_back({item, topKey(next), {}, {}});
        }
    }
    builder.put(std::move(next));
}

/// Every route with the vertices that a measure sits on.
void moveVertices(PlanBuilder& builder, const Plan& plan, const ItemId& measure, geodesy::PlanePoint to) {
    for (const RoutePtr& held : plan.routes()) {
        Route route = *held;
        bool touched = false;
        for (const Stop& stop : route.stops) {
            if (stop.measure == measure && stop.vertex < route.vertices.size()) {
                route.vertices[stop.vertex] = to;
                touched = true;
            }
        }
        if (touched) {
            builder.put(std::move(route));
        }
    }
}

Plan withRoutePoint(const Plan& plan, const Route& route, std::size_t index, geodesy::PlanePoint to) {
    for (const Stop& stop : route.stops) {
        if (stop.vertex == index && plan.measure(stop.measure)) {
            return withPoint(plan, stop.measure, 0, to);
        }
    }
    Route next = route;
    next.vertices[index] = to;
    PlanBuilder builder(plan);
    builder.put(std::move(next));
    return std::move(builder).build();
}

geodesy::PlanePoint by(geodesy::PlanePoint point, Metres east, Metres north) {
    return {point.easting + east, point.northing + north};
}

/// A unit whose place was assumed and that somebody moves stands where it was put from then on.
void takeItsPlace(Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    const bool isUnit = entry != nullptr && measures::afterwards(*entry) == measures::Afterwards::Moves;
    if (isUnit && measure.state == PlaceState::Assumed) {
        measure.state = PlaceState::Confirmed;
    }
}

std::size_t leastPoints(const Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    return entry != nullptr ? static_cast<std::size_t>(entry->points.least) : std::size_t{2};
}

std::vector<std::string> takenBy(const Plan& plan, std::string_view kind, std::string Measure::*field) {
    std::vector<std::string> taken;
    plan.measures().forEach([&](const MeasurePtr& measure) {
        if (measure->kind == kind) {
            taken.push_back((*measure).*field);
        }
    });
    return taken;
}

}  // namespace

Plan withMeasure(const Plan& plan, Measure measure, const FilmId& film) {
    const ItemId id = measure.id;
    PlanBuilder builder(plan);
    builder.put(std::move(measure));
    if (const FilmPtr held = plan.film(film)) {
        show(builder, *held, {id});
    }
    return std::move(builder).build();
}

Plan withRoute(const Plan& plan, Route route, std::vector<Measure> stops, const FilmId& film) {
    std::vector<ItemId> shown;
    PlanBuilder builder(plan);
    for (const Stop& stop : route.stops) {
        shown.push_back(stop.measure);
    }
    shown.push_back(route.id);
    for (Measure& measure : stops) {
        builder.put(std::move(measure));
    }
    builder.put(std::move(route));
    if (const FilmPtr held = plan.film(film)) {
        show(builder, *held, shown);
    }
    return std::move(builder).build();
}

Plan withPoint(const Plan& plan, const ItemId& item, std::size_t index, geodesy::PlanePoint to) {
    if (const RoutePtr route = plan.route(item)) {
        return index < route->vertices.size() ? withRoutePoint(plan, *route, index, to) : plan;
    }
    const MeasurePtr held = plan.measure(item);
    if (!held || index > held->points.size() || (index == held->points.size() && index != 0)) {
        return plan;
    }
    Measure measure = *held;
    if (measure.points.empty()) {  // it waited to be placed
        measure.points.push_back(to);
        measure.state = PlaceState::Confirmed;
    } else {
        measure.points[index] = to;
        takeItsPlace(measure);
    }
    PlanBuilder builder(plan);
    if (index == 0) {
        moveVertices(builder, plan, item, to);
    }
    builder.put(std::move(measure));
    return std::move(builder).build();
}

Plan movedBy(const Plan& plan, const ItemId& item, Metres east, Metres north) {
    if (const RoutePtr route = plan.route(item)) {
        Plan next = plan;
        for (std::size_t n = 0; n < route->vertices.size(); ++n) {
            next = withPoint(next, item, n, by(route->vertices[n], east, north));
        }
        return next;
    }
    const MeasurePtr held = plan.measure(item);
    if (!held || held->points.empty()) {
        return plan;
    }
    Measure measure = *held;
    for (geodesy::PlanePoint& point : measure.points) {
        point = by(point, east, north);
    }
    takeItsPlace(measure);
    PlanBuilder builder(plan);
    moveVertices(builder, plan, item, measure.points.front());
    builder.put(std::move(measure));
    return std::move(builder).build();
}

Plan withPointBefore(const Plan& plan, const ItemId& item, std::size_t index, geodesy::PlanePoint at) {
    PlanBuilder builder(plan);
    if (const RoutePtr held = plan.route(item)) {
        Route route = *held;
        index = std::min(index, route.vertices.size());
        route.vertices.insert(route.vertices.begin() + static_cast<std::ptrdiff_t>(index), at);
        for (Stop& stop : route.stops) {
            stop.vertex += stop.vertex >= index ? 1 : 0;
        }
        builder.put(std::move(route));
    } else if (const MeasurePtr measure = plan.measure(item)) {
        Measure next = *measure;
        index = std::min(index, next.points.size());
        next.points.insert(next.points.begin() + static_cast<std::ptrdiff_t>(index), at);
        builder.put(std::move(next));
    }
    return std::move(builder).build();
}

Plan withoutPoint(const Plan& plan, const ItemId& item, std::size_t index) {
    PlanBuilder builder(plan);
    if (const RoutePtr held = plan.route(item)) {
        Route route = *held;
        if (index >= route.vertices.size() || route.vertices.size() <= 2) {
            return plan;
        }
        route.vertices.erase(route.vertices.begin() + static_cast<std::ptrdiff_t>(index));
        std::erase_if(route.stops, [&](const Stop& stop) { return stop.vertex == index; });
        for (Stop& stop : route.stops) {
            stop.vertex -= stop.vertex > index ? 1 : 0;
        }
        builder.put(std::move(route));
    } else if (const MeasurePtr measure = plan.measure(item)) {
        if (index >= measure->points.size() || measure->points.size() <= leastPoints(*measure)) {
            return plan;
        }
        Measure next = *measure;
        next.points.erase(next.points.begin() + static_cast<std::ptrdiff_t>(index));
        builder.put(std::move(next));
    }
    return std::move(builder).build();
}

Plan without(const Plan& plan, const ItemId& item) {
    PlanBuilder builder(plan);
    for (const FilmPtr& held : plan.films()) {
        if (isShownOn(*held, item)) {
            builder.put(filmWithout(*held, item));
        }
    }
    for (const RoutePtr& held : plan.routes()) {
        const bool stops =
            std::any_of(held->stops.begin(), held->stops.end(), [&](const Stop& stop) { return stop.measure == item; });
        if (held->id != item && (stops || held->onwardTo == item)) {
            Route route = *held;
            std::erase_if(route.stops, [&](const Stop& stop) { return stop.measure == item; });
            if (route.onwardTo == item) {
                route.onwardTo.reset();
            }
            builder.put(std::move(route));
        }
    }
    builder.removeMeasure(item).removeRoute(item);
    return std::move(builder).build();
}

bool isShownOn(const Film& film, const ItemId& item) {
    return std::any_of(film.shows.begin(), film.shows.end(),
                       [&](const Showing& showing) { return showing.item == item; });
}

Plan shownOn(const Plan& plan, const ItemId& item, const FilmId& film) {
    const FilmPtr held = plan.film(film);
    if (!held || isShownOn(*held, item)) {
        return plan;
    }
    PlanBuilder builder(plan);
    show(builder, *held, {item});
    return std::move(builder).build();
}

Plan notShownOn(const Plan& plan, const ItemId& item, const FilmId& film) {
    const FilmPtr held = plan.film(film);
    if (!held || !isShownOn(*held, item)) {
        return plan;
    }
    PlanBuilder builder(plan);
    builder.put(filmWithout(*held, item));
    return std::move(builder).build();
}

Plan movedToFilm(const Plan& plan, const ItemId& item, const FilmId& from, const FilmId& to) {
    return from == to || !plan.film(to) ? plan : shownOn(notShownOn(plan, item, from), item, to);
}

Plan withFilm(const Plan& plan, const FilmId& id, std::string name, std::set<int> phases) {
    Film film;
    film.id = id;
    film.name = std::move(name);
    film.phases = std::move(phases);
    PlanBuilder builder(plan);
    builder.put(std::move(film));
    return std::move(builder).build();
}

Plan restacked(const Plan& plan, const FilmId& film, Step step) {
    std::vector<Uuid> order;
    for (const FilmPtr& held : plan.films()) {
        order.push_back(held->id);
    }
    const auto at = std::find(order.begin(), order.end(), film);
    if (at == order.end() || (step == Step::Up ? at + 1 == order.end() : at == order.begin())) {
        return plan;
    }
    std::iter_swap(at, step == Step::Up ? at + 1 : at - 1);
    PlanBuilder builder(plan);
    builder.order({}, order, {});
    return std::move(builder).build();
}

std::string nextNumber(const Plan& plan, std::string_view kind) {
    const auto taken = takenBy(plan, kind, &Measure::number);
    for (int number = 1;; ++number) {
        std::string text = std::to_string(number);
        if (std::find(taken.begin(), taken.end(), text) == taken.end()) {
            return text;
        }
    }
}

std::string nextName(const Plan& plan, std::string_view kind) {
    const auto taken = takenBy(plan, kind, &Measure::name);
    for (std::size_t number = 0;; ++number) {
        std::string text = number < 26 ? std::string{} : std::string(1, static_cast<char>('A' + number / 26 % 26 - 1));
        text += static_cast<char>('A' + number % 26);
        if (std::find(taken.begin(), taken.end(), text) == taken.end() || number > std::size_t{26} * 25) {
            return text;
        }
    }
}

}  // namespace crosstick::plan
