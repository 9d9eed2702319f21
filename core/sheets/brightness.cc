#include "core/sheets/brightness.h"

#include <cmath>

#include "core/sheets/levels.h"

namespace crosstick::sheets {
namespace {

constexpr std::size_t kMostTiles = 128;
constexpr int kWhite = 255;

/// Rec. 601's weights, in 256ths.
std::uint8_t greyOf(std::uint32_t rgb) {
    return static_cast<std::uint8_t>((77 * (rgb >> 16 & 0xFFU) + 150 * (rgb >> 8 & 0xFFU) + 29 * (rgb & 0xFFU)) >> 8);
}

}  // namespace

Brightness::Brightness(const Raster& copy, int level) : copy_(copy), level_(level) {}

const std::vector<std::uint8_t>& Brightness::tile(std::pair<int, int> which) {
    if (const auto found = tiles_.find(which); found != tiles_.end()) {
        turns_.splice(turns_.begin(), turns_, found->second.turn);
        return found->second.grey;
    }
    if (tiles_.size() >= kMostTiles) {
        tiles_.erase(turns_.back());
        turns_.pop_back();
    }
    const int side = kTilePixels << level_;
    std::vector<std::uint8_t> grey(std::size_t{kTilePixels} * kTilePixels, kWhite);
    if (auto pixels = copy_.read({which.first * side, which.second * side, side, side}, kTilePixels, kTilePixels)) {
        for (std::size_t n = 0; n < grey.size(); ++n) {
            grey[n] = pixels->rgb[n] >> 24 == 0 ? kWhite : greyOf(pixels->rgb[n]);
        }
    } else {
        fault_ = pixels.error();
    }
    turns_.push_front(which);
    return tiles_.emplace(which, Tile{std::move(grey), turns_.begin()}).first->second.grey;
}

int Brightness::pixel(int column, int row) {
    if (column < 0 || row < 0 || column << level_ >= copy_.columns() || row << level_ >= copy_.rows()) {
        return kWhite;
    }
    const std::pair which{column / kTilePixels, row / kTilePixels};
    if (which != latest_) {
        latestGrey_ = &tile(which);
        latest_ = which;
    }
    return (*latestGrey_)[static_cast<std::size_t>(row % kTilePixels) * kTilePixels +
                          static_cast<std::size_t>(column % kTilePixels)];
}

double Brightness::at(plan::RasterSpot spot) {
    const double side = std::ldexp(1.0, level_);
    const double x = spot.column / side - 0.5;
    const double y = spot.row / side - 0.5;
    if (!(std::abs(x) < 1e6 && std::abs(y) < 1e6)) {
        return kWhite;
    }
    const int column = static_cast<int>(std::floor(x));
    const int row = static_cast<int>(std::floor(y));
    const double right = x - column;
    const double down = y - row;
    return (1 - down) * ((1 - right) * pixel(column, row) + right * pixel(column + 1, row)) +
           down * ((1 - right) * pixel(column, row + 1) + right * pixel(column + 1, row + 1));
}

}  // namespace crosstick::sheets
