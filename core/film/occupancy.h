#pragma once

#include <vector>

#include "core/drawing/drawing.h"

namespace crosstick::film {

/// Where a window is taken by what is drawn, in cells of 1 mm with sums, so that any box is asked in one step. Made to
/// find free places for blocks and marks, not to keep letters apart.
class Occupancy {
  public:
    /// @param window  in film millimetres, its upper left corner at 0, 0
    Occupancy(const drawing::Box& window, const std::vector<std::vector<drawing::Point>>& lines);

    /// Cells that lines run through, inside a box.
    [[nodiscard]] int within(const drawing::Box& box) const;

  private:
    int columns_;
    int rows_;
    std::vector<int> sums_;  ///< (columns + 1) x (rows + 1): cells above and left
    [[nodiscard]] std::size_t cell(int column, int row) const {
        return static_cast<std::size_t>(row) * (static_cast<std::size_t>(columns_) + 1) +
               static_cast<std::size_t>(column);
    }
    [[nodiscard]] int sumTo(int column, int row) const;
};

}  // namespace crosstick::film
