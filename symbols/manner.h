#pragma once

#include "symbols/sketch.h"

namespace crosstick::symbols {

/// Does a measure stand by itself, or is it a stop of a shown route?
enum class Place { ByItself, OnRoute };

/// Ink, dashes and halo of a measure by its side, its standing, the catalogue's colour, and the pens there are
/// (engraving A6, A17; colours: trade.md 1.3).
[[nodiscard]] Manner mannerOf(const plan::Measure& measure, Place place, const Engraving& engraving);
[[nodiscard]] Manner routeManner(const Engraving& engraving);

}  // namespace crosstick::symbols
