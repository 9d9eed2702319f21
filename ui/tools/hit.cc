#include "ui/tools/hit.h"

#include <algorithm>
#include <cmath>

#include "core/measures/catalogue.h"
#include "core/movement/route_figures.h"

namespace crosstick::tools {
namespace {

struct Line {
    const std::vector<geodesy::PlanePoint>* points = nullptr;
    bool closed = false;
};

Line lineOf(const plan::Plan& plan, const plan::ItemId& item) {
    if (const plan::RoutePtr route = plan.route(item)) {
        return {&route->vertices, false};
    }
    if (const plan::MeasurePtr measure = plan.measure(item);
        measure && measure->anchor == plan::Anchor::Ground && !measure->points.empty()) {
        const measures::Entry* entry = measures::find(measure->kind);
        return {&measure->points, entry != nullptr && entry->shape == measures::Shape::Area};
    }
    return {};
}

std::optional<Hit> hitOn(const plan::ItemId& item, const Line& line, geodesy::PlanePoint at, Metres reach) {
    std::optional<Hit> best;
    const auto& points = *line.points;
    for (std::size_t n = 0; n < points.size(); ++n) {
        const Metres away = apart(points[n], at);
        if (away <= reach && (!best || away < best->away)) {
            best = Hit{item, n, std::nullopt, away};
        }
    }
    if (best) {
        return best;
    }
    const std::size_t pieces = points.size() < 2 ? 0 : points.size() - (line.closed ? 0 : 1);
    for (std::size_t n = 0; n < pieces; ++n) {
        const Metres away = fromPiece(at, points[n], points[(n + 1) % points.size()]);
        if (away <= reach && (!best || away < best->away)) {
            best = Hit{item, std::nullopt, n + 1, away};
        }
    }
    return best;
}

/// A vertex of a line gives way to a point measure that stands on it: the measure is what people see there.
int rankOf(const plan::Plan& plan, const Hit& hit) {
    return lineOf(plan, hit.item).points->size() == 1 ? 0 : hit.vertex ? 1 : 2;
}

/// East and north of a place from the box's first corner, turned so that the table's upward side is north.
drawing::Point across(const Box& box, geodesy::PlanePoint at) {
    const double turn = radians(box.up).value();
    const double east = (at.easting - box.from.easting).value();
    const double north = (at.northing - box.from.northing).value();
    return {east * std::cos(turn) - north * std::sin(turn), east * std::sin(turn) + north * std::cos(turn)};
}

}  // namespace

geodesy::PlanePoint pointOf(const plan::Plan& plan, const plan::ItemId& item, std::size_t vertex) {
    if (const plan::RoutePtr route = plan.route(item)) {
        return vertex < route->vertices.size() ? route->vertices[vertex] : geodesy::PlanePoint{};
    }
    const plan::MeasurePtr measure = plan.measure(item);
    return measure && vertex < measure->points.size() ? measure->points[vertex] : geodesy::PlanePoint{};
}

std::size_t pointsOf(const plan::Plan& plan, const plan::ItemId& item) {
    if (const plan::RoutePtr route = plan.route(item)) {
        return route->vertices.size();
    }
    const plan::MeasurePtr measure = plan.measure(item);
    return measure ? measure->points.size() : 0;
}

std::string nameOf(const plan::Plan& plan, const plan::ItemId& item) {
    if (const plan::RoutePtr route = plan.route(item)) {
        return "RTE " + route->name;
    }
    const plan::MeasurePtr measure = plan.measure(item);
    return measure ? movement::label(*measure) : std::string{};
}

Metres apart(geodesy::PlanePoint a, geodesy::PlanePoint b) {
    return Metres(std::hypot((a.easting - b.easting).value(), (a.northing - b.northing).value()));
}

std::optional<Hit> hitAt(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films,
                         const std::optional<plan::ItemId>& selected, geodesy::PlanePoint at, Metres reach) {
    if (selected) {
        if (const Line line = lineOf(plan, *selected); line.points != nullptr) {
            if (auto hit = hitOn(*selected, line, at, reach)) {
                return hit;
            }
        }
    }
    std::optional<Hit> best;
    const auto rank = [&](const Hit& hit) { return rankOf(plan, hit); };
    std::for_each(films.rbegin(), films.rend(), [&](const plan::FilmPtr& film) {
        for (const plan::Showing& showing : film->shows) {
            const Line line = lineOf(plan, showing.item);
            const auto hit = line.points == nullptr ? std::nullopt : hitOn(showing.item, line, at, reach);
            if (hit && (!best || rank(*hit) < rank(*best) || (rank(*hit) == rank(*best) && hit->away < best->away))) {
                best = hit;
            }
        }
    });
    return best;
}

std::vector<plan::ItemId> allAt(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films, geodesy::PlanePoint at,
                                Metres reach) {
    std::vector<Hit> hits;
    std::for_each(films.rbegin(), films.rend(), [&](const plan::FilmPtr& film) {
        for (const plan::Showing& showing : film->shows) {
            const Line line = lineOf(plan, showing.item);
            const auto hit = line.points == nullptr ? std::nullopt : hitOn(showing.item, line, at, reach);
            const bool isNew = hit && std::none_of(hits.begin(), hits.end(),
                                                   [&](const Hit& other) { return other.item == hit->item; });
            if (isNew) {
                hits.push_back(*hit);
            }
        }
    });
    std::stable_sort(hits.begin(), hits.end(), [&](const Hit& a, const Hit& b) {
        return rankOf(plan, a) != rankOf(plan, b) ? rankOf(plan, a) < rankOf(plan, b) : a.away < b.away;
    });
    std::vector<plan::ItemId> items;
    std::transform(hits.begin(), hits.end(), std::back_inserter(items), [](const Hit& hit) { return hit.item; });
    return items;
}

plan::Points Box::corners() const {
    const double turn = radians(up).value();
    const double along = across(*this, to).y;  // upward from the first corner
    const geodesy::PlanePoint above{from.easting + Metres(along * std::sin(turn)),
                                    from.northing + Metres(along * std::cos(turn))};
    const geodesy::PlanePoint below{to.easting - (above.easting - from.easting),
                                    to.northing - (above.northing - from.northing)};
    return {from, above, to, below};
}

bool Box::holds(geodesy::PlanePoint at) const {
    const drawing::Point corner = across(*this, to);
    const drawing::Point place = across(*this, at);
    const auto isBetween = [](double value, double end) {
        return std::min(0.0, end) <= value && value <= std::max(0.0, end);
    };
    return isBetween(place.x, corner.x) && isBetween(place.y, corner.y);
}

std::vector<plan::ItemId> allIn(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films, const Box& box) {
    std::vector<plan::ItemId> items;
    std::for_each(films.rbegin(), films.rend(), [&](const plan::FilmPtr& film) {
        for (const plan::Showing& showing : film->shows) {
            const Line line = lineOf(plan, showing.item);
            const bool isIn = line.points != nullptr && !film->pinned &&
                              std::all_of(line.points->begin(), line.points->end(),
                                          [&](geodesy::PlanePoint at) { return box.holds(at); });
            if (isIn && std::find(items.begin(), items.end(), showing.item) == items.end()) {
                items.push_back(showing.item);
            }
        }
    });
    return items;
}

plan::MeasurePtr pointAt(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films, geodesy::PlanePoint at,
                         Metres reach) {
    plan::MeasurePtr best;
    Metres nearest = reach;
    for (const plan::FilmPtr& film : films) {
        for (const plan::Showing& showing : film->shows) {
            plan::MeasurePtr measure = plan.measure(showing.item);
            const measures::Entry* entry = measure ? measures::find(measure->kind) : nullptr;
            if (entry == nullptr || entry->shape != measures::Shape::Point || measure->points.empty()) {
                continue;
            }
            if (const Metres away = apart(measure->points.front(), at); away <= nearest) {
                nearest = away;
                best = std::move(measure);
            }
        }
    }
    return best;
}

std::optional<Hit> routeAt(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films, geodesy::PlanePoint at,
                           Metres reach) {
    std::optional<Hit> best;
    for (const plan::FilmPtr& film : films) {
        for (const plan::Showing& showing : film->shows) {
            const plan::RoutePtr route = plan.route(showing.item);
            const auto hit = route ? hitOn(route->id, {&route->vertices, false}, at, reach) : std::nullopt;
            const bool isTaken = hit && hit->vertex &&
                                 std::any_of(route->stops.begin(), route->stops.end(),
                                             [&](const plan::Stop& stop) { return stop.vertex == *hit->vertex; });
            if (hit && !isTaken && (!best || hit->away < best->away)) {
                best = hit;
            }
        }
    }
    return best;
}

Metres fromPiece(geodesy::PlanePoint at, geodesy::PlanePoint a, geodesy::PlanePoint b) {
    const double dx = (b.easting - a.easting).value();
    const double dy = (b.northing - a.northing).value();
    const double px = (at.easting - a.easting).value();
    const double py = (at.northing - a.northing).value();
    const double square = dx * dx + dy * dy;
    const double share = square > 0 ? std::clamp((px * dx + py * dy) / square, 0.0, 1.0) : 0.0;
    return Metres(std::hypot(px - share * dx, py - share * dy));
}

}  // namespace crosstick::tools
