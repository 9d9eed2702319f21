#pragma once

#include "core/units/result.h"

namespace crosstick::march {

inline constexpr FaultId kBadStrength{"march/bad-strength"};  ///< a number of people
inline constexpr FaultId kBadGap{"march/bad-gap"};            ///< metres between people or elements
inline constexpr FaultId kBadFiles{"march/bad-files"};

}  // namespace crosstick::march
