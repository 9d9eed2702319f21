#pragma once

#include <filesystem>
#include <functional>

#include "core/reading/inks.h"
#include "core/sheets/dataset.h"
#include "core/sheets/messages.h"
#include "core/sheets/pixels.h"

namespace crosstick::reading {

/// Takes rows of a coarse picture.
using Show = std::function<void(const sheets::messages::PictureRows&)>;

/// A foreign raster as it is looked at: its colours in RGB, a photo's orientation applied.
class ForeignRaster {
  public:
    /// Errors: as openForeign(); sheets/colours where its bands make none.
    [[nodiscard]] static Result<ForeignRaster> open(const std::filesystem::path& file);

    [[nodiscard]] int columns() const;
    [[nodiscard]] int rows() const;
    [[nodiscard]] int orientation() const { return orientation_; }
    [[nodiscard]] const Inks& inks() const { return inks_; }
    [[nodiscard]] GDALDataset& dataset() const { return *dataset_; }
    /// How many rows to read at once, where few are best, since buffers so small are handed out again and stay near at
    /// hand. A page is drawn anew for each window: of a PDF it is as many as memory allows.
    [[nodiscard]] int rowsAtOnce(int few) const;
    /// A window inside the raster, pixel for pixel. Errors: sheets/damaged with file and row, worker/too-much-memory.
    [[nodiscard]] Result<sheets::Pixels> read(sheets::PixelWindow window) const;
    /// The whole at a glance, its longer side at most so many pixels: single pixels picked, nothing averaged. Rows are
    /// shown as they are read, from the top; all at once where a photo is turned. Errors: as read().
    [[nodiscard]] Result<void> glance(int longestSide, const Show& show) const;

  private:
    std::filesystem::path file_;
    sheets::DatasetPtr dataset_;
    Inks inks_;
    int orientation_ = 1;

    [[nodiscard]] Result<sheets::Pixels> readStored(sheets::PixelWindow window, int columns, int rows) const;
    [[nodiscard]] bool read(sheets::PixelWindow window, int columns, int rows, std::uint8_t* bytes) const;
    [[nodiscard]] Result<sheets::Pixels> glanceRows(int first, int count, int columns, int rows) const;
};

/// As EXIF and TIFF 6.0 count: 1 upright, 3 upside down, 6 to be turned clockwise, even ones and 5, 7 mirrored. 1 for a
/// file that is placed on the ground: its placement is of the pixels as they are stored.
[[nodiscard]] int orientationOf(GDALDataset& dataset, const std::filesystem::path& file);
/// Pixels as stored to pixels as looked at.
[[nodiscard]] sheets::Pixels turned(const sheets::Pixels& stored, int orientation);

}  // namespace crosstick::reading
