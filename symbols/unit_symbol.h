#pragma once

#include "core/measures/unit_words.h"
#include "symbols/desk.h"

namespace crosstick::symbols {

/// A unit symbol by itself round the middle of its frame at 0, 0: frame, icons, echelon mark, amplifiers, staff, arrow
/// (engraving C).
struct UnitSketch {
    drawing::Drawing ink;
    drawing::Drawing letters;
    drawing::Box frame;         ///< of the frame's ink
    Points outline;             ///< of the frame, millimetres
    std::optional<Point> foot;  ///< of a headquarters' staff: that is the place
};
[[nodiscard]] UnitSketch sketchUnit(const measures::UnitSymbol& unit, const Manner& manner,
                                    const drawing::Gauge& gauge);

/// Composed from the measure's words; its frame's middle, or the foot of its staff, on the spot; else aside by an
/// extension line.
void placeUnit(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
