#pragma once

#include "sample-data/data_file.h"
#include "sample-data/sheet/canvas.h"

namespace crosstick::demo {

// The themes of the sheet in the order they are drawn. Each takes what it needs from cover.json or names.json.
void drawTints(const Canvas& canvas, const Json& cover);       ///< sea, land, woods, shading
void drawVegetation(const Canvas& canvas, const Json& cover);  ///< tree signs, marsh, sand, pasture
void drawRelief(const Canvas& canvas, const Json& cover);      ///< contours, cliffs, quarry, scree
void drawWater(const Canvas& canvas, const Json& cover);       ///< shore, lake, brooks, harbour
void drawWays(const Canvas& canvas, const Json& cover);        ///< walls, paths, tracks, roads, crossings, power line
void drawBuildings(const Canvas& canvas, const Json& cover);   ///< houses, works, chapel, sheepfolds, cairns, mast
void drawSpotHeights(const Canvas& canvas, const Island& island);
void drawNames(const Canvas& canvas, const Json& names, const Island& island);
void drawGrid(const Canvas& canvas);  ///< kilometre grid, its figures, square letters, frame, minutes
/// Title, scale bar, check bars, legend, declination diagram and the rest outside the neat line.
void drawCollar(const Canvas& canvas);

}  // namespace crosstick::demo
