#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

// Arrows along a line from tail to tip (engraving B2, B3). All tips end exactly on the last point.

/// A shaft with an open V.
void placeAttack(Desk& desk, Subject& subject);
/// A shaft with an outlined head.
void placeMainAttack(Desk& desk, Subject& subject);
/// A shaft with a filled head.
void placeMovement(Desk& desk, Subject& subject);
/// The same with a thin shaft.
void placeFreeArrow(Desk& desk, Subject& subject);
/// A hollow arrow, open at its tail, name inside; the main one with a chevron in its head.
void placeAxis(Desk& desk, Subject& subject);
void placeMainAxis(Desk& desk, Subject& subject);
/// The same, wider, with its name written out: never the letters of an assembly area.
void placeAvenue(Desk& desk, Subject& subject);
/// Two thin sides closed by a point at the tip.
void placeCorridor(Desk& desk, Subject& subject);
/// Both ends of an arc that sags away from the kill zone, ticks on its back, an arrow from its middle.
void placeAmbush(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
