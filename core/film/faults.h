#pragma once

#include "core/units/result.h"

namespace crosstick::film {

inline constexpr FaultId kNoGround{"film/no-ground"};
inline constexpr FaultId kTooFewCrossings{"film/too-few-crossings"};
inline constexpr FaultId kPaperTooSmall{"film/paper-too-small"};
inline constexpr FaultId kNoSuchPaper{"film/no-such-paper"};
inline constexpr FaultId kNoSuchScale{"film/no-such-scale"};
inline constexpr FaultId kNothingReached{"film/nothing-reached"};

}  // namespace crosstick::film
