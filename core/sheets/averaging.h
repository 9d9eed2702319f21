#pragma once

#include "core/sheets/pixels.h"

namespace crosstick::sheets {

/// Along one axis: pixel n of the target takes the source pixels from `from(n)` to before `to(n)`, at least one.
struct Steps {
    double start = 0;  ///< in source pixels
    double each = 1;   ///< source pixels a target pixel
    [[nodiscard]] int from(int n) const;
    [[nodiscard]] int to(int n) const;
};

/// A piece of source pixels and where it lies.
struct Piece {
    int column = 0, row = 0;
    Pixels pixels;
};

/// Averages whole blocks of source pixels into the target's rows from `firstRow` to before `endRow`; fine lines fade
/// evenly instead of dropping out. A pixel of which no source pixel is in the piece stays as it is.
void averageInto(const Piece& source, Steps across, Steps down, int firstRow, int endRow, Pixels& target);

}  // namespace crosstick::sheets
