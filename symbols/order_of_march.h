#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// The block of a column on the film's paper (engraving D1): units in their order, the head on top, intervals between,
/// an arrow in the direction of march. Its upper left corner is the measure's place, moved no farther than the window
/// asks. Tied to a route, a line runs from its edge to the route (D2), and the arrow's azimuth is that of the route's
/// first leg where no other is given.
void placeOrderOfMarch(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
