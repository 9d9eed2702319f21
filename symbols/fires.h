#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// Both ends of the position, then the tips of the left and the right limit of fire (engraving B3).
void placeSupportByFire(Desk& desk, Subject& subject);
/// Both ends of the position, then a point on the enemy: one arrow from the bar's middle.
void placeAttackByFire(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
