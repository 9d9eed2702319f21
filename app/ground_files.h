#pragma once

#include "app/command.h"
#include "core/sheets/plan_ground.h"
#include "core/sheets/raster.h"

namespace crosstick::app {

/// Finds the files of a plan's ground: where the plan says, else inside the plan, from which they are taken into the
/// cache.
[[nodiscard]] sheets::FileFinder groundFinder(const std::filesystem::path& plan, const Surroundings& surroundings);

/// The height model of a plan's first sheet; null where it names none. Errors: those of sheets::heightsOf().
[[nodiscard]] Result<std::shared_ptr<const sheets::Elevation>> heightsFor(const plan::Plan& plan,
                                                                          const std::filesystem::path& file,
                                                                          const Surroundings& surroundings);
/// Our copy of one of its sheets, open. Errors: those of sheets::ForeignReader::sheet().
[[nodiscard]] Result<sheets::Raster> sheetFor(const plan::Sheet& sheet, const std::filesystem::path& file,
                                              const Surroundings& surroundings);

}  // namespace crosstick::app
