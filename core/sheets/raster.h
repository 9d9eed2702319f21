#pragma once

#include <filesystem>
#include <memory>

#include "core/sheets/pixels.h"
#include "core/units/result.h"

namespace crosstick::sheets {

/// Our copy of a sheet's raster, open for reading: RGB in tiles of 512 pixels with levels at half, a quarter, ... of
/// its size, as the reader wrote it into the cache.
/// Thread: one thread at a time; open one for each thread.
class Raster {
  public:
    /// @param copy  from ForeignReader::sheet()
    /// Errors: sheets/damaged.
    [[nodiscard]] static Result<Raster> open(const std::filesystem::path& copy);
    Raster(Raster&&) noexcept;
    Raster& operator=(Raster&&) noexcept;
    Raster(const Raster&) = delete;
    Raster& operator=(const Raster&) = delete;
    ~Raster();

    [[nodiscard]] int columns() const;
    [[nodiscard]] int rows() const;
    /// A window brought to a size: averaged when made smaller (a window of a level's own size is that level's pixels),
    /// pixels repeated when made larger. The part outside the raster is transparent (0). Errors: sheets/damaged.
    [[nodiscard]] Result<Pixels> read(PixelWindow window, int columns, int rows) const;

  private:
    struct Parts;
    explicit Raster(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

}  // namespace crosstick::sheets
