#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// A closed line with its name inside, abbreviation over name; in one row where that fits better; outside by an
/// extension line where neither does (engraving B3).
void placeArea(Desk& desk, Subject& subject);

/// Where the largest circle inside a ring has its middle (GEOS), within 0.1 mm; the mean of the points where there is
/// none.
[[nodiscard]] Point poleOf(const Points& ring);
/// Is a box wholly inside a ring, by even-odd, with no edge crossing it?
[[nodiscard]] bool holds(const Points& ring, const TurnedBox& box);

}  // namespace crosstick::symbols
