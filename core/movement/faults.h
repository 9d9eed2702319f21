#pragma once

#include "core/units/result.h"

namespace crosstick::movement {

inline constexpr FaultId kRouteTooShort{"movement/route-too-short"};
inline constexpr FaultId kRouteNotOnGrid{"movement/route-not-on-grid"};
inline constexpr FaultId kNoDate{"movement/no-date"};
inline constexpr FaultId kNoModel{"movement/no-model"};
inline constexpr FaultId kNoPrintedAngle{"movement/no-printed-angle"};

}  // namespace crosstick::movement
