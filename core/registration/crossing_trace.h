#pragma once

#include <cmath>
#include <optional>
#include <span>

#include "core/registration/line_trace.h"

namespace crosstick::registration {

/// Where a crossing is expected, and one interval of each of its lines from there.
struct CrossSight {
    PixelPoint at;
    PixelPoint east, north;  ///< steps along the lines, in pixels
    [[nodiscard]] double spacing() const { return std::min(std::hypot(east.x, east.y), std::hypot(north.x, north.y)); }
};

/// What a sheet's lines look like, by some that are sure.
struct LineLook {
    double contrast = 0;  ///< greys
    double width = 0;     ///< pixels
    [[nodiscard]] double ink() const { return contrast * width; }
};
inline constexpr double kFaintest = 12;  ///< greys by which a line must be darker than its ground
[[nodiscard]] LineLook lookOf(std::span<const LineTrace> lines);

/// Pixels along a line, to either side of a crossing, on which it is looked at, where crossings are so far apart.
[[nodiscard]] double armFor(double spacing);
/// How sure a line is one of the sheet's and goes on to both sides, 0 to 1.
[[nodiscard]] double confidenceOf(const LineTrace& line, const LineLook& look);

struct CrossLines {
    std::optional<LineTrace> east, north;  ///< the line that runs east, and that which runs north
};
/// @param reach  its arm is not looked at: it goes by the spacing
[[nodiscard]] Result<CrossLines> traceLines(const GreyPicture& picture, const CrossSight& sight, Reach reach,
                                            double contrast);

struct CrossingTrace {
    PixelPoint at;
    double confidence = 0;  ///< by the worst of its four arms
    LineTrace east, north;
};
/// Traces both lines, goes to where they cut, and traces them there again.
/// @return nothing where one is not seen, or has no arm that is
[[nodiscard]] Result<std::optional<CrossingTrace>> traceCrossing(const GreyPicture& picture, const CrossSight& sight,
                                                                 Reach reach, const LineLook& look);
[[nodiscard]] bool isInside(const GreyPicture& picture, PixelPoint at);

}  // namespace crosstick::registration
