#pragma once

#include <filesystem>
#include <string>

#include "core/terrain/follow.h"

namespace crosstick::terrain {

/// Finds the line that a sheet prints between two places of a plan. Opens everything anew: for another thread than the
/// table's.
/// @param copy  our copy of the sheet's raster  @param planeCrs  of the plan's own plane, in which the places are and
/// the line comes back
/// Errors: followedLine()'s, sheets::Raster::open()'s, geodesy::PlaneLink's.
[[nodiscard]] Result<FollowedGround> followOnSheet(const std::filesystem::path& copy, const plan::Sheet& sheet,
                                                   const std::string& planeCrs, geodesy::PlanePoint from,
                                                   geodesy::PlanePoint to,
                                                   const std::optional<Vein>& like = std::nullopt);

}  // namespace crosstick::terrain
