#pragma once

#include <vector>

#include "sample-data/ground/lattice.h"

namespace crosstick::demo {

/// One line of equal height; the higher ground lies right of its direction.
struct Contour {
    double height = 0;
    bool closed = false;
    Line line;
};

/// Every contour of an interval between two heights, joined from the squares of the lattice (marching squares, linear
/// between cell centres) and smoothed twice by corner cutting, which keeps it within half a cell. Order and directions
/// are fixed by the lattice.
[[nodiscard]] std::vector<Contour> contoursOf(const Field<float>& heights, double interval, double from, double to);

}  // namespace crosstick::demo
