#pragma once

#include "core/drawing/path.h"

namespace crosstick::drawing {

struct Dash {
    double on, off;
};
inline constexpr Dash kPlanned{3.0, 1.5};
inline constexpr Dash kSmallOutline{1.6, 0.8};
inline constexpr Dash kAlternateRoute{5.0, 1.5};

/// Which vertices that turn more than 30 degrees get ink on them: those of a user's line only where a dash and a gap
/// fit on both sides, those of a constructed outline always.
enum class CornerRule { UsersLine, Outline };

/// A line as dashes, evened so that free ends and corners are inked (engraving A6). Half dashes that meet at a corner
/// are one piece; a closed line without corners joins its last and first half dash. The lengths are worked out on the
/// whole line: clip the pieces, never the line. A line shorter than a dash and a gap comes back whole, a line without
/// points as nothing. Laws: a line drawn backwards has the same ink; pieces are in order and do not overlap; every
/// length on paper is within 0.7 to 1.4 of the pattern where a stretch
///       holds two dashes and gaps.
[[nodiscard]] std::vector<Polyline> dashed(const Path& path, Dash dash, CornerRule rule);

/// Round dots of a diameter at an even pitch, both ends dotted: lines of no length for a pen with round caps.
[[nodiscard]] std::vector<Polyline> dotted(const Path& path, double pitch);

}  // namespace crosstick::drawing
