#pragma once

#include <string>
#include <vector>

#include "ui/table/view.h"

namespace crosstick::table {

enum class GridLines { Eastings, Northings };  ///< lines of one easting run north

/// A line of the grid as a view shows it, from one end to the other.
struct GridLine {
    GridLines kind;
    Spot from, to;
};

/// Where a grid line meets the rim, and what stands there.
struct RimFigure {
    Metres line;         ///< the grid line's easting or northing
    double at = 0;       ///< logical pixels along the rim
    std::string figure;  ///< principal digits: "54", "542" on a 100 m grid
};

struct RimFigures {
    Metres interval;               ///< of the lines that carry figures
    GridLines above;               ///< which lines have their figures along the upper rim: those that run more upright
    std::vector<RimFigure> upper;  ///< along the upper rim, by rising coordinate
    std::vector<RimFigure> left;   ///< along the left rim, by rising coordinate
    std::vector<GridLine> lines;   ///< all that are seen, also those that meet neither rim
};

/// Where a line of the grid through a place meets the rim: pixels along the upper rim for the lines whose figures stand
/// there, along the left rim for the others.
[[nodiscard]] double onRim(const View& view, GridLines lines, Metres coordinate);
/// Which lines run more upright in a view.
[[nodiscard]] GridLines uprightLines(const View& view);

/// Lines of the grid that a view shows. Where the printed lines come closer than `closest` pixels, each second, fifth,
/// tenth ... keeps its figure.
/// @param printed  distance of the sheet's printed grid lines
[[nodiscard]] RimFigures rimFigures(const View& view, Metres printed, double closest);

/// The figures by which a map reader calls a grid line, from the sheet's printed interval: 654000 is "54" on a 1 km
/// grid, 654200 "542" on one of 100 m, 650000 "5" on one of 10 km.
[[nodiscard]] std::string principalFigures(Metres line, Metres printed);

}  // namespace crosstick::table
