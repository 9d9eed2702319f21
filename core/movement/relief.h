#pragma once

#include <optional>

#include "core/geodesy/points.h"
#include "core/sheets/height_source.h"

namespace crosstick::movement {

/// Up, down and along the ground between two points.
struct Relief {
    Metres climb, descent;
    Metres slope;  ///< distance on the slope
};

/// Sampled along the straight line every 25 m of map distance, both ends included (our own step: finer follows the
/// noise of the model, coarser loses knolls). Nothing where any sample has no height: unknown is never 0.
/// @param ground  the line's true length, to which the samples' steps are scaled
[[nodiscard]] std::optional<Relief> reliefBetween(geodesy::PlanePoint fromInPlan, geodesy::PlanePoint toInPlan,
                                                  Metres ground, const sheets::HeightSource& heights);

}  // namespace crosstick::movement
