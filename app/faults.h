#pragma once

#include "core/units/result.h"

namespace crosstick::app {

inline constexpr FaultId kBadAngle{"app/bad-angle"};
inline constexpr FaultId kGmNeedsDate{"app/gm-needs-date"};
inline constexpr FaultId kCannotRead{"app/cannot-read"};
inline constexpr FaultId kInTheWay{"app/in-the-way"};
inline constexpr FaultId kNoDisplay{"app/no-display"};

inline constexpr FaultId kLineUnknown{"app/line-unknown"};
inline constexpr FaultId kLineMisread{"app/line-misread"};
inline constexpr FaultId kLineNamesNothing{"app/line-names-nothing"};
inline constexpr FaultId kNoSuchColumn{"app/no-such-column"};

}  // namespace crosstick::app
