#pragma once

#include <filesystem>
#include <memory>
#include <string>

#include "core/units/result.h"

class GDALDataset;

namespace crosstick::sheets {

struct CloseDataset {
    void operator()(GDALDataset* dataset) const;
};
using DatasetPtr = std::unique_ptr<GDALDataset, CloseDataset>;

/// What GDAL says while this lives goes here and not to stderr; the last words are kept for an error.
class QuietGdal {
  public:
    QuietGdal();
    ~QuietGdal();
    QuietGdal(const QuietGdal&) = delete;
    QuietGdal& operator=(const QuietGdal&) = delete;
    /// What went wrong with a file, without its name.
    [[nodiscard]] std::string lastWords(const std::filesystem::path& file) const;
};

/// Opens a GeoTIFF and nothing else: no other driver is even registered, so no other parser meets foreign bytes.
/// Errors: sheets/file-missing, sheets/not-a-raster, sheets/too-large (over 100,000 pixels a side or 4 gigapixels),
///         sheets/block-too-large (a strip or tile of over 256 MB unpacked, which must be held whole).
[[nodiscard]] Result<DatasetPtr> openGeoTiff(const std::filesystem::path& file);

/// The dataset's CRS as "EPSG:n" where the file says so or PROJ is sure of it, else as WKT 2; empty where it has none.
[[nodiscard]] std::string crsText(GDALDataset& dataset);

/// Why a file's CRS cannot carry work: in degrees (sheets/crs-geographic), or what geodesy said, with the file.
[[nodiscard]] Error crsFault(const Error& fault, const std::filesystem::path& file, const std::string& crs);

}  // namespace crosstick::sheets
