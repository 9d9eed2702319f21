#pragma once

#include "core/units/result.h"

namespace crosstick::table {

inline constexpr FaultId kNothingToSee{"table/nothing-to-see"};
inline constexpr FaultId kCannotWrite{"table/cannot-write"};
inline constexpr FaultId kFolderMissing{"table/folder-missing"};
inline constexpr FaultId kNoSuchFilm{"table/no-such-film"};

}  // namespace crosstick::table
