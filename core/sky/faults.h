#pragma once

#include "core/units/result.h"

namespace crosstick::sky {

inline constexpr FaultId kDateOutside{"sky/date-outside"};

}  // namespace crosstick::sky
