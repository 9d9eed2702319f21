#include "core/movement/measured_pieces.h"

#include <algorithm>
#include <utility>

#include "core/geodesy/plane_angles.h"
#include "core/movement/faults.h"

namespace crosstick::movement {
namespace {

/// A vertex in every form that measuring needs.
struct Spot {
    geodesy::PlanePoint inPlan, onGrid;
    geodesy::GeoPoint place;
};

Result<Spot> spotOf(geodesy::PlanePoint inPlan, const WorkGrid& grid, const plan::Route& route) {
    const auto onGrid = grid.onGrid(inPlan);
    const auto place = onGrid ? grid.plane().geographic(*onGrid) : tl::unexpected(onGrid.error());
    if (!place) {
        return fail(kRouteNotOnGrid, {{"route", route.name}});
    }
    return Spot{inPlan, *onGrid, *place};
}

MeasuredPiece between(const Spot& from, const Spot& to, const sheets::HeightSource* heights) {
    MeasuredPiece piece;
    piece.fromInPlan = from.inPlan;
    piece.toInPlan = to.inPlan;
    piece.from = from.onGrid;
    piece.to = to.onGrid;
    piece.mapDistance = geodesy::planeDistance(from.onGrid, to.onGrid);
    piece.gridAzimuth = geodesy::planeAzimuth(from.onGrid, to.onGrid);
    piece.line = geodesy::geodesic(from.place, to.place);
    if (heights != nullptr) {
        piece.relief = reliefBetween(from.inPlan, to.inPlan, piece.line.distance, *heights);
    }
    return piece;
}

/// Looks through the pieces of last time in their order: what was put in or taken out since moves the rest by one.
class Finder {
  public:
    explicit Finder(std::vector<MeasuredPiece> pieces) : pieces_(std::move(pieces)) {}

    /// A piece that is found is the caller's to move away.
    [[nodiscard]] MeasuredPiece* find(geodesy::PlanePoint from, geodesy::PlanePoint to) {
        constexpr std::size_t kAhead = 3;
        for (std::size_t n = at_; n < std::min(at_ + kAhead, pieces_.size()); ++n) {
            if (pieces_[n].fromInPlan == from && pieces_[n].toInPlan == to) {
                at_ = n + 1;
                return &pieces_[n];
            }
        }
        return nullptr;
    }

  private:
    std::vector<MeasuredPiece> pieces_;
    std::size_t at_ = 0;
};

}  // namespace

Result<void> KeptPieces::measure(const plan::Route& route, const WorkGrid& grid, const sheets::HeightSource* heights) {
    Finder finder(std::exchange(pieces_, {}));
    std::vector<MeasuredPiece> pieces;
    pieces.reserve(route.vertices.size());
    fresh_ = 0;
    std::optional<Spot> last;  // where the piece before was measured now
    for (std::size_t n = 0; n + 1 < route.vertices.size(); ++n) {
        if (MeasuredPiece* known = finder.find(route.vertices[n], route.vertices[n + 1])) {
            pieces.push_back(std::move(*known));
            last.reset();
            continue;
        }
        const auto from = last ? Result<Spot>(*last) : spotOf(route.vertices[n], grid, route);
        const auto to = spotOf(route.vertices[n + 1], grid, route);
        if (!from || !to) {
            return tl::unexpected(from ? to.error() : from.error());
        }
        pieces.push_back(between(*from, *to, heights));
        last = *to;
        ++fresh_;
    }
    pieces_ = std::move(pieces);
    return {};
}

Result<MeasuredPiece> measuredPiece(geodesy::PlanePoint fromInPlan, geodesy::PlanePoint toInPlan,
                                    const plan::Route& route, const WorkGrid& grid,
                                    const sheets::HeightSource* heights) {
    const auto from = spotOf(fromInPlan, grid, route);
    const auto to = spotOf(toInPlan, grid, route);
    if (!from || !to) {
        return tl::unexpected(from ? to.error() : from.error());
    }
    return between(*from, *to, heights);
}

}  // namespace crosstick::movement
