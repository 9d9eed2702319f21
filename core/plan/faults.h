#pragma once

#include "core/units/result.h"

namespace crosstick::plan {

inline constexpr FaultId kFilmPinned{"plan/film-pinned"};

}  // namespace crosstick::plan
