#pragma once

#include "app/command.h"
#include "core/sheets/plan_ground.h"

namespace crosstick::app {

/// Finds the files of a plan's ground: where the plan says, else inside the plan, from which they are taken into the
/// cache.
[[nodiscard]] sheets::FileFinder groundFinder(const std::filesystem::path& plan, const Surroundings& surroundings);

}  // namespace crosstick::app
