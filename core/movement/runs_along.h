#pragma once

#include <string>
#include <vector>

#include "core/movement/route_figures.h"

namespace crosstick::movement {

/// A stretch on which a route runs beside a line.
struct RunAlong {
    plan::ItemId line;
    std::string label;      ///< "MSR OAK"
    int leg = 1;            ///< number of the leg on which it begins
    Metres mapFrom, mapTo;  ///< from the first stop
    Metres mapFromLast;     ///< its beginning, from the last route point before it
};

// Our own figures, no doctrine: a hand-drawn line and a route that follows the same road lie as far apart as pencils
// do.
inline constexpr Metres kBeside{20};  ///< 0.8 mm at 1:25,000
inline constexpr Metres kShortestRun{100};
inline constexpr Degrees kAlike{20};  ///< the most that their directions differ by

/// Where the legs stay beside a line that crossings() would tell of: no farther off than kBeside, in its direction
/// within kAlike (either way), for kShortestRun or more. In the order in which they begin.
/// Errors: geodesy::PlaneLink's.
[[nodiscard]] Result<std::vector<RunAlong>> runsAlong(const plan::Plan& plan, const RouteFigures& figures);

}  // namespace crosstick::movement
