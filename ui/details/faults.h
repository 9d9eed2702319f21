#pragma once

#include "core/units/result.h"

namespace crosstick::details {

inline constexpr FaultId kNumberTaken{"details/number-taken"};
inline constexpr FaultId kNameTaken{"details/name-taken"};
inline constexpr FaultId kGridOffSheet{"details/grid-off-sheet"};
inline constexpr FaultId kNoTitle{"details/no-title"};
inline constexpr FaultId kZoneUnread{"details/zone-unread"};
inline constexpr FaultId kGridUnread{"details/grid-unread"};

}  // namespace crosstick::details
