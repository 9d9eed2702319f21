#pragma once

#include <filesystem>
#include <string>

#include <QImage>

#include "sample-data/data_file.h"
#include "sample-data/ground/ground.h"
#include "sample-data/sheet/placed_name.h"

namespace crosstick::demo {

/// Where the demo's lists and the faces stand.
struct Sources {
    std::filesystem::path lists;  ///< share/crosstick/demo
    std::filesystem::path faces;  ///< share/crosstick/faces
};

struct PaintedSheet {
    QImage picture;  ///< 5552 x 5315 pixels at 300 dots to the inch
    std::vector<PlacedName> names;
};

/// The whole sheet. Needs a QGuiApplication. Errors: demo/no-data, demo/damaged-data.
[[nodiscard]] Result<PaintedSheet> paintSheet(const Ground& ground, const Island& island, const Sources& sources);

/// Brings a picture to the inks of the sheet's palette and writes it as a tiled, deflated palette GeoTIFF with the
/// sheet's facts (domain CROSSTICK). The same picture gives the same bytes. Errors: demo/cannot-write.
[[nodiscard]] Result<void> writeSheet(const QImage& picture, const std::filesystem::path& file);
/// The heights as a Float32 GeoTIFF in EPSG:32625. Errors: demo/cannot-write.
[[nodiscard]] Result<void> writeElevation(const Field<float>& heights, const std::filesystem::path& file);

}  // namespace crosstick::demo
