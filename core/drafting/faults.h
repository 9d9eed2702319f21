#pragma once

#include "core/units/result.h"

namespace crosstick::drafting {

inline constexpr FaultId kNeverMeets{"drafting/never-meets"};  ///< "metres": as far as was looked
inline constexpr FaultId kNoLine{"drafting/no-line"};
inline constexpr FaultId kSightsPart{"drafting/sights-part"};    ///< "first", "second": numbers of the sights
inline constexpr FaultId kSightsAlong{"drafting/sights-along"};  ///< "first", "second"
inline constexpr FaultId kTooFewSights{"drafting/too-few-sights"};
inline constexpr FaultId kNoBearing{"drafting/no-bearing"};        ///< "text"
inline constexpr FaultId kBearingRange{"drafting/bearing-range"};  ///< "text"
inline constexpr FaultId kNoDistance{"drafting/no-distance"};      ///< "text"

}  // namespace crosstick::drafting
