#pragma once

#include <filesystem>
#include <functional>
#include <optional>

#include "core/sheets/file_report.h"
#include "core/sheets/messages.h"

class GDALDataset;

namespace crosstick::reading {

/// Told how far a long task is.
using Tell = std::function<void(sheets::messages::Progress)>;

/// What a file says of the heights in it; nothing where its values are colours. The unit comes from the band, from a
/// vertical part of the CRS, or from the format: DTED (MIL-PRF-89020) and HGT count metres.
[[nodiscard]] std::optional<sheets::HeightFacts> heightFacts(GDALDataset& dataset);

/// Writes a height model as a file of ours: floats in metres, not-a-number where there is none, with the CRS as text.
/// Errors: as openForeign(); sheets/no-crs, sheets/no-placement, sheets/height-unit where neither the file nor the
/// order says it, sheets/too-large over 100 million cells, sheets/damaged, sheets/no-room.
[[nodiscard]] Result<void> copyHeights(const sheets::messages::Order& order, const Tell& tell);

}  // namespace crosstick::reading
