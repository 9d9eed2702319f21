#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

// Tasks with bars and arrows (engraving B4). Anchors in the catalogue's order; letters upright in a break; anchors too
// near each other give the task in words.

void placeBlock(Desk& desk, Subject& subject);
void placeBreach(Desk& desk, Subject& subject);
void placeCanalize(Desk& desk, Subject& subject);
void placeBypass(Desk& desk, Subject& subject);
void placeClear(Desk& desk, Subject& subject);
void placeDisrupt(Desk& desk, Subject& subject);
void placeFix(Desk& desk, Subject& subject);
void placeSecurity(Desk& desk, Subject& subject);
void placeWithdraw(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
