#pragma once

#include <filesystem>
#include <string>

#include "core/terrain/follow.h"

namespace crosstick::terrain {

/// A sheet with our copy of its raster.
struct SheetCopy {
    std::filesystem::path copy;
    plan::Sheet sheet;
};

/// Where a line is clicked at, in a plan's own plane.
struct Clicks {
    geodesy::PlanePoint from, to;
    Metres hand = Metres(0);  ///< how far off the line they may lie: more where the sheet is seen small
};

/// Finds the line that is printed between two places of a plan, on the first sheet that has one through both. Opens
/// everything anew: for another thread than the table's.
/// @param sheets  in the order in which they are tried  @param planeCrs  of the plan's own plane, in which the line
/// comes back
/// Errors: of the sheets that reach both places the first one's: followedLine()'s, sheets::Raster::open()'s,
/// geodesy::PlaneLink's; terrain/off-picture where none reaches them.
[[nodiscard]] Result<FollowedGround> followOnSheets(const std::vector<SheetCopy>& sheets, const std::string& planeCrs,
                                                    const Clicks& clicks,
                                                    const std::optional<Vein>& like = std::nullopt);

}  // namespace crosstick::terrain
