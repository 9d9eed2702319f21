#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

// Ways over water: a spot, then a direction across it (engraving B1).

/// Two dashed bars.
void placeFord(Desk& desk, Subject& subject);
/// Two bars with wings.
void placeBridge(Desk& desk, Subject& subject);
/// A boat's outline on a dashed line.
void placeFerry(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
