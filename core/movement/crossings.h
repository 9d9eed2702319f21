#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/movement/route_figures.h"

namespace crosstick::movement {

/// Where a route meets a line measure on the way.
struct Crossing {
    plan::ItemId line;
    std::string label;             ///< "PL BODKIN"
    geodesy::PlanePoint at;        ///< in the grid of the work
    int leg = 1;                   ///< number of the leg it falls on
    Metres mapSoFar, groundSoFar;  ///< from the first stop
    Metres mapFromLast;            ///< from the last route point before it
    std::optional<Minutes> timeSoFar;
    std::optional<Instant> arrival;  ///< head of the column, the second begun
};

/// Boundaries, phase lines, lines of departure, limits of advance and ways of others that the legs cross or touch, in
/// the order in which they are met. Lines count that lie on a film that shows the route; where no film shows it, those
/// on any film.
///
/// A line touched at a vertex (its own or the route's) counts once; one that the route runs along counts where they
/// meet. Accuracy: a line nearer than 1 micrometre is met; meetings of the same line less than 1 mm apart are one.
/// Errors: geodesy::PlaneLink's. A line of which a point does not reach the grid of the work is left out.
[[nodiscard]] Result<std::vector<Crossing>> crossings(const plan::Plan& plan, const RouteFigures& figures);

}  // namespace crosstick::movement
