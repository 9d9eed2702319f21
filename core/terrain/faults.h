#pragma once

#include "core/units/result.h"

namespace crosstick::terrain {

inline constexpr FaultId kNothingPrinted{"terrain/nothing-printed"};
inline constexpr FaultId kUnlikeEnds{"terrain/unlike-ends"};
inline constexpr FaultId kBreaksOff{"terrain/breaks-off"};
inline constexpr FaultId kTooFar{"terrain/too-far"};
inline constexpr FaultId kOffPicture{"terrain/off-picture"};
inline constexpr FaultId kGivenUp{"terrain/given-up"};
inline constexpr FaultId kNoOffset{"terrain/no-offset"};

}  // namespace crosstick::terrain
