#pragma once

#include "symbols/route_lines.h"

namespace crosstick::symbols {

/// Number, azimuth and distance beside each piece of a route's legs (engraving E4), where its figures are known: "3
/// 031  980 m" for a leg of one piece, "4a  043  260 m" for the pieces of one with bends; the number alone where there
/// is no room for more, and by an extension line where there is none beside the piece.
void letterLegs(Desk& desk, Subject& route, const std::vector<RoutePiece>& pieces);
/// Those that a hand placed, before anything else is; letterLegs() leaves them out. In the open they say all of it,
/// however short their piece is; far from it they are tied to it.
void letterLegsByHand(Desk& desk, Subject& route, const std::vector<RoutePiece>& pieces);

}  // namespace crosstick::symbols
