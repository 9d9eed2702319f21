#pragma once

#include <optional>
#include <vector>

#include "core/geodesy/geodesic.h"
#include "core/movement/relief.h"
#include "core/movement/work_grid.h"
#include "core/plan/plan.h"

namespace crosstick::geodesy {
class MagneticModel;
}

namespace crosstick::movement {

struct RouteFigures;

/// What is measured of a straight piece of a route, from vertex to vertex: all that GeographicLib and the height model
/// are asked for.
struct MeasuredPiece {
    geodesy::PlanePoint fromInPlan, toInPlan;
    geodesy::PlanePoint from, to;  ///< in the grid of the work
    Metres mapDistance;
    Degrees gridAzimuth;  ///< not a number for a piece of no length
    geodesy::Geodesic line;
    std::optional<Relief> relief;  ///< by the model; nothing where it does not cover the piece
};

/// Pieces of a route as they were measured last. Whoever computes a route again and again, while a vertex is dragged,
/// keeps them: a piece whose ends stand where they stood is not measured anew. They belong to one work grid and one
/// source of heights: with another one they are forgotten.
class KeptPieces {
  public:
    void forget() { pieces_.clear(); }
    /// How many pieces had to be measured when the route was computed last.
    [[nodiscard]] std::size_t fresh() const { return fresh_; }

    [[nodiscard]] const std::vector<MeasuredPiece>& pieces() const { return pieces_; }

    /// Takes in all pieces of a route, between each two of its vertices.
    /// @param heights  null: no relief
    /// Errors: movement/route-not-on-grid; nothing is kept then.
    [[nodiscard]] Result<void> measure(const plan::Route& route, const WorkGrid& grid,
                                       const sheets::HeightSource* heights);

  private:
    std::vector<MeasuredPiece> pieces_;
    std::size_t fresh_ = 0;
};

/// A piece between any two places of the plan's plane. Errors: movement/route-not-on-grid, with the route's name.
[[nodiscard]] Result<MeasuredPiece> measuredPiece(geodesy::PlanePoint fromInPlan, geodesy::PlanePoint toInPlan,
                                                  const plan::Route& route, const WorkGrid& grid,
                                                  const sheets::HeightSource* heights);

/// The figures of a route whose pieces are kept from one computation to the next: only what has moved is measured anew.
/// Law: they are those that routeFigures() gives without.
[[nodiscard]] Result<RouteFigures> routeFigures(const plan::Plan& plan, const plan::Route& route, const WorkGrid& grid,
                                                const geodesy::MagneticModel* model,
                                                const sheets::HeightSource* heights, KeptPieces& kept);

}  // namespace crosstick::movement
