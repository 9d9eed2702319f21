#pragma once

#include "core/units/result.h"

namespace crosstick::measures {

inline constexpr FaultId kBadNumber{"measures/bad-number"};
inline constexpr FaultId kBadSide{"measures/bad-side"};
inline constexpr FaultId kBadAnswer{"measures/bad-answer"};
inline constexpr FaultId kBadEchelon{"measures/bad-echelon"};

}  // namespace crosstick::measures
