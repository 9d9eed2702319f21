#pragma once

#include "core/units/result.h"

namespace crosstick::symbols {

// Remarks of a draughtsman; worded at the edge like faults.
inline constexpr FaultId kNoLength{"symbols/no-length"};
inline constexpr FaultId kLabelLeftOut{"symbols/label-left-out"};
inline constexpr FaultId kOutsideWindow{"symbols/outside-window"};
inline constexpr FaultId kUnknownKind{"symbols/unknown-kind"};
inline constexpr FaultId kNoColumn{"symbols/no-column"};
inline constexpr FaultId kNotReached{"symbols/not-reached"};

}  // namespace crosstick::symbols
