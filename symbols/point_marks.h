#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

// Symbols on one spot that are no action boxes (engraving B1).

void placeContactPoint(Desk& desk, Subject& subject);
void placeCoordinationPoint(Desk& desk, Subject& subject);
void placeDecisionPoint(Desk& desk, Subject& subject);
void placeObservationPost(Desk& desk, Subject& subject);
void placeTargetReferencePoint(Desk& desk, Subject& subject);
void placeCriticalPoint(Desk& desk, Subject& subject);
void placeKeyTerrain(Desk& desk, Subject& subject);
void placeWaypoint(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
