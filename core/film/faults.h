#pragma once

#include "core/units/result.h"

namespace crosstick::film {

inline constexpr FaultId kNoGround{"film/no-ground"};
inline constexpr FaultId kOffTheSheet{"film/off-the-sheet"};
inline constexpr FaultId kTooFewCrossings{"film/too-few-crossings"};
inline constexpr FaultId kPaperTooSmall{"film/paper-too-small"};
inline constexpr FaultId kNoSuchPaper{"film/no-such-paper"};
inline constexpr FaultId kNoSuchScale{"film/no-such-scale"};

}  // namespace crosstick::film
