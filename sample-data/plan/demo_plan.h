#pragma once

#include <filesystem>

#include "core/plan/plan.h"
#include "core/units/result.h"

namespace crosstick::demo {

/// The plan of Exercise SLOW KETTLE from its lists, on a sheet that lies beside it. The same lists give the same plan,
/// down to its identities. Errors: demo/no-data, demo/damaged-data.
[[nodiscard]] Result<plan::Plan> demoPlan(const std::filesystem::path& lists, plan::Sheet sheet);

}  // namespace crosstick::demo
