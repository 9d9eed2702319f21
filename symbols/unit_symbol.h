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
    double under = 0;           ///< foot of the frame, or of the words that stand under its middle

    [[nodiscard]] drawing::Box whole() const { return drawing::extent(ink).joined(drawing::extent(letters)); }
};
[[nodiscard]] UnitSketch sketchUnit(const measures::UnitSymbol& unit, const Manner& manner,
                                    const drawing::Gauge& gauge);

/// The symbol that a measure's words compose, in the colour of the side it is found to be on.
[[nodiscard]] UnitSketch sketchUnit(Desk& desk, Subject& subject);

/// Where an extension line leaves a frame: its bottom's middle toward a spot nearly straight down, else where the line
/// from the middle to the spot meets it.
[[nodiscard]] Point lineStart(const UnitSketch& sketch, Vector toSpot);
/// Inks a sketched symbol with the middle of its frame at a place, which is taken from then on.
void layUnit(Desk& desk, Subject& subject, UnitSketch sketch, Point centre);

/// Composed from the measure's words; its frame's middle, or the foot of its staff, on the spot; else aside by an
/// extension line. With the units of its row, or where its extension line ends on an edge: see placeRow.
void placeUnit(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
