#pragma once

#include "core/units/result.h"

namespace crosstick {

inline constexpr FaultId kNoSuchZone{"units/no-such-zone"};
inline constexpr FaultId kNoZoneNamed{"units/no-zone-named"};
inline constexpr FaultId kBadDateTimeGroup{"units/bad-dtg"};
inline constexpr FaultId kBadTime{"units/bad-time"};
inline constexpr FaultId kBadDate{"units/bad-date"};

}  // namespace crosstick
