#pragma once

#include "core/units/result.h"

namespace crosstick::film {

inline constexpr FaultId kNoGround{"film/no-ground"};
inline constexpr FaultId kOffTheSheet{"film/off-the-sheet"};
inline constexpr FaultId kTooFewCrossings{"film/too-few-crossings"};
inline constexpr FaultId kNotACrossing{"film/not-a-crossing"};
inline constexpr FaultId kTickOutsideWindow{"film/tick-outside-window"};
inline constexpr FaultId kCrossingTaken{"film/crossing-taken"};
inline constexpr FaultId kTooFewTicks{"film/too-few-ticks"};
inline constexpr FaultId kTicksInARow{"film/ticks-in-a-row"};
inline constexpr FaultId kWindowTooSmall{"film/window-too-small"};
inline constexpr FaultId kInsetTooLarge{"film/inset-too-large"};
inline constexpr FaultId kPaperTooSmall{"film/paper-too-small"};
inline constexpr FaultId kNoSuchPaper{"film/no-such-paper"};
inline constexpr FaultId kNoSuchScale{"film/no-such-scale"};

}  // namespace crosstick::film
