#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "core/plan/sheet.h"
#include "core/sheets/foreign_reader.h"
#include "core/units/result.h"

namespace crosstick::sheets {

/// What is known of a sheet besides what its file says.
struct GivenFacts {
    std::optional<Scale> scale;  ///< instead of the file's
    std::string crs;             ///< instead of the file's; empty: the file's
};

/// What a file says of itself, as a new sheet of a plan: CRS, placement (in metres whatever the axis unit), size;
/// series, name, number, edition, datum, printed G-M angle and height model from its metadata items in the domain
/// "CROSSTICK" (SERIES, NAME, NUMBER, EDITION, SCALE, DATUM, GM_ANGLE_DEG, GM_DATE, GM_YEARLY_DEG, ELEVATION) where it
/// has them. The scale is the given one, else the metadata's, else what pixel size and dots to the metre give if that
/// lies within 1 % of a usual map scale. Errors: sheets/damaged, sheets/no-crs, sheets/crs-geographic,
/// sheets/no-placement, sheets/no-scale, geodesy/unknown-crs.
[[nodiscard]] Result<plan::Sheet> sheetFrom(const FileReport& report, const std::filesystem::path& file, const Uuid& id,
                                            const GivenFacts& given = {});
/// The same for a file, with its size and SHA-256. Errors: those of ForeignReader::inspect() besides.
[[nodiscard]] Result<plan::Sheet> describeSheet(const ForeignReader& reader, const std::filesystem::path& file,
                                                const Uuid& id, const GivenFacts& given = {}, const Watch& watch = {});

/// SHA-256 of a file, read in pieces. Errors: sheets/file-missing, sheets/damaged.
[[nodiscard]] Result<std::string> fileSha256(const std::filesystem::path& file);

}  // namespace crosstick::sheets
