#pragma once

#include <filesystem>
#include <vector>

#include "core/plan/sheet.h"
#include "core/worker/child.h"

namespace crosstick::sheets {

/// Looks for a sheet's file that is not where the plan says: the same size and SHA-256, whatever its name, in these
/// folders and three levels below them. At most 20,000 files are looked at; hidden folders and links are passed over.
/// @return nothing where there is none, or whoever waits stopped it
[[nodiscard]] std::filesystem::path findAgain(const plan::Sheet& sheet,
                                              const std::vector<std::filesystem::path>& folders,
                                              const worker::IsStopped& isStopped = {});

}  // namespace crosstick::sheets
