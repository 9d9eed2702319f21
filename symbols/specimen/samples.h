#pragma once

#include "core/measures/catalogue.h"
#include "symbols/specimen/stage.h"

namespace crosstick::symbols {

/// How much room a measure's sample takes on a page, in millimetres.
[[nodiscard]] drawing::Point sampleSize(const measures::Entry& entry);
/// A measure of a kind with an invented name, laid so that it fills its room; the unit side left, the enemy right.
[[nodiscard]] Exhibit sample(const measures::Entry& entry, drawing::Point size);
/// An invented column, for the block of an order of march.
[[nodiscard]] plan::Force marching();
/// A closed line without corners, as a hand draws one.
[[nodiscard]] std::vector<drawing::Point> blob(drawing::Point middle, double halfWide, double halfHigh);
/// A line that swings once up and once down.
[[nodiscard]] std::vector<drawing::Point> swing(drawing::Point from, drawing::Point to, double by);

}  // namespace crosstick::symbols
