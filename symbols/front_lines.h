#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// Half circles of about 3.0 on every stretch between corners, bulging to the enemy's side; no base line (engraving
/// B2).
void placeFrontLine(Desk& desk, Subject& subject);
/// A line with "LC" at both ends; where it is asked for, two rows of half circles in its place, each bulging to the
/// other side's force, ours in our pen and theirs in the enemy's.
void placeContactLine(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
