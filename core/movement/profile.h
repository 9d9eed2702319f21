#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/movement/crossings.h"
#include "core/movement/work_grid.h"

namespace crosstick::movement {

/// A place on the way with the height of the ground there.
struct ProfileSpot {
    Metres ground;                 ///< from the first stop
    geodesy::PlanePoint onGrid;    ///< in the grid of the work
    std::optional<Metres> height;  ///< nothing where the model has none
};

/// A route point, or a line that is crossed.
struct ProfileMark {
    enum class Kind { RoutePoint, Line };
    Kind kind = Kind::RoutePoint;
    std::string label;
    Metres ground;
    std::optional<Metres> height;
};

/// A part of the way that is steep from its beginning to its end, in one direction.
struct SteepPart {
    Metres from, to;
    double steepest = 0;  ///< rise over run, negative downhill
};

/// From here on a part counts as steep: the steepest class of a route film's slope arrows (trade.md 4.4).
inline constexpr double kSteep = 0.14;

/// The ground along a route's legs.
struct Profile {
    std::string route;
    std::vector<ProfileSpot> spots;  ///< every 25 m at most, at every bend, and at contours read by hand
    std::vector<ProfileMark> marks;  ///< in the order in which they are met
    std::vector<SteepPart> steep;
    std::optional<Metres> climb, descent;  ///< the figures', unknown where any height is
    Metres lowest, highest;
    bool fromContours = false;  ///< some heights were read off the sheet by hand
};

/// Heights at the places that climb and descent are summed over, so that both agree: the model's, and where it has
/// none those between the contours that somebody read along the route.
/// @param heights  null: by contours alone
/// Errors: movement/no-heights where none of them has a height; those of crossings().
[[nodiscard]] Result<Profile> profileOf(const plan::Plan& plan, const RouteFigures& figures,
                                        const sheets::HeightSource* heights);

}  // namespace crosstick::movement
