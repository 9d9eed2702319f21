#include "core/registration/grey_picture.h"

namespace crosstick::registration {

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
