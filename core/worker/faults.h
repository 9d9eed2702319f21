#pragma once

#include "core/units/result.h"

namespace crosstick::worker {

inline constexpr FaultId kNoProgram{"worker/no-program"};
inline constexpr FaultId kCrashed{"worker/crashed"};
inline constexpr FaultId kTooLong{"worker/too-long"};
inline constexpr FaultId kTooMuchMemory{"worker/too-much-memory"};
inline constexpr FaultId kTooMuchOutput{"worker/too-much-output"};
inline constexpr FaultId kGarbled{"worker/garbled"};
inline constexpr FaultId kStopped{"worker/stopped"};

}  // namespace crosstick::worker
