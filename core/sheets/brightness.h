#pragma once

#include <cstdint>
#include <list>
#include <map>
#include <utility>
#include <vector>

#include "core/plan/sheet.h"
#include "core/sheets/raster.h"

namespace crosstick::sheets {

/// How bright a sheet is at any spot, read tile by tile from our copy at one of its levels; some 32 MB are kept.
/// Thread: one thread at a time.
class Brightness {
  public:
    /// @param level  0 the raster's own pixels, each further one half as fine
    Brightness(const Raster& copy, int level);

    /// 0 black to 255 white, between the four nearest pixels; white beyond the raster and where it cannot be read.
    [[nodiscard]] double at(plan::RasterSpot spot);
    /// Why something could not be read, if so.
    [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }

  private:
    struct Tile {
        std::vector<std::uint8_t> grey;
        std::list<std::pair<int, int>>::iterator turn;
    };
    const Raster& copy_;
    int level_;
    std::map<std::pair<int, int>, Tile> tiles_;
    std::list<std::pair<int, int>> turns_;  ///< the latest used first
    std::pair<int, int> latest_{-1, -1};
    const std::vector<std::uint8_t>* latestGrey_ = nullptr;
    std::optional<Error> fault_;

    [[nodiscard]] int pixel(int column, int row);
    [[nodiscard]] const std::vector<std::uint8_t>& tile(std::pair<int, int> which);
};

}  // namespace crosstick::sheets
