#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// Both ends of the position, then the tips of the left and the right limit of fire (engraving B3).
void placeSupportByFire(Desk& desk, Subject& subject);
/// A shaft with an outlined head (engraving B2).
void placeMainAttack(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
