#include "core/movement/evacuation.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/geodesy/geodesic.h"
#include "core/movement/paper_figures.h"
#include "core/movement/rate_text.h"
#include "core/movement/work_grid.h"

namespace crosstick::movement {
namespace {

using geodesy::PlanePoint;

/// A point in both forms that distances need.
struct Place {
    PlanePoint onGrid;
    geodesy::GeoPoint place;
};

std::optional<Place> placeOn(const WorkGrid& grid, PlanePoint onGrid) {
    const auto place = grid.plane().geographic(onGrid);
    return place ? std::optional(Place{onGrid, *place}) : std::nullopt;
}

Metres between(const Place& a, const Place& b) {
    return geodesy::geodesic(a.place, b.place).distance;
}

/// Where a measure lies on the grid, an area or a line at the mean of its points; nothing where it is not placed.
std::optional<Place> placeOf(const plan::Plan& plan, const std::optional<plan::ItemId>& id, const WorkGrid& grid) {
    const auto measure = id ? plan.measure(*id) : nullptr;
    if (!measure || measure->points.empty() || measure->anchor != plan::Anchor::Ground) {
        return std::nullopt;
    }
    PlanePoint middle{};
    for (const PlanePoint point : measure->points) {
        const auto count = static_cast<double>(measure->points.size());
        middle = {middle.easting + point.easting / count, middle.northing + point.northing / count};
    }
    const auto onGrid = grid.onGrid(middle);
    return onGrid ? placeOn(grid, *onGrid) : std::nullopt;
}

std::optional<EvacuationPoint> pointOf(const plan::Plan& plan, const std::optional<plan::ItemId>& id,
                                       const WorkGrid& grid) {
    const auto place = placeOf(plan, id, grid);
    return place ? std::optional(EvacuationPoint{label(*plan.measure(*id)), grid.gridText(place->onGrid)})
                 : std::nullopt;
}

/// How far along a piece, 0 to 1, lies what of it is nearest to a point.
double nearestShare(const Piece& piece, PlanePoint to) {
    const double east = (piece.to.easting - piece.from.easting).value();
    const double north = (piece.to.northing - piece.from.northing).value();
    const double square = east * east + north * north;
    const double along =
        (to.easting - piece.from.easting).value() * east + (to.northing - piece.from.northing).value() * north;
    return square > 0 ? std::clamp(along / square, 0.0, 1.0) : 0;
}

PlanePoint at(const Piece& piece, double share) {
    return {piece.from.easting + (piece.to.easting - piece.from.easting) * share,
            piece.from.northing + (piece.to.northing - piece.from.northing) * share};
}

/// What the legs' vertices are called, in their order.
struct Vertex {
    PlanePoint onGrid;
    std::string spot;
};

std::vector<Vertex> verticesOf(const RouteFigures& figures) {
    std::vector<Vertex> vertices;
    const auto named = [](const std::string& label, const char* without) { return label.empty() ? without : label; };
    for (const Leg& leg : figures.legs) {
        if (vertices.empty()) {
            vertices.push_back({leg.pieces.front().from, named(leg.fromLabel, "start")});
        }
        Metres soFar{0};
        for (std::size_t n = 0; n < leg.pieces.size(); ++n) {
            soFar += leg.pieces[n].mapDistance;
            const bool ends = n + 1 == leg.pieces.size();
            vertices.push_back(
                {leg.pieces[n].to, ends ? named(leg.toLabel, "end")
                                        : fmt::format("the bend {} m after {}", geodesy::distanceText(soFar),
                                                      named(leg.fromLabel, "start"))});
        }
    }
    return vertices;
}

/// Where the route leaves for the point.
struct Leaving {
    Metres ground;  ///< from the first stop
    PlanePoint from;
};

Leaving leavingFor(const RouteFigures& figures, PlanePoint to) {
    Leaving best{};
    std::optional<Metres> nearest;
    Metres soFar{0};
    for (const Leg& leg : figures.legs) {
        for (const Piece& piece : leg.pieces) {
            const double share = nearestShare(piece, to);
            const PlanePoint spot = at(piece, share);
            const Metres off = geodesy::planeDistance(spot, to);
            if (!nearest || off < *nearest) {
                nearest = off;
                best = {soFar + piece.groundDistance * share, spot};
            }
            soFar += piece.groundDistance;
        }
    }
    return best;
}

class Carrying {
  public:
    Carrying(const RouteFigures& figures, const Place& to, const WorkGrid& grid,
             const std::optional<plan::MarchRate>& rate)
        : figures_(figures), to_(to), grid_(grid), rate_(rate), vertices_(verticesOf(figures)) {}

    [[nodiscard]] std::optional<CarryFromRoute> made() const {
        CarryFromRoute made{};
        std::optional<Metres> farthest;
        for (const Vertex& vertex : vertices_) {
            const auto from = placeOn(grid_, vertex.onGrid);
            if (!from) {
                return std::nullopt;
            }
            const Metres way = between(*from, to_);
            if (!farthest || way > *farthest) {
                farthest = way;
                made.straight = carryFrom(vertex, way);
            }
        }
        made.gridAzimuth = geodesy::planeAzimuth(made.straight.from, to_.onGrid);
        made.magneticAzimuth = geodesy::magneticAzimuth(made.gridAzimuth, figures_.gm.angle);
        const Leaving leaving = leavingFor(figures_, to_.onGrid);
        const auto from = placeOn(grid_, leaving.from);
        if (!from) {
            return std::nullopt;
        }
        made.offRoute = between(*from, to_);
        const Metres onward = figures_.groundDistance - leaving.ground;
        const bool fromEnd = onward > leaving.ground;
        made.byRoute = carryFrom(fromEnd ? vertices_.back() : vertices_.front(),
                                 (fromEnd ? onward : leaving.ground) + made.offRoute);
        return made;
    }

