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
}  // namespace crosstick::symbols
