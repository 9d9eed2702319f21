#pragma once

#include <optional>

#include "core/registration/grey_picture.h"

namespace crosstick::registration {

/// How far a printed line is looked for.
struct Reach {
    double search = 4;  ///< pixels to either side of where it should run
    double arm = 40;    ///< pixels along it, to either side of the crossing
    double slope = 0;   ///< by which it may lean from where it should point, as a tangent
};

/// A dark line found through a crossing.
struct LineTrace {
    double offset = 0;    ///< at the crossing, in pixels to the right of its direction as it points (x right, y down)
    double slope = 0;     ///< by which it leans from its direction, likewise
    double behind = 0;    ///< share of the arm behind the crossing on which it is seen, 0 to 1
    double ahead = 0;     ///< and ahead
    double contrast = 0;  ///< greys by which it is darker than both its sides, in the middle
    double scatter = 0;   ///< rms of its pieces about the straight line, in pixels
    double width = 0;     ///< of its darkness, in pixels
    double rival = 0;     ///< share of its pieces that another line in reach has, 0 to 1
};

/// Looks for a straight dark line near where one should run: in pieces of some pixels, whose dark middles vote for one
/// offset and slope; then by their centres of darkness, to a tenth of a pixel on a clean scan.
/// @param at         the expected crossing  @param direction  of the line, of length 1
/// @param contrast   greys that such lines have; half of it is looked for
/// @return nothing where no line is seen on a third of the pieces
[[nodiscard]] std::optional<LineTrace> traceLine(const GreyWindow& window, PixelPoint at, PixelPoint direction,
                                                 const Reach& reach, double contrast);

}  // namespace crosstick::registration
