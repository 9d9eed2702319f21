#include "core/sheets/see_through.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace crosstick::sheets {
namespace {

constexpr int kCoarse = 96;      // pixels of the longer side, at which no stroke is left of a film
constexpr int kReach = 3;        // of them, within which some blank film shows
constexpr float kNoise = 0.10F;  // of its surroundings' brightness, that blank film may be darker
constexpr float kFull = 0.45F;   // so much darker is wholly ink

float channel(std::uint32_t rgb, unsigned shift) {
    return static_cast<float>(rgb >> shift & 0xFFU);
}

std::uint32_t byte(float value) {
    return static_cast<std::uint32_t>(std::lround(std::clamp(value, 0.0F, 255.0F)));
}

}  // namespace

Result<SeeThrough> SeeThrough::of(const Raster& copy) {
    const int longer = std::max(copy.columns(), copy.rows());
    const auto coarse = [&](int side) { return std::max(2, static_cast<int>(std::int64_t{side} * kCoarse / longer)); };
    SeeThrough made;
    made.columns_ = coarse(copy.columns());
    made.rows_ = coarse(copy.rows());
    made.perColumn_ = static_cast<double>(made.columns_) / copy.columns();
    made.perRow_ = static_cast<double>(made.rows_) / copy.rows();
    const auto pixels = copy.read({0, 0, copy.columns(), copy.rows()}, made.columns_, made.rows_);
    if (!pixels) {
        return tl::unexpected(pixels.error());
    }
    // Blank is the brightest that stands near by: strokes and letters only darken.
    for (int row = 0; row < made.rows_; ++row) {
        for (int column = 0; column < made.columns_; ++column) {
            Blank brightest{0, 0, 0};
            for (int y = std::max(0, row - kReach); y <= std::min(made.rows_ - 1, row + kReach); ++y) {
                for (int x = std::max(0, column - kReach); x <= std::min(made.columns_ - 1, column + kReach); ++x) {
                    const std::uint32_t rgb =
                        pixels->rgb[static_cast<std::size_t>(y) * static_cast<std::size_t>(made.columns_) +
                                    static_cast<std::size_t>(x)];
                    brightest = {std::max(brightest.red, channel(rgb, 16)), std::max(brightest.green, channel(rgb, 8)),
                                 std::max(brightest.blue, channel(rgb, 0))};
                }
            }
            made.blank_.push_back(brightest);
        }
    }
    return made;
}

SeeThrough::Blank SeeThrough::blankAt(plan::RasterSpot spot) const {
    const double x = std::clamp(spot.column * perColumn_ - 0.5, 0.0, columns_ - 1.0);
    const double y = std::clamp(spot.row * perRow_ - 0.5, 0.0, rows_ - 1.0);
    const auto left = static_cast<std::size_t>(x);
    const auto top = static_cast<std::size_t>(y);
    const auto across = static_cast<float>(x - static_cast<double>(left));
    const auto down = static_cast<float>(y - static_cast<double>(top));
    const auto wide = static_cast<std::size_t>(columns_);
    const std::size_t right = std::min(left + 1, wide - 1);
    const std::size_t below = std::min(top + 1, static_cast<std::size_t>(rows_) - 1);
    const std::array<const Blank*, 4> corners{&blank_[top * wide + left], &blank_[top * wide + right],
                                              &blank_[below * wide + left], &blank_[below * wide + right]};
    const std::array<float, 4> shares{(1 - across) * (1 - down), across * (1 - down), (1 - across) * down,
                                      across * down};
    Blank blank{0, 0, 0};
    for (std::size_t n = 0; n < corners.size(); ++n) {
        blank.red += shares[n] * corners[n]->red;
        blank.green += shares[n] * corners[n]->green;
        blank.blue += shares[n] * corners[n]->blue;
    }
    return blank;
}

std::uint32_t SeeThrough::pixel(std::uint32_t rgb, plan::RasterSpot spot) const {
    const Blank blank = blankAt(spot);
    const std::array<float, 3> shares{channel(rgb, 16) / std::max(blank.red, 1.0F),
                                      channel(rgb, 8) / std::max(blank.green, 1.0F),
                                      channel(rgb, 0) / std::max(blank.blue, 1.0F)};
    const float darkest = 1 - std::min({shares[0], shares[1], shares[2], 1.0F});
    const float ink = std::clamp((darkest - kNoise) / (kFull - kNoise), 0.0F, 1.0F);
    if (ink <= 0) {
        return 0;
    }
    // What is seen is ink over white light: the ink's own colour is what is left without the light.
    const auto colour = [ink](float share) { return byte(255 * (std::min(share, 1.0F) - (1 - ink)) / ink); };
    return byte(255 * ink) << 24 | colour(shares[0]) << 16 | colour(shares[1]) << 8 | colour(shares[2]);
}

}  // namespace crosstick::sheets
