#include "core/drafting/snap.h"

#include <algorithm>
#include <cmath>

#include "core/geodesy/plane_angles.h"
#include "core/measures/catalogue.h"

namespace crosstick::drafting {
namespace {

using geodesy::Ends;
using geodesy::Line;

using geodesy::PlanePoint;

struct Thing {
    const Line* points = nullptr;
    Ends ends = Ends::Open;
};

Thing thingOf(const plan::RoutePtr& route, const plan::MeasurePtr& measure) {
    if (route) {
        return {&route->vertices, Ends::Open};
    }
    if (measure && measure->anchor == plan::Anchor::Ground) {
        const measures::Entry* entry = measures::find(measure->kind);
        const bool isArea = entry != nullptr && entry->shape == measures::Shape::Area;
        return {&measure->points, isArea ? Ends::Closed : Ends::Open};
    }
    return {};
}

/// The nearest so far, within reach.
class Nearest {
  public:
    Nearest(PlanePoint at, Metres reach) : at_(at), away_(reach) {}
    void offer(PlanePoint place, Snap::What what, const plan::ItemId& item) {
        if (const Metres away = geodesy::planeDistance(place, at_); away < away_ || (!best_ && away <= away_)) {
            away_ = away;
            best_ = Snap{place, what, item};
        }
    }
    [[nodiscard]] const std::optional<Snap>& best() const { return best_; }

  private:
    PlanePoint at_;
    Metres away_;
    std::optional<Snap> best_;
};

/// Is a thing's point the one in the hand, or one that goes where that goes?
class Held {
  public:
    explicit Held(const SnapGround& ground) : inHand_(ground.inHand) {
        const plan::RoutePtr route = inHand_ ? ground.plan.route(inHand_->item) : nullptr;
        if (route) {
            for (const plan::Stop& stop : route->stops) {
                stop_ = stop.vertex == inHand_->vertex ? std::optional(stop.measure) : stop_;
            }
        } else if (inHand_) {
            stop_ = inHand_->item;
        }
    }
    [[nodiscard]] bool isPoint(const plan::ItemId& item, std::size_t vertex) const {
        return inHand_ && ((item == inHand_->item && vertex == inHand_->vertex) || (item == stop_ && vertex == 0));
    }
    [[nodiscard]] bool isPoint(const plan::Route& route, std::size_t vertex) const {
        return isPoint(route.id, vertex) ||
               (stop_ && std::any_of(route.stops.begin(), route.stops.end(), [&](const plan::Stop& stop) {
                    return stop.vertex == vertex && stop.measure == *stop_;
                }));
    }
    /// Its own line moves with the point.
    [[nodiscard]] bool isLine(const plan::ItemId& item) const { return inHand_ && item == inHand_->item; }

  private:
    std::optional<InHand> inHand_;
    std::optional<plan::ItemId> stop_;
};

template <class Take>
void eachThing(const SnapGround& ground, Take&& take) {
    for (const plan::FilmPtr& film : ground.films) {
        for (const plan::Showing& showing : film->shows) {
            const plan::RoutePtr route = ground.plan.route(showing.item);
            const plan::MeasurePtr measure = route ? nullptr : ground.plan.measure(showing.item);
            if (const Thing thing = thingOf(route, measure); thing.points != nullptr) {
                take(showing.item, thing, route.get());
            }
        }
    }
}

}  // namespace

std::optional<Snap> snapTo(const SnapGround& ground, PlanePoint at, Metres reach) {
    const Held held(ground);
    Nearest points(at, reach);
    eachThing(ground, [&](const plan::ItemId& item, const Thing& thing, const plan::Route* route) {
        for (std::size_t n = 0; n < thing.points->size(); ++n) {
            if (!(route != nullptr ? held.isPoint(*route, n) : held.isPoint(item, n))) {
                points.offer((*thing.points)[n], Snap::What::Point, item);
            }
        }
    });
    for (const PlanePoint tick : ground.ticks) {
        points.offer(tick, Snap::What::Tick, {});
    }
    if (points.best()) {
        return points.best();
    }
    Nearest lines(at, reach);
    if (ground.wish.lines == SnapWish::Lines::Yes) {
        eachThing(ground, [&](const plan::ItemId& item, const Thing& thing, const plan::Route* /*route*/) {
            const auto on =
                thing.points->size() < 2 || held.isLine(item) ? std::nullopt : nearestOn(*thing.points, thing.ends, at);
            if (on) {
                lines.offer(on->at, Snap::What::Edge, item);
            }
        });
    }
    if (!lines.best() && ground.wish.grid == SnapWish::Grid::Yes && ground.grid) {
        if (const auto place = ground.grid(at)) {
            lines.offer(*place, Snap::What::Grid, {});
        }
    }
    return lines.best();
}

std::optional<PlanePoint> onGridLines(PlanePoint at, Metres interval, Metres reach) {
    const auto nearest = [interval](Metres one) { return interval * std::round(one / interval); };
    const PlanePoint crossing{nearest(at.easting), nearest(at.northing)};
    if (geodesy::planeDistance(crossing, at) <= reach) {
        return crossing;
    }
    const Metres east = abs(crossing.easting - at.easting);
    const Metres north = abs(crossing.northing - at.northing);
    if (std::min(east, north) > reach) {
        return std::nullopt;
    }
    return east <= north ? PlanePoint{crossing.easting, at.northing} : PlanePoint{at.easting, crossing.northing};
}

}  // namespace crosstick::drafting
