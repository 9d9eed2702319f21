#pragma once

#include <string>
#include <vector>

#include <QColor>
#include <QPainterPath>

#include "sample-data/data_file.h"
#include "sample-data/ground/island.h"

namespace crosstick::demo {

struct Canvas;

/// Which ground a name must stand on.
enum class Footing { Land, Sea, Lake };

/// A name of the sheet with the place it has found.
struct PlacedName {
    std::string text;
    QPainterPath letters;  ///< millimetres of paper
    QColor colour;
    double rim = 0.25;  ///< millimetres
    Footing footing = Footing::Land;
};

/// Finds a place for every name of names.json but the island's own: near the point or on the line it belongs to, inside
/// the neat line, clear of what is taken and of other names, on its own side of the shore, over as little of what is
/// drawn as may be. Names that find no clear place at all are left out. Order: as in the list.
[[nodiscard]] std::vector<PlacedName> placeNames(const Canvas& canvas, const Json& names, const Island& island);

}  // namespace crosstick::demo
