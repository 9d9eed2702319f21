#pragma once

#include "core/units/result.h"

namespace crosstick::demo {

inline constexpr FaultId kNoData{"demo/no-data"};            ///< "file"
inline constexpr FaultId kDamagedData{"demo/damaged-data"};  ///< "file", "found"
inline constexpr FaultId kCannotWrite{"demo/cannot-write"};  ///< "file"
inline constexpr FaultId kFolderMissing{"demo/no-folder"};   ///< "folder"
inline constexpr FaultId kGivenUp{"demo/given-up"};
inline constexpr FaultId kFilesThere{"demo/files-there"};  ///< "file"

}  // namespace crosstick::demo
