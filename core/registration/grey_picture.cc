#include "core/registration/grey_picture.h"

#include <cmath>

namespace crosstick::registration {

float GreyWindow::at(PixelPoint place) const {
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

GreyPicture greyOf(const sheets::Raster& raster) {
    return {raster.columns(), raster.rows(), [&raster](sheets::PixelWindow window) {
                return raster.read(window, window.columns, window.rows).map([&](const sheets::Pixels& pixels) {
                    GreyWindow grey{window, {}};
                    grey.grey.reserve(pixels.rgb.size());
                    for (const std::uint32_t rgb : pixels.rgb) {
                        const std::uint32_t sum = ((rgb >> 16U) & 0xffU) + 2 * ((rgb >> 8U) & 0xffU) + (rgb & 0xffU);
                        grey.grey.push_back(static_cast<std::uint8_t>(sum / 4));
                    }
                    return grey;
                });
            }};
}

}  // namespace crosstick::registration
