#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// A line with its name at both ends (engraving A12): draws the line, broken where a label stands in it, and letters
/// it.
void placeNamedLine(Desk& desk, Subject& subject, const std::vector<std::string>& rows);
/// Rows for a phase line, a line of departure and their like.
[[nodiscard]] std::vector<std::string> lineRows(const plan::Measure& measure);

}  // namespace crosstick::symbols
