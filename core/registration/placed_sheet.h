#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "core/registration/model.h"
#include "core/sheets/foreign_reader.h"
#include "core/sheets/raster.h"

namespace crosstick::registration {

/// Where a registered picture's pixels lie when it has become a sheet of a grid.
struct PlacedSize {
    plan::Placement placement;
    int columns = 0, rows = 0;
};

/// As the picture lies, where six numbers tell it all; else straight to the grid, with pixels of the size that they
/// have in the picture's middle. Errors: registration/too-wide where the picture spreads over more than four times its
/// pixels (a projective fit that ends in a horizon, a quadratic one that runs away beyond its marks).
[[nodiscard]] Result<PlacedSize> placedSize(const Model& model, int columns, int rows);

/// Writes a picture as a GeoTIFF in RGB with tiles of 512 pixels, without loss: its own pixels where six numbers place
/// them, else each pixel once from the four round it in the picture; white where the picture does not reach. The file
/// appears whole or not at all.
/// @param raster  our copy of the picture  @param crs  projected  @param scale  goes with the file where it is known
/// Errors: registration/too-wide, registration/cannot-write, geodesy/unknown-crs, sheets/damaged, worker/stopped.
[[nodiscard]] Result<void> writePlaced(const sheets::Raster& raster, const Model& model, const std::string& crs,
                                       std::optional<Scale> scale, const std::filesystem::path& out,
                                       const sheets::Watch& watch = {});

}  // namespace crosstick::registration
