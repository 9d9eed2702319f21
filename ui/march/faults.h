#pragma once

#include "core/units/result.h"

namespace crosstick::march {

inline constexpr FaultId kBadStrength{"march/bad-strength"};  ///< a number of people
inline constexpr FaultId kBadGap{"march/bad-gap"};            ///< metres between people or elements
inline constexpr FaultId kBadFiles{"march/bad-files"};
inline constexpr FaultId kNoSuchElement{"march/no-such-element"};
inline constexpr FaultId kUnderItself{"march/under-itself"};
inline constexpr FaultId kNoSuchPlace{"march/no-such-place"};
inline constexpr FaultId kBadMan{"march/bad-man"};  ///< first or last

/// A strength as it is typed; nothing typed is not said. Errors: march/bad-strength with "typed".
[[nodiscard]] Result<int> strengthTyped(const std::string& typed);

}  // namespace crosstick::march
