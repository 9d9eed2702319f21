#pragma once

#include <vector>

#include "core/film/frame.h"
#include "core/film/furniture.h"
#include "core/film/occupancy.h"

namespace crosstick::film {

/// A tick in film millimetres with its drawing.
struct PlacedTick {
    geodesy::PlanePoint at;
    drawing::Point onFilm;
    TickDrawing mark;
};

/// The ticks that lie in a film's window, each labelled in the quadrant toward the window's middle or in the next one
/// that nothing runs through; the one at the lower left in full.
[[nodiscard]] std::vector<PlacedTick> placedTicks(const plan::Registration& registration, const Frame& frame,
                                                  const Occupancy& drawn);

}  // namespace crosstick::film
