#pragma once

#include "core/registration/model.h"
#include "core/sheets/raster.h"

namespace crosstick::registration {

/// A window of a picture laid straight to the grid: each pixel from the four that lie round its middle's place in the
/// picture, white outside. The places are computed for every 16th pixel and go straight between: for a photo of a sheet
/// within a hundredth of a pixel.
/// @param placement  of the new raster  @param window  in its pixels
/// Errors: those of sheets::Raster::read().
[[nodiscard]] Result<sheets::Pixels> resampled(const sheets::Raster& raster, const Model& model,
                                               const plan::Placement& placement, sheets::PixelWindow window);

}  // namespace crosstick::registration
