#pragma once

#include "core/drawing/drawing.h"

namespace crosstick::drawing {

/// The ink of a drawing inside a box: strokes are cut by their centre lines, fills by their rings, and what is empty
/// then is gone. Letters are left alone: they are never cut.
[[nodiscard]] Drawing clipped(Drawing drawing, const Box& box);

}  // namespace crosstick::drawing
