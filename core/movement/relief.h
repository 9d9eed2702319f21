#pragma once

#include <optional>
#include <vector>

#include "core/geodesy/points.h"
#include "core/sheets/height_source.h"

namespace crosstick::movement {

/// The steepest step of a line.
struct Steepest {
    double slope = 0;  ///< rise over run, negative downhill: 0.19 is 19 per cent
    Metres along;      ///< ground distance from the line's start to the step's middle
    friend bool operator==(const Steepest&, const Steepest&) = default;
};

/// Up, down and along the ground between two points.
struct Relief {
    Metres climb, descent;
    Metres slope;                 ///< distance on the slope
    Steepest steepest;            ///< the first one where several are alike
    std::vector<Metres> heights;  ///< at the ends of the steps, which are all of one length
};

/// Sampled along the straight line every 25 m of map distance, both ends included (our own step: finer follows the
/// noise of the model, coarser loses knolls). Nothing where any sample has no height: unknown is never 0.
/// @param ground  the line's true length, to which the samples' steps are scaled
[[nodiscard]] std::optional<Relief> reliefBetween(geodesy::PlanePoint fromInPlan, geodesy::PlanePoint toInPlan,
                                                  Metres ground, const sheets::HeightSource& heights);

}  // namespace crosstick::movement
