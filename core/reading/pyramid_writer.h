#pragma once

#include <filesystem>
#include <vector>

#include "core/reading/own_file.h"
#include "core/sheets/file_report.h"
#include "core/sheets/levels.h"
#include "core/sheets/pixels.h"

namespace crosstick::reading {

/// Writes a sheet as sheets::Raster reads it: RGB in tiles of 512 pixels, and each level below at half the size, every
/// pixel the mean of four, until a level fits in one tile. One pass: the levels grow while the sheet comes in.
class PyramidWriter {
  public:
    /// Errors: sheets/no-room.
    [[nodiscard]] static Result<PyramidWriter> create(const std::filesystem::path& out, int columns, int rows,
                                                      sheets::Packing packing);
    /// Whole rows, from the top on. Errors: sheets/no-room.
    [[nodiscard]] Result<void> addRows(const sheets::Pixels& rows);
    [[nodiscard]] Result<void> finish() && { return file_.finish(); }

  private:
    struct Level {
        int columns = 0, rows = 0;
        int written = 0;                  ///< rows that are in the file
        std::vector<std::uint32_t> held;  ///< rows that wait until a row of tiles is full
    };
    OwnFile file_;
    std::vector<Level> levels_;        ///< the sheet's own size first
    std::vector<std::uint8_t> bytes_;  ///< kept from write to write

    [[nodiscard]] Result<void> add(std::size_t level, const std::uint32_t* rgb, int count);
    [[nodiscard]] Result<void> write(std::size_t level, int count);
};

/// Rows at half the size: each pixel the mean of up to four.
/// @param rows  that are given; the result has half of them, rounded up
[[nodiscard]] std::vector<std::uint32_t> halved(const std::uint32_t* rgb, int columns, int rows);

}  // namespace crosstick::reading
