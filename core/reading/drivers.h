#pragma once

#include <filesystem>

#include "core/sheets/dataset.h"

namespace crosstick::reading {

/// Registers the readers of sheets and height models and nothing else (GeoTIFF, PNG, JPEG, BMP, WebP, PDF, DTED, HGT,
/// ASCII grid), takes the network away from GDAL, and sets what may be held in memory. Once, before the first file.
void prepareDrivers();

/// Opens a foreign file's first page. Errors: sheets/file-missing, sheets/not-a-raster, sheets/too-large (over 100,000
/// pixels a side or 4 gigapixels), sheets/block-too-large (a strip or tile of over 256 MB unpacked, which must be held
/// whole), worker/too-much-memory.
[[nodiscard]] Result<sheets::DatasetPtr> openForeign(const std::filesystem::path& file);

/// Did a decoder say, and go on all the same, that pixels are missing? Half a picture is damage, too.
[[nodiscard]] bool isBroken(const sheets::QuietGdal& quiet);
/// Why the last call failed: out of memory, or the file's damage with the library's words.
[[nodiscard]] Error damage(const sheets::QuietGdal& quiet, const std::filesystem::path& file);

}  // namespace crosstick::reading
