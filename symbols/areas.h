#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// A closed line with its name inside, abbreviation over name; in one row where that fits better; outside by an
/// extension line where neither does (engraving B3).
void placeArea(Desk& desk, Subject& subject);

/// The edge of an area in the order and form it is drawn in, made the subject's points.
[[nodiscard]] drawing::Polyline areaEdge(Subject& subject);
/// The ring that hatching and combs keep to: the edge, or its inner stroke where that is doubled.
[[nodiscard]] Points insideRing(const Subject& subject, const Points& ring);
/// Inked in the manner's pattern.
/// @param gaps  stretches of the edge left out, from its western point on
void inkEdge(Desk& desk, Subject& subject, const drawing::Polyline& edge,
             const std::vector<drawing::Stretch>& gaps = {});
/// The name inside, else outside by an extension line; the box it stands in, nothing where it has none or no room.
std::optional<TurnedBox> nameArea(Desk& desk, Subject& subject, const drawing::Polyline& edge,
                                  const std::vector<Label>& wordings);
/// What an area may be called, the best first: abbreviation over name, in one row.
[[nodiscard]] std::vector<Label> areaWordings(const plan::Measure& measure, double letters);

/// Is a box wholly inside a ring, by even-odd, with no edge crossing it?
[[nodiscard]] bool holds(const Points& ring, const TurnedBox& box);

}  // namespace crosstick::symbols
