#pragma once

#include <vector>

#include "sample-data/ground/ground.h"

namespace crosstick::demo {

/// A cliff as it is drawn: its foot on the shore, its upper edge inland of it, point for point. Both run with the sea
/// on their right and meet at the ends.
struct Cliff {
    Line foot;
    Line top;
};

/// Metres: a shore whose edge is as high as this is drawn as a cliff.
inline constexpr double kCliffFrom = 20;

/// The cliffs of the ground: runs of the shore of 80 m and more whose edge is 20 m and higher. The upper edge lies 20
/// to 40 m inland, the higher the farther.
[[nodiscard]] std::vector<Cliff> cliffsOf(const Ground& ground);

/// The heights as they are drawn, not as they are: drawn out by four and a half cells, so that crests and gullies are
/// round, with most of what that takes from tops given back, and spot heights met within a metre; at cliffs the level
/// of the edge goes on over the sea, so that contours run into the cliff's edge and not along it.
[[nodiscard]] Field<float> heightsToDraw(const Ground& ground, const std::vector<SpotHeight>& spots);

}  // namespace crosstick::demo
