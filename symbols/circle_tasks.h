#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

// Tasks round or across a place (engraving B4): two diagonals, or a circle with a gap that runs clockwise.

void placeDestroy(Desk& desk, Subject& subject);
void placeNeutralize(Desk& desk, Subject& subject);
void placeInterdict(Desk& desk, Subject& subject);
void placeSecure(Desk& desk, Subject& subject);
void placeOccupy(Desk& desk, Subject& subject);
void placeRetain(Desk& desk, Subject& subject);
void placeIsolate(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
