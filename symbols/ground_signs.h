#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// A ring with two rays to the limits of view and an arc between them, broken for the azimuths (engraving B1).
void placeViewpoint(Desk& desk, Subject& subject);
/// A thin circle of so many metres round a spot, its distance in a break.
void placeRangeRing(Desk& desk, Subject& subject);

/// One to four heads, their tips uphill, with the per cent beside them (engraving E7). From how many per cent on there
/// are two, three and four heads: army subcourse MP1028C, as trade.md has it; that one stands for 5 to 7 is from
/// memory.
void placeSlopeArrows(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
