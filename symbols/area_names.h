#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// The name inside, else outside by an extension line; the box it stands in, nothing where it has none or no room.
std::optional<TurnedBox> nameArea(Desk& desk, Subject& subject, const drawing::Polyline& edge,
                                  const std::vector<Label>& wordings);
/// What an area may be called, the best first: abbreviation over name, in one row.
[[nodiscard]] std::vector<Label> areaWordings(const plan::Measure& measure, double letters);

/// Does a place lie inside a ring, by even-odd?
[[nodiscard]] bool contains(const Points& ring, Point p);
/// Is a box wholly inside a ring, by even-odd, with no edge crossing it?
[[nodiscard]] bool holds(const Points& ring, const TurnedBox& box);

}  // namespace crosstick::symbols
