#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

// Areas that are more than a closed line with a name (engraving B3).

/// An echelon mark in the edge where the enemy is.
void placeBattlePosition(Desk& desk, Subject& subject);
/// A circle with its number in the middle.
void placeKeyTerrainArea(Desk& desk, Subject& subject);
/// Ticks inward all round.
void placeDangerArea(Desk& desk, Subject& subject);
/// Hatched by lines rising to the right; crossed; crossed narrowly with its name.
void placeRestricted(Desk& desk, Subject& subject);
void placeSeverelyRestricted(Desk& desk, Subject& subject);
void placeNoGo(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
