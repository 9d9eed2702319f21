#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

void placeCoordinationPoint(Desk& desk, Subject& subject);
void placeObservationPost(Desk& desk, Subject& subject);
void placeTargetReferencePoint(Desk& desk, Subject& subject);
void placeWords(Desk& desk, Subject& subject);
/// A kind this version does not know: its line thin and its name in words, so that nothing of a plan is hidden.
void placeUnknown(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
