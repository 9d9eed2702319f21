#pragma once

#include <vector>

#include "core/plan/sheet.h"
#include "core/sheets/raster.h"

namespace crosstick::sheets {

/// Where the map ends on a sheet and its collar begins, as the ends of its printed grid lines tell: every line is
/// followed over the paper, a straight edge is laid through the ends on each side, and where a dark line is printed
/// within 2.5 mm of that edge, the edge is laid on it.
/// @param copy  of the sheet in our cache  @param interval  of the grid that the sheet prints
/// @returns  four corners in pixels of the raster, going round from the north-west
/// Accuracy: half a pixel of 0.17 mm where the neatline is printed, else 0.5 mm of paper.
/// Errors: sheets/no-neatline where on a side fewer than three lines end on one straight edge; sheets/damaged.
[[nodiscard]] Result<std::vector<plan::RasterSpot>> proposeNeatline(const Raster& copy, const plan::Sheet& sheet,
                                                                    Metres interval);

/// Corners set by hand, brought inside the raster.
/// Errors: sheets/neatline-crosses for fewer than three, edges that cross, or an area under a hundredth of the raster.
[[nodiscard]] Result<std::vector<plan::RasterSpot>> soundNeatline(std::vector<plan::RasterSpot> corners,
                                                                  const plan::Sheet& sheet);

}  // namespace crosstick::sheets
