#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// A closed line with its name inside, abbreviation over name; in one row where that fits better; outside by an
/// extension line where neither does (engraving B3).
void placeArea(Desk& desk, Subject& subject);

/// Is a box wholly inside a ring, by even-odd, with no edge crossing it?
[[nodiscard]] bool holds(const Points& ring, const TurnedBox& box);

}  // namespace crosstick::symbols
