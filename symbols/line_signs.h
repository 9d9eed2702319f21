#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

// Lines with a pattern of their own (engraving B2).

/// Open teeth to the enemy's side, evened in every stretch between corners.
void placeObstacleLine(Desk& desk, Subject& subject);
/// Ticks on both sides, its name at both ends.
void placeDangerLine(Desk& desk, Subject& subject);
/// Two sides flared outward at both ends, its name between or beside.
void placeLane(Desk& desk, Subject& subject);
/// A line with its name in breaks, repeated on long ones; with heads along it where it is used one way.
void placeWay(Desk& desk, Subject& subject);
/// Two bars across a route at a spot.
void placeHalt(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
