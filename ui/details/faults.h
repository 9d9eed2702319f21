#pragma once

#include "core/units/result.h"

namespace crosstick::details {

inline constexpr FaultId kNumberTaken{"details/number-taken"};
inline constexpr FaultId kNumberTakenOnRoute{"details/number-taken-on-route"};
inline constexpr FaultId kNumberIssued{"details/number-issued"};
inline constexpr FaultId kNameTaken{"details/name-taken"};
inline constexpr FaultId kBadHalt{"details/bad-halt"};
inline constexpr FaultId kNoSuchRally{"details/no-such-rally"};
inline constexpr FaultId kGridOffSheet{"details/grid-off-sheet"};
inline constexpr FaultId kNoTitle{"details/no-title"};
inline constexpr FaultId kZoneUnread{"details/zone-unread"};
inline constexpr FaultId kGridUnread{"details/grid-unread"};
inline constexpr FaultId kNoCarryRate{"details/no-carry-rate"};

}  // namespace crosstick::details
