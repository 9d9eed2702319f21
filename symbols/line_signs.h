#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

// Lines with a pattern of their own (engraving B2).

/// Half circles of about 3.0 on every stretch between corners, bulging to the enemy's side; no base line.
void placeFrontLine(Desk& desk, Subject& subject);
/// Open teeth to the enemy's side, evened in every stretch between corners.
void placeObstacleLine(Desk& desk, Subject& subject);
/// Ticks on both sides, its name at both ends.
void placeDangerLine(Desk& desk, Subject& subject);
/// Two sides flared outward at both ends, its name between or beside.
void placeLane(Desk& desk, Subject& subject);
/// A line with its name in breaks, repeated on long ones.
void placeWay(Desk& desk, Subject& subject);
/// Two bars across a route at a spot.
void placeHalt(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
