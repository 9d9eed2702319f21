#pragma once

#include <string>
#include <vector>

#include "ui/table/view.h"

namespace crosstick::table {

/// Where a grid line meets the rim, and what stands there.
struct RimFigure {
    Metres line;         ///< the grid line's easting or northing
    double at = 0;       ///< logical pixels along the rim
    std::string figure;  ///< principal digits: "54", "542" on a 100 m grid
};

struct RimFigures {
    Metres interval;                   ///< of the lines that carry figures
    std::vector<RimFigure> eastings;   ///< along the upper rim, from the left
    std::vector<RimFigure> northings;  ///< along the left rim, from the bottom
};

/// Lines of the grid that a view shows. Where the printed lines come closer than `closest` pixels, each second, fifth,
/// tenth ... keeps its figure.
/// @param printed  distance of the sheet's printed grid lines
[[nodiscard]] RimFigures rimFigures(const View& view, Metres printed, double closest);

/// The figures by which a map reader calls a grid line, from the sheet's printed interval: 654000 is "54" on a 1 km
/// grid, 654200 "542" on one of 100 m, 650000 "5" on one of 10 km.
[[nodiscard]] std::string principalFigures(Metres line, Metres printed);

}  // namespace crosstick::table
