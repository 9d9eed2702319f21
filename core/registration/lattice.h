#pragma once

#include <functional>
#include <optional>
#include <span>
#include <vector>

#include "core/registration/mark.h"
#include "core/registration/model.h"

namespace crosstick::registration {

/// A place in a grid's own count: 3, 4 is where its third line eastward crosses its fourth northward; 3.5 lies between.
struct LatticePoint {
    double east = 0, north = 0;
};

/// The crossings of a printed grid.
struct Lattice {
    std::function<std::optional<geodesy::PlanePoint>(LatticePoint)> place;  ///< nothing where a projection ends
    std::function<std::optional<LatticePoint>(geodesy::PlanePoint)> count;
};

/// Lines of a plane's grid, so many metres apart.
[[nodiscard]] Lattice gridLattice(Metres interval);
/// The intervals that a sheet's lines may have, likeliest first: a kilometre, where all marks stand on whole ones and
/// these come out wide enough apart in the picture, then wider ones likewise, then narrower ones down to 100 m. Empty
/// where the marks stand on no such lines.
[[nodiscard]] std::vector<Metres> intervalsOf(std::span<const Mark> marks, const Model& model);

}  // namespace crosstick::registration
