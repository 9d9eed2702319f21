#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/registration/crossing_trace.h"

namespace crosstick::registration {

/// Where a printed line should run at one of its crossings.
struct Station {
    PixelPoint at;     ///< by the model
    double aside = 0;  ///< pixels to the right of the line as it points, by which its neighbours have it off that
};

/// Where it does run there, and how well it is seen.
struct LineAt {
    PixelPoint at;         ///< a place on it beside the station
    PixelPoint direction;  ///< of length 1
    LineTrace seen;        ///< from the station. An arm that is hidden, where it is seen well behind the next crossing,
                           ///< counts as that: a name or a wood hides it, no neatline.
    double error = 0;      ///< of its place across it, one sigma, in pixels
};

/// How sure the line is one of the sheet's, goes on to both sides, and lies where it is said to, 0 to 1.
[[nodiscard]] double confidenceOf(const LineAt& line, const LineLook& look);

/// Follows a line of the grid along all its crossings, piece by piece, and says where it runs at each: by a flat curve
/// through the pieces within an interval and a half, where letters along it and contours that touch it are few against
/// what is itself. A piece counts the less the farther it is, the less it has the darkness of the sheet's lines, and
/// not at all a pixel aside.
/// @param stations  in their order, each one interval from the next
/// @return one for each station; nothing where no line is seen
/// Errors: those of the picture.
[[nodiscard]] Result<std::vector<std::optional<LineAt>>> followLine(const GreyPicture& picture,
                                                                    std::span<const Station> stations,
                                                                    const LineLook& look);

}  // namespace crosstick::registration
