#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "core/registration/model.h"
#include "core/sheets/sheet_file.h"

namespace crosstick::registration {

/// A picture as a plan's sheet, placed by a fit in place of what its own file says: everything else as
/// sheets::sheetFrom(). A model that six numbers do not tell gives the placement that it has in the picture's middle,
/// which is good for the scale and not for work.
/// Errors: those of sheets::sheetFrom(), sheets/no-scale among them.
[[nodiscard]] Result<plan::Sheet> registeredSheet(sheets::FileReport report, const std::filesystem::path& file,
                                                  const Uuid& id, const Model& model, const std::string& crs,
                                                  std::optional<Scale> scale);
/// The sheet's scale: the given one, else what the file says or its dots to the inch come near; none where neither
/// does.
[[nodiscard]] std::optional<Scale> scaleOf(const sheets::FileReport& report, const Model& model, const std::string& crs,
                                           std::optional<Scale> given);

}  // namespace crosstick::registration
