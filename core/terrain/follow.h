#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/terrain/vein.h"

namespace crosstick::terrain {

/// A printed line between two places of a picture.
struct FollowedLine {
    std::vector<PicturePoint> line;  ///< its middle, from beside the one place to beside the other
    Vein vein;                       ///< what was followed
    double meanCost = 1;             ///< 1 where the line is clear all the way, 40 where there is none
};

/// Finds the road, stream, shore or contour that is printed from one place to another. What it is to look like is
/// learned at both: colour, width, what lies beside it; of several that pass there the one that leads through.
/// Where the picture has more than 18 pixels to a millimetre of paper, it is read at half its size or less.
/// @param like  what was followed up to `from`: preferred where the places leave a doubt
/// Accuracy: the middle of a line of 0.1 to 1.4 mm to about 0.05 mm; fewer points by 0.1 mm of paper.
/// Where nothing at the one place is like what is at the other, a line of either is followed to what lies over it at
/// the other.
/// Errors: terrain/off-picture; terrain/nothing-printed (with `end`, "first" or "last") where no line passes within 0.6
/// mm, or within the hand's reach up to 1.8 mm; terrain/unlike-ends where those at one place are not those at the
/// other; terrain/breaks-off where none leads through; terrain/too-far; sheets/damaged.
[[nodiscard]] Result<FollowedLine> followedLine(const Picture& picture, PenSize size, PicturePoint from,
                                                PicturePoint to, const std::optional<Vein>& like = std::nullopt);

/// The same on the ground, in the plane of the picture's placement.
struct FollowedGround {
    std::vector<geodesy::PlanePoint> line;
    std::optional<Vein> vein;  ///< none where it is something drawn that was followed
};
[[nodiscard]] Result<FollowedGround> followedLine(const PrintedGround& ground, geodesy::PlanePoint from,
                                                  geodesy::PlanePoint to,
                                                  const std::optional<Vein>& like = std::nullopt);

}  // namespace crosstick::terrain
