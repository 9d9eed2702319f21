#pragma once

#include "core/units/result.h"

namespace crosstick::window {

inline constexpr FaultId kOtherSheet{"window/other-sheet"};  ///< "file", "name"

inline constexpr FaultId kDropUnread{"window/drop-unread"};       ///< "file"
inline constexpr FaultId kDropTooLarge{"window/drop-too-large"};  ///< "file", "most" megabytes

}  // namespace crosstick::window
