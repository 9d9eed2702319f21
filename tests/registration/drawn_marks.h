#pragma once

#include <cstdint>
#include <functional>
#include <random>
#include <vector>

#include "core/registration/mark.h"

namespace crosstick::testing {

/// How a made sheet lies in its picture: from grid metres, relative to the sheet's middle, to pixels.
using Truth = std::function<registration::PixelPoint(double east, double north)>;

inline constexpr double kMiddleEast = 654000, kMiddleNorth = 5102000;  // of the made sheets, m

[[nodiscard]] Truth similarTruth();    ///< turned by 2.3 degrees, 2.5 m a pixel
[[nodiscard]] Truth stretchedTruth();  ///< the same, 0.6 per cent longer one way than the other
[[nodiscard]] Truth aslantTruth();     ///< a photo: the far edge 12 per cent smaller
[[nodiscard]] Truth bentTruth();       ///< bulging by 12 pixels

/// Crossings of 1 km of a sheet of 8 by 10 km: 99, their middle at kMiddleEast, kMiddleNorth.
[[nodiscard]] std::vector<registration::Mark> allCrossings(const Truth& truth);
/// So many different ones of them, read with a normal error in x and y each.
[[nodiscard]] std::vector<registration::Mark> drawn(const Truth& truth, std::size_t count, double noise,
                                                    std::mt19937& random);
/// Moves a mark by so many pixels in any direction.
void misplace(registration::Mark& mark, double pixels, std::mt19937& random);

}  // namespace crosstick::testing
