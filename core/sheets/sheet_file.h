#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/sheet.h"
#include "core/units/result.h"

namespace crosstick::sheets {

/// What a GeoTIFF says of itself, as a new sheet of a plan: CRS, placement (in metres whatever the axis unit), size,
/// SHA-256; series, name, number, edition, datum, printed G-M angle and height model from its metadata items in the
/// domain "CROSSTICK" (SERIES, NAME, NUMBER, EDITION, SCALE, DATUM, GM_ANGLE_DEG, GM_DATE, GM_YEARLY_DEG, ELEVATION)
/// where it has them. The scale is the given one, else the metadata's, else what pixel size and resolution tags give if
/// that lies within 1 % of a usual map scale. Errors: sheets/file-missing, sheets/not-a-raster, sheets/too-large,
/// sheets/damaged, sheets/no-crs,
///         sheets/crs-geographic, sheets/no-placement, sheets/no-scale.
[[nodiscard]] Result<plan::Sheet> describeSheet(const std::filesystem::path& file, const Uuid& id,
                                                std::optional<Scale> given = std::nullopt);

/// SHA-256 of a file, read in pieces. Errors: sheets/file-missing, sheets/damaged.
[[nodiscard]] Result<std::string> fileSha256(const std::filesystem::path& file);

/// 0xffRRGGBB, rows from the top.
struct Pixels {
    int columns = 0;
    int rows = 0;
    std::vector<std::uint32_t> rgb;
};

/// A part of the raster in its own pixels.
struct PixelWindow {
    int column = 0, row = 0, columns = 0, rows = 0;
};

/// A sheet's raster, open for reading: palette, grey, RGB or RGBA (laid on white), tiled or stripped.
/// Thread: one thread at a time; open one for each thread.
class Raster {
  public:
    /// Errors: as describeSheet for the file; sheets/colours where its bands are neither palette (of 8 bit), grey nor
    /// RGB.
    [[nodiscard]] static Result<Raster> open(const std::filesystem::path& file);
    Raster(Raster&&) noexcept;
    Raster& operator=(Raster&&) noexcept;
    Raster(const Raster&) = delete;
    Raster& operator=(const Raster&) = delete;
    ~Raster();

    [[nodiscard]] int columns() const;
    [[nodiscard]] int rows() const;
    /// A window brought to a size: averaged in RGB when made smaller (from the file's overviews where it has any and is
    /// no palette file), pixels repeated when made larger. The part outside the raster is transparent (0). Errors:
    /// sheets/damaged with file and place.
    [[nodiscard]] Result<Pixels> read(PixelWindow window, int columns, int rows) const;

  private:
    struct Parts;
    explicit Raster(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

}  // namespace crosstick::sheets
