#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

void placeWords(Desk& desk, Subject& subject);
/// Words in a thin frame, 2.0 round them.
void placeBoxedWords(Desk& desk, Subject& subject);
/// A task that is not drawn with certainty: its words over a rule, an extension line from the rule to the spot.
void placeTaskInWords(Desk& desk, Subject& subject);
/// The same for a task whose anchors are too near each other for its sign.
void taskInWords(Desk& desk, Subject& subject, Point spot);
/// A kind this version does not know: its line thin and its name in words, so that nothing of a plan is hidden.
void placeUnknown(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
