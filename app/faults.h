#pragma once

#include "core/units/result.h"

namespace crosstick::app {

inline constexpr FaultId kBadAngle{"app/bad-angle"};
inline constexpr FaultId kGmNeedsDate{"app/gm-needs-date"};
inline constexpr FaultId kCannotRead{"app/cannot-read"};
inline constexpr FaultId kInTheWay{"app/in-the-way"};
inline constexpr FaultId kNoDisplay{"app/no-display"};

}  // namespace crosstick::app
