#pragma once

#include <cstdint>
#include <vector>

#include "core/plan/sheet.h"
#include "core/sheets/raster.h"

namespace crosstick::sheets {

/// Makes the blank of a photographed or scanned film see-through: what is about as bright as its surroundings, in
/// however uneven a light, vanishes, and what was drawn keeps its colour. Strokes are what is narrow; what is wider
/// than a fortieth of the picture's longer side is a stroke where it is coloured or black, and a shadow where it is
/// grey; what is wider than a fifteenth is no stroke. The table about a film vanishes too where it has not the film's
/// colour. Thread: reading what was made is safe from any.
class SeeThrough {
  public:
    /// Looks over the whole picture once, coarsely. Errors: those of Raster::read().
    [[nodiscard]] static Result<SeeThrough> of(const Raster& copy);

    /// @param rgb  0xffRRGGBB, as it was photographed at a place  @param spot  that place in the raster
    /// @return 0xAARRGGBB, not premultiplied
    [[nodiscard]] std::uint32_t pixel(std::uint32_t rgb, plan::RasterSpot spot) const;

    /// What blank film looks like at a place, in three colours of 0 to 255.
    struct Blank {
        float red = 255, green = 255, blue = 255;
        float film = 1;  ///< 0 on the table
    };

  private:
    int columns_ = 0, rows_ = 0;  ///< of the coarse picture
    double perColumn_ = 1, perRow_ = 1;
    std::vector<Blank> blank_;

    [[nodiscard]] Blank blankAt(plan::RasterSpot spot) const;
};

}  // namespace crosstick::sheets
