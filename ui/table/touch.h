#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "ui/table/scene.h"

namespace crosstick::table {

/// A symbol or a label that is painted on the table.
struct Lying {
    plan::ItemId item;
    plan::FilmId film;
    symbols::Part::What what = symbols::Part::What::Symbol;
    bool isAside = false;                    ///< the symbol stands off its spot
    geodesy::PlanePoint at;                  ///< on the sheet's grid: the symbol's place, or the middle of the letters
    std::optional<plan::LegPiece> leg = {};  ///< whose figures they are
};

/// The symbol or label at a place of the sheet's grid: on the uppermost film, there the smallest that holds the place.
/// @param except  passed over  @param beside  how far beside a box still means it, on the ground
[[nodiscard]] std::optional<Lying> lyingAt(const std::vector<FilmInk>& films, geodesy::PlanePoint onGrid,
                                           const plan::ItemId& except, Metres beside);

}  // namespace crosstick::table
