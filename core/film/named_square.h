#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/film/frame.h"
#include "core/film/grid_names.h"
#include "core/film/occupancy.h"

namespace crosstick::film {

/// The square that the block and the angle marks in the window name.
struct NamedSquare {
    geodesy::PlanePoint southWest;
    Metres side;
    std::string name;  ///< "FL 54 97"
    PaperMm onPaper;   ///< side at the film's scale
};

/// A square of the printed grid whose corners and name find room in the window, the nearest to a point among those that
/// the fewest lines run through; nothing where every square has a tick or furniture in the way.
/// @param taken  film millimetres: what the marks must not touch
[[nodiscard]] std::optional<NamedSquare> namedSquare(const plan::Registration& registration, const Frame& frame,
                                                     const GridNames& names, const Occupancy& drawn,
                                                     const std::vector<drawing::Box>& taken, drawing::Point near);

}  // namespace crosstick::film
