#pragma once

#include <utility>

#include "core/plan/sheet.h"
#include "core/sheets/raster.h"

namespace crosstick::terrain {

/// Colours by windows: our copy of a sheet, a photo, or any pixels at hand. One thread at a time.
class Picture {
  public:
    virtual ~Picture() = default;
    [[nodiscard]] virtual int columns() const = 0;
    [[nodiscard]] virtual int rows() const = 0;
    /// A window brought to a size, what lies outside transparent: as sheets::Raster::read() does it.
    [[nodiscard]] virtual Result<sheets::Pixels> read(sheets::PixelWindow window, int columns, int rows) const = 0;
};

/// Our copy of a sheet's raster.
class SheetPicture final : public Picture {
  public:
    explicit SheetPicture(sheets::Raster raster) : raster_(std::move(raster)) {}
    [[nodiscard]] int columns() const override { return raster_.columns(); }
    [[nodiscard]] int rows() const override { return raster_.rows(); }
    [[nodiscard]] Result<sheets::Pixels> read(sheets::PixelWindow window, int columns, int rows) const override {
        return raster_.read(window, columns, rows);
    }

  private:
    sheets::Raster raster_;
};

/// A picture as it was printed on paper that lies on the ground.
struct PrintedGround {
    const Picture& picture;
    plan::Placement placement;  ///< of its pixels in a grid
    Scale scale;                ///< of the paper: pens' widths are told in its millimetres
    Metres hand = Metres(0);    ///< so far off a line a click may lie where none is nearer; 0.6 mm of paper always
};

/// A place in a picture's pixels; the upper left corner of the upper left pixel is 0, 0.
struct PicturePoint {
    double column = 0, row = 0;
    friend constexpr bool operator==(PicturePoint, PicturePoint) = default;
};

}  // namespace crosstick::terrain
