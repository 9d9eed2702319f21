#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <string>

#include "core/plan/plan.h"
#include "core/sheets/elevation.h"

namespace crosstick::sheets {

/// A path as a plan has it: from the plan's folder where it is not whole.
[[nodiscard]] std::filesystem::path fromFolder(const std::filesystem::path& folder, const std::string& path);

/// The height model that a plan names for its first sheet.
struct HeightsNamed {
    std::string path;  ///< as the plan has it; empty where it names none
    HeightUnit unit = HeightUnit::Unclear;
    friend bool operator==(const HeightsNamed&, const HeightsNamed&) = default;
};
[[nodiscard]] HeightsNamed heightsNamedIn(const plan::Plan& plan);

/// Finds the file that a plan means by a path.
using FileFinder = std::function<std::filesystem::path(const std::string&)>;

/// The height model that goes with a plan's first sheet; null where it names none. Errors: those of Elevation::read().
[[nodiscard]] Result<std::shared_ptr<const Elevation>> heightsOf(const plan::Plan& plan, const FileFinder& finder,
                                                                 const ForeignReader& reader, const Watch& watch = {});

}  // namespace crosstick::sheets
