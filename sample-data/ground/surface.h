#pragma once

#include "sample-data/ground/lattice.h"

namespace crosstick::demo {

/// Heights that are given and those to be found.
struct Pinned {
    Field<float> heights;        ///< metres; where pinned, the given height
    Field<std::uint8_t> pinned;  ///< 1 = given, 0 = to be found
};

/// The surface between pinned heights that solves (-L + k L'L) z = 0, with L the 5-point Laplacian in cell units over
/// the cells to be found: a membrane, so that crests stay sharp, stiffened as a thin plate, so that slopes are round.
/// @param stiffness  k for cells of 25 m; for others it grows by the square of 25 m over the cell
/// Every pinned height comes back exactly. The edge cells must be pinned.
/// Method: conjugate gradients, started from the solution on cells twice as large, down to 80 m.
[[nodiscard]] Field<float> surface(const Pinned& given, double stiffness);

}  // namespace crosstick::demo
