#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "core/registration/mark.h"
#include "core/sheets/raster.h"
#include "core/units/result.h"

namespace crosstick::registration {

/// A part of a picture in grey, 0 black to 255 white, rows from the top.
struct GreyWindow {
    sheets::PixelWindow window;
    std::vector<std::uint8_t> grey;

    /// Between the four pixels round a place of the picture; below 0 outside the window.
    [[nodiscard]] float at(PixelPoint place) const;
};

inline float GreyWindow::at(PixelPoint place) const {
    const double x = place.x - 0.5 - window.column;
    const double y = place.y - 0.5 - window.row;
    if (!(x >= 0 && y >= 0 && x < window.columns - 1 && y < window.rows - 1)) {
        return -1;
    }
    const auto column = static_cast<std::size_t>(x);
    const auto row = static_cast<std::size_t>(y);
    const auto u = static_cast<float>(x - static_cast<double>(column));
    const auto v = static_cast<float>(y - static_cast<double>(row));
    const std::uint8_t* p = grey.data() + row * static_cast<std::size_t>(window.columns) + column;
    const float upper = static_cast<float>(p[0]) * (1 - u) + static_cast<float>(p[1]) * u;
    const float lower = static_cast<float>(p[window.columns]) * (1 - u) + static_cast<float>(p[window.columns + 1]) * u;
    return upper * (1 - v) + lower * v;
}

/// A picture that hands out windows, so that none need be held whole.
struct GreyPicture {
    int columns = 0, rows = 0;
    /// @param window  inside the picture
    std::function<Result<GreyWindow>(sheets::PixelWindow window)> read;
};

/// Our copy of a sheet, as grey by its green twice and its red and blue once. It must outlive the picture.
[[nodiscard]] GreyPicture greyOf(const sheets::Raster& raster);

}  // namespace crosstick::registration
