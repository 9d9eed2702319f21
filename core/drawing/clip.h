#pragma once

#include "core/drawing/drawing.h"

namespace crosstick::drawing {

/// The ink of a drawing inside a box: strokes are cut by their centre lines, fills by their rings, and what is empty
/// then is gone. Letters are left alone: they are never cut.
[[nodiscard]] Drawing clipped(Drawing drawing, const Box& box);
/// What of a ring lies inside a box; of one that leaves it and comes back, parts hang together along the box.
[[nodiscard]] std::vector<Point> clippedRing(std::vector<Point> ring, const Box& box);
/// The ink of a drawing outside a box that something else lies on: strokes are cut by their centre lines, fills whose
/// middle it covers are gone. Letters are left alone.
[[nodiscard]] Drawing cutAway(Drawing drawing, const Box& box);

}  // namespace crosstick::drawing
