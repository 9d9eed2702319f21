#pragma once

#include "core/measures/unit_words.h"
#include "symbols/sketch.h"

namespace crosstick::symbols {

/// A unit symbol's frame round 0, 0 in multiples of the symbol height, y down (engraving C1; proportions as
/// trade.md 3.1 has them, from memory).
struct UnitFrame {
    measures::Affiliation affiliation;
    Points outline;
    double a, b;  ///< the corner that diagonals run to
    double top;
    [[nodiscard]] double halfWidth(double y) const;
    [[nodiscard]] bool isRound() const { return affiliation == measures::Affiliation::Unknown; }
};
[[nodiscard]] UnitFrame unitFrame(measures::Affiliation affiliation);

}  // namespace crosstick::symbols
