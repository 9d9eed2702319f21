#pragma once

#include <filesystem>

#include "core/sheets/file_report.h"

class GDALDataset;

namespace crosstick::reading {

/// What a file says of itself; no pixel is read. Errors: as openForeign().
[[nodiscard]] Result<sheets::FileReport> inspect(const std::filesystem::path& file);
/// True where the way it is stored gave up something of the picture already.
[[nodiscard]] bool losesSomething(GDALDataset& dataset);

}  // namespace crosstick::reading
