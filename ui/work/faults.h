#pragma once

#include "core/units/result.h"

namespace crosstick::work {

inline constexpr FaultId kHeightsGivenUp{"work/heights-given-up"};  ///< "file"

inline constexpr FaultId kSheetGivenUp{"work/sheet-given-up"};  ///< "file"

}  // namespace crosstick::work
