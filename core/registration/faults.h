#pragma once

#include "core/units/result.h"

namespace crosstick::registration {

inline constexpr FaultId kTooFewMarks{"registration/too-few-marks"};
inline constexpr FaultId kTooManyMarks{"registration/too-many-marks"};
inline constexpr FaultId kSamePlace{"registration/same-place"};
inline constexpr FaultId kOneLine{"registration/one-line"};
inline constexpr FaultId kContrary{"registration/contrary"};
inline constexpr FaultId kNoColumns{"registration/no-columns"};
inline constexpr FaultId kNoRows{"registration/no-rows"};
inline constexpr FaultId kTooLong{"registration/list-too-long"};
inline constexpr FaultId kShortRow{"registration/short-row"};
inline constexpr FaultId kNoNumber{"registration/no-number"};
inline constexpr FaultId kOffPicture{"registration/off-picture"};
inline constexpr FaultId kMoreBad{"registration/more-bad-rows"};
inline constexpr FaultId kNoSquare{"registration/no-square"};
inline constexpr FaultId kNoGrid{"registration/no-grid"};
inline constexpr FaultId kCannotWrite{"registration/cannot-write"};
inline constexpr FaultId kTooWide{"registration/too-wide"};

}  // namespace crosstick::registration
