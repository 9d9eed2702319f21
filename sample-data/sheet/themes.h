#pragma once

#include "sample-data/data_file.h"
#include "sample-data/sheet/canvas.h"
#include "sample-data/sheet/placed_name.h"

namespace crosstick::demo {

// The themes of the sheet in the order they are drawn. Each takes what it needs from cover.json or names.json.
void drawTints(const Canvas& canvas, const Json& cover);       ///< sea, land, woods, shading
void drawVegetation(const Canvas& canvas, const Json& cover);  ///< tree signs, marsh, sand, pasture
///< contours, cliffs, quarry, scree
void drawRelief(const Canvas& canvas, const Json& cover, const Island& island);
void drawWater(const Canvas& canvas, const Json& cover);      ///< shore, lake, brooks, harbour
void drawFields(const Canvas& canvas, const Json& cover);     ///< field walls
void drawWays(const Canvas& canvas, const Json& cover);       ///< walls, paths, tracks, roads, crossings, power line
void drawBuildings(const Canvas& canvas, const Json& cover);  ///< houses, works, chapel, sheepfolds, cairns, mast
void drawSpotHeights(const Canvas& canvas, const Island& island);
void drawIslandName(const Canvas& canvas, const Json& names);
void drawNames(const Canvas& canvas, const std::vector<PlacedName>& names);
void drawGrid(const Canvas& canvas);  ///< kilometre grid, its figures, square letters, frame, minutes
/// Title, scale bar, check bars, legend, declination diagram and the rest outside the neat line.
void drawCollar(const Canvas& canvas);

}  // namespace crosstick::demo
