#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// All routes of a film together, since they share legs (engraving E): lines, heads, then, in a second step when all
/// symbols stand, the labels of legs and the names.
void drawRoutes(Desk& desk, const std::vector<Subject*>& routes);
void letterRoutes(Desk& desk, const std::vector<Subject*>& routes);
/// The names and the figures of legs that a hand placed, before anything else is.
void letterRoutesByHand(Desk& desk, const std::vector<Subject*>& routes);

/// Directions in which the shown routes leave a spot, as their ink runs beside a box that stands there: on its way to a
/// shared stretch's lane, round a bend that lies near.
[[nodiscard]] std::vector<Vector> legsAt(Point spot, const std::vector<Subject*>& routes);

}  // namespace crosstick::symbols
