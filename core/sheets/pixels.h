#pragma once

#include <cstdint>
#include <vector>

namespace crosstick::sheets {

/// 0xffRRGGBB, rows from the top.
struct Pixels {
    int columns = 0;
    int rows = 0;
    std::vector<std::uint32_t> rgb;
};

/// A part of the raster in its own pixels.
struct PixelWindow {
    int column = 0, row = 0, columns = 0, rows = 0;
};

}  // namespace crosstick::sheets
