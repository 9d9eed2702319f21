#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "core/units/result.h"
#include "sample-data/place.h"

namespace crosstick::demo {

struct NamedPegs {
    std::string name;
    PegLine pegs;
};

enum class SpotKind { Plain, Pillar, Lake };
struct SpotHeight {
    SpotKind kind = SpotKind::Plain;
    Peg peg;
};

/// What the ground is made from: the lists of island.json as they stand there.
struct Island {
    std::uint64_t noiseSeed = 0;
    PegLine shore;  ///< closed, anticlockwise; height of the edge 40 m inland
    std::vector<Line> islets;
    double isletHeight = 5;  ///< metres
    std::vector<NamedPegs> ridges;
    std::vector<NamedPegs> brooks;  ///< downhill
    Line lake;
    double lakeLevel = 0;  ///< metres
    std::vector<SpotHeight> spotHeights;
};

/// Errors: demo/no-data, demo/damaged-data.
[[nodiscard]] Result<Island> readIsland(const std::filesystem::path& file);

}  // namespace crosstick::demo