  private:
    [[nodiscard]] Carry carryFrom(const Vertex& vertex, Metres ground) const {
        Carry carry{vertex.onGrid, vertex.spot, grid_.gridText(vertex.onGrid), ground, {}};
        if (rate_ && rate_->rate.value() > 0) {
            carry.time = Minutes(ground.value() * 60 / (rate_->rate.value() * 1000));
        }
        return carry;
    }

    const RouteFigures& figures_;
    const Place& to_;
    const WorkGrid& grid_;
    const std::optional<plan::MarchRate>& rate_;
    std::vector<Vertex> vertices_;
};

std::optional<VehicleWay> vehicleWay(const plan::Plan& plan, const std::optional<plan::ItemId>& id,
                                     const WorkGrid& grid, const std::optional<Place>& collection) {
    const auto route = id ? plan.route(*id) : nullptr;
    if (!route || route->vertices.size() < 2) {
        return std::nullopt;
    }
    VehicleWay way{routeTitle(route->name), {}, {}, {}, {}};
    std::optional<Place> last;
    for (const PlanePoint vertex : route->vertices) {
        const auto onGrid = grid.onGrid(vertex);
        const auto next = onGrid ? placeOn(grid, *onGrid) : std::nullopt;
        if (!next) {
            return std::nullopt;
        }
        if (last) {
            way.mapDistance += geodesy::planeDistance(last->onGrid, next->onGrid);
            way.groundDistance += between(*last, *next);
        } else if (collection) {
            way.fromCollection = between(*collection, *next);
        }
        last = next;
    }
    way.toGrid = grid.gridText(last->onGrid);
    return way;
}

std::string timeWords(const std::optional<Minutes>& time) {
    return time ? ", " + timeText(*time) : std::string{};
}

std::string carryText(const EvacuationFigures& figures, geodesy::AngleUnit unit) {
    const CarryFromRoute& carry = *figures.carry;
    const std::string sign = unit == geodesy::AngleUnit::Mils ? " mils" : "°";
    const std::string rate = figures.rate ? "at " + kilometresPerHourText(figures.rate->rate) +
                                                (figures.rate->note.empty() ? "" : ", " + figures.rate->note)
                                          : "no time, since no rate for carrying is given";
    return fmt::format("at worst from {} straight {} m{}, magnetic {}{}; from {} by the route {} m{}; {}",
                       carry.straight.spot, geodesy::distanceText(carry.straight.ground),
                       timeWords(carry.straight.time), geodesy::azimuthText(carry.magneticAzimuth, unit), sign,
                       carry.byRoute.spot, geodesy::distanceText(carry.byRoute.ground), timeWords(carry.byRoute.time),
                       rate);
}

/// A way that begins farther off than this from the collection point is told so: our own figure, the length of a small
/// collection point.
constexpr Metres kBeginsThere{50};

std::string onwardText(const VehicleWay& way) {
    std::string text =
        fmt::format("on by vehicle {} to {}, {} m", way.name, way.toGrid, geodesy::distanceText(way.groundDistance));
    if (way.fromCollection && *way.fromCollection > kBeginsThere) {
        text += fmt::format(" (it begins {} m from there)", geodesy::distanceText(*way.fromCollection));
    }
    return text;
}

}  // namespace

Result<std::optional<EvacuationFigures>> evacuationFrom(const plan::Plan& plan, const RouteFigures& figures) {
    const auto& evacuation = plan.heading().evacuation;
    if (!evacuation) {
        return std::nullopt;
    }
    const auto grid = WorkGrid::of(plan);
    if (!grid) {
        return tl::unexpected(grid.error());
    }
    EvacuationFigures made;
    made.collection = pointOf(plan, evacuation->collection, *grid);
    made.pickUp = pointOf(plan, evacuation->pickUp, *grid);
    made.rate = evacuation->carry;
    const auto collection = placeOf(plan, evacuation->collection, *grid);
    if (collection && figures.use != plan::Use::Vehicle && !figures.legs.empty()) {
        made.carry = Carrying(figures, *collection, *grid, made.rate).made();
    }
    made.onward = vehicleWay(plan, evacuation->onward, *grid, collection);
    if (!made.collection && !made.pickUp && !made.onward) {
        return std::nullopt;
    }
    return made;
}

std::vector<EvacuationLine> evacuationLines(const EvacuationFigures& figures, geodesy::AngleUnit unit) {
    std::vector<EvacuationLine> lines;
    if (figures.collection || figures.onward) {
        std::string text = figures.collection ? figures.collection->label + ' ' + figures.collection->grid : "";
        if (figures.onward) {
            text += (text.empty() ? "" : ", ") + onwardText(*figures.onward);
        }
        lines.push_back({"Casualties:", text});
    }
    if (figures.carry) {
        lines.push_back({"Carry:", carryText(figures, unit)});
    }
    if (figures.pickUp) {
        lines.push_back({"Pick-up:", figures.pickUp->label + ' ' + figures.pickUp->grid});
    }
    return lines;
}

}  // namespace crosstick::movement
