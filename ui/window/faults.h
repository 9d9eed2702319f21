#pragma once

#include "core/units/result.h"

namespace crosstick::window {

inline constexpr FaultId kOtherSheet{"window/other-sheet"};  ///< "file", "name"

}  // namespace crosstick::window
