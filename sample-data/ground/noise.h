#pragma once

#include <cstdint>

#include "sample-data/place.h"

namespace crosstick::demo {

/// Small forms of the ground: smooth random waves of 700, 350 and 175 m, at most 9, 5 and 2.5 m high, the same for the
/// same seed everywhere.
[[nodiscard]] double roughness(std::uint64_t seed, Spot at);

/// A number in [0, 1) for three whole numbers: jitter, choices. Evenly spread, the same everywhere.
[[nodiscard]] double chance(std::uint64_t seed, std::int64_t a, std::int64_t b);

}  // namespace crosstick::demo
