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

/// Where a file of ours says that it is one.
inline constexpr const char* kOwnDomain = "CROSSTICK";
/// What a copy of a sheet is, and in which form: another form gets another number.
inline constexpr const char* kPyramidKind = "pyramid 1";

/// What GDAL says while this lives goes here and not to stderr; the last words are kept for an error.
class QuietGdal {
  public:
    QuietGdal();
    ~QuietGdal();
    QuietGdal(const QuietGdal&) = delete;
    QuietGdal& operator=(const QuietGdal&) = delete;
    /// What went wrong with a file, without its name.
    [[nodiscard]] std::string lastWords(const std::filesystem::path& file) const;
    /// Everything that was said, a line each, up to a few thousand letters.
    [[nodiscard]] const std::string& everything() const { return said_; }

  private:
    std::string said_;
};

/// Opens a tiled TIFF that a reader of ours wrote into the cache. No other driver is registered in this process and no
/// foreign file is opened in it.
/// Errors: sheets/damaged where it is none of ours, or none any more.
[[nodiscard]] Result<DatasetPtr> openOwn(const std::filesystem::path& file);

}  // namespace crosstick::sheets
