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

/// A picture that hands out windows, so that none need be held whole.
struct GreyPicture {
    int columns = 0, rows = 0;
    /// @param window  inside the picture
    std::function<Result<GreyWindow>(sheets::PixelWindow window)> read;
};

/// Our copy of a sheet, as grey by its green twice and its red and blue once. It must outlive the picture.
[[nodiscard]] GreyPicture greyOf(const sheets::Raster& raster);

}  // namespace crosstick::registration
