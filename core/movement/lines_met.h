#pragma once

#include <vector>

#include "core/movement/route_figures.h"
#include "core/movement/work_grid.h"

namespace crosstick::movement {

/// A line on the ground that a march may meet, with its points in the grid of the work.
struct GroundLine {
    plan::MeasurePtr measure;
    std::vector<geodesy::PlanePoint> points;
};

/// Lines that a march reports, stops or is seen at, and ways of others: those on a film that shows the route, or where
/// no film shows it those on any film, in order of identity. A line of which a point does not reach the grid is left
/// out.
[[nodiscard]] std::vector<GroundLine> linesBeside(const plan::Plan& plan, const plan::ItemId& route,
                                                  const WorkGrid& grid);

/// A stretch of a piece, as metres from the piece's start; mostly of no length.
struct PieceStretch {
    double from = 0;
    double to = 0;
};

/// The line's piece a-b seen from the route's: x along it from its start, y to its left, in metres. The piece has a
/// length.
struct SeenPiece {
    double ax, ay, bx, by;
};
[[nodiscard]] SeenPiece seenFrom(const Piece& piece, geodesy::PlanePoint a, geodesy::PlanePoint b);

}  // namespace crosstick::movement
