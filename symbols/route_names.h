#pragma once

#include "symbols/route_lines.h"

namespace crosstick::symbols {

/// Letters along a piece of a route, 1.3 off its axis, sliding to where they have room; false where they have none.
/// @param sides  +1: left of travel; the first that has room
/// @param crossed  Never: nor in a row with other letters
[[nodiscard]] bool writeBeside(Desk& desk, Subject& route, const RoutePiece& piece, const Label& label,
                               const std::vector<double>& sides, Crossed crossed);

/// The route's name beside what is its own: on every stretch that is seen, on each share of it that has a clear place
/// (engraving A11); by an extension line where a long stretch has none.
void nameRoute(Desk& desk, Subject& route, const std::vector<RoutePiece>& pieces);
/// The name that a hand placed; nothing where none did.
void nameRouteByHand(Desk& desk, Subject& route);

}  // namespace crosstick::symbols
