#include "core/plan/ways_of_phase.h"

#include <algorithm>
#include <cmath>

#include "core/measures/afterwards.h"
#include "core/plan/next_phase.h"

namespace crosstick::plan {
namespace {

using geodesy::PlanePoint;
using Points = std::vector<PlanePoint>;

/// Twice the area of a triangle, in square metres: above 0 where c lies left of a-b.
double turn(PlanePoint a, PlanePoint b, PlanePoint c) {
    return (b.easting - a.easting).value() * (c.northing - a.northing).value() -
           (b.northing - a.northing).value() * (c.easting - a.easting).value();
}

bool boxesMeet(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d) {
    const auto meet = [](Metres p, Metres q, Metres r, Metres s) {
        return std::max(std::min(p, q), std::min(r, s)) <= std::min(std::max(p, q), std::max(r, s));
    };
    return meet(a.easting, b.easting, c.easting, d.easting) && meet(a.northing, b.northing, c.northing, d.northing);
}

bool piecesMeet(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d) {
    return boxesMeet(a, b, c, d) && turn(a, b, c) * turn(a, b, d) <= 0 && turn(c, d, a) * turn(c, d, b) <= 0;
}

bool linesMeet(const Points& one, const Points& other) {
    for (std::size_t n = 1; n < one.size(); ++n) {
        for (std::size_t m = 1; m < other.size(); ++m) {
            if (piecesMeet(one[n - 1], one[n], other[m - 1], other[m])) {
                return true;
            }
        }
    }
    return false;
}

/// By counting the ring's pieces east of the place.
bool isInside(const Points& ring, PlanePoint p) {
    bool inside = false;
    for (std::size_t n = 0, last = ring.size() - 1; n < ring.size(); last = n++) {
        const PlanePoint a = ring[last];
        const PlanePoint b = ring[n];
        if ((a.northing > p.northing) != (b.northing > p.northing)) {
            const double share = (p.northing - a.northing) / (b.northing - a.northing);
            inside = inside != (p.easting < a.easting + (b.easting - a.easting) * share);
        }
    }
    return inside;
}

/// Where a route ends: at what it goes on to, which lies on the ground, else at its last vertex.
PlanePoint endOf(const Plan& plan, const Route& route) {
    const MeasurePtr onward = route.onwardTo ? plan.measure(*route.onwardTo) : nullptr;
    const bool isPlace = onward && onward->anchor == Anchor::Ground && !onward->points.empty();
    return isPlace ? onward->points.front() : route.vertices.back();
}

}  // namespace

WaysOfPhase::WaysOfPhase(const Plan& plan, const std::vector<FilmPtr>& films) {
    for (const FilmPtr& film : films) {
        for (const Showing& showing : film->shows) {
            const RoutePtr route = plan.route(showing.item);
            if (route && route->use != Use::Vehicle && !route->vertices.empty()) {
                routes_.push_back(route);
                if (route->use == Use::Primary) {
                    ways_.push_back({route->id, Whose::Own, route->vertices});
                    ways_.back().points.push_back(endOf(plan, *route));
                }
            }
            const MeasurePtr arrow = plan.measure(showing.item);
            const measures::Entry* entry = arrow ? measures::find(arrow->kind) : nullptr;
            if (entry != nullptr && measures::leadsOn(*entry) && arrow->points.size() > 1) {
                ways_.push_back({arrow->id, arrow->whose, arrow->points});
            }
        }
    }
}

std::optional<WaysOfPhase::Led> WaysOfPhase::from(PlanePoint place, Whose whose) const {
    std::optional<Led> nearest;
    Metres least = kWithTheMarch;
    for (const Way& way : ways_) {
        const PlanePoint start = way.points.front();
        const Metres away(
            std::hypot((start.easting - place.easting).value(), (start.northing - place.northing).value()));
        if (way.whose == whose && away <= least && (!nearest || away < least)) {
            least = away;
            nearest = Led{way.item, way.points.back()};
        }
    }
    return nearest;
}

std::optional<ItemId> WaysOfPhase::standsOn(const ItemId& measure) const {
    for (const RoutePtr& route : routes_) {
        if (std::any_of(route->stops.begin(), route->stops.end(),
                        [&](const Stop& stop) { return stop.measure == measure; })) {
            return route->id;
        }
    }
    return std::nullopt;
}

std::optional<ItemId> WaysOfPhase::across(const Points& line) const {
    for (const RoutePtr& route : routes_) {
        if (route->use == Use::Primary && linesMeet(route->vertices, line)) {
            return route->id;
        }
    }
    return std::nullopt;
}

std::optional<ItemId> WaysOfPhase::outOf(const Points& ring) const {
    for (const RoutePtr& route : routes_) {
        if (route->use == Use::Primary && ring.size() > 2 && isInside(ring, route->vertices.front()) &&
            !isInside(ring, route->vertices.back())) {
            return route->id;
        }
    }
    return std::nullopt;
}

}  // namespace crosstick::plan
