#include "ui/tools/hit.h"

#include <algorithm>
#include <cmath>

#include "core/measures/catalogue.h"

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

}  // namespace

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
    // A vertex of a line gives way to a point measure that stands on it: the measure is what people see there.
    const auto rank = [&](const Hit& hit) {
        const Line line = lineOf(plan, hit.item);
        return line.points->size() == 1 ? 0 : hit.vertex ? 1 : 2;
    };
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
