#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// A ring with two rays to the limits of view and an arc between them, broken for the azimuths (engraving B1).
void placeViewpoint(Desk& desk, Subject& subject);
/// A thin circle of so many metres round a spot, its distance in a break.
void placeRangeRing(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
