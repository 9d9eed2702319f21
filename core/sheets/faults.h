#pragma once

#include "core/units/result.h"

namespace crosstick::sheets {

inline constexpr FaultId kFileMissing{"sheets/file-missing"};
inline constexpr FaultId kNotARaster{"sheets/not-a-raster"};
inline constexpr FaultId kDamaged{"sheets/damaged"};
inline constexpr FaultId kNoCrs{"sheets/no-crs"};
inline constexpr FaultId kCrsGeographic{"sheets/crs-geographic"};
inline constexpr FaultId kNoPlacement{"sheets/no-placement"};
inline constexpr FaultId kNoScale{"sheets/no-scale"};
inline constexpr FaultId kTooLarge{"sheets/too-large"};
inline constexpr FaultId kColours{"sheets/colours"};
inline constexpr FaultId kBlockTooLarge{"sheets/block-too-large"};
inline constexpr FaultId kNotHeights{"sheets/not-heights"};
inline constexpr FaultId kHeightUnit{"sheets/height-unit"};
inline constexpr FaultId kOtherSize{"sheets/other-size"};
inline constexpr FaultId kNoRoom{"sheets/no-room"};
inline constexpr FaultId kNoNeatline{"sheets/no-neatline"};
inline constexpr FaultId kNeatlineCrosses{"sheets/neatline-crosses"};
inline constexpr FaultId kReader{"sheets/reader"};

}  // namespace crosstick::sheets
