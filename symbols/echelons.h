#pragma once

#include <optional>
#include <string_view>

#include "symbols/desk.h"

namespace crosstick::symbols {

/// Team to division, the higher the larger.
struct Echelon {
    int rank;
    std::string_view word;  ///< in files: "plt"
    std::string_view name;  ///< on film, where a unit is written out: "PLT"
};
[[nodiscard]] std::optional<Echelon> echelonOf(std::string_view word);
/// Width of the mark along its line (engraving C2).
[[nodiscard]] double echelonWidth(const Echelon& echelon, double e, double pen);
/// The mark, its row running along u: dots along it, bars square to it.
void drawEchelon(Pencil& pencil, const Echelon& echelon, Point middle, Vector u, double e);

}  // namespace crosstick::symbols
