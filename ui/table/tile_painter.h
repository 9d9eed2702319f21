#pragma once

#include <QImage>
#include <QTransform>

#include "core/sheets/raster.h"
#include "core/sheets/see_through.h"
#include "core/units/result.h"
#include "ui/table/palette.h"
#include "ui/table/tiles.h"

class QPainter;

namespace crosstick::table {

/// Where tiles come from: the file itself, or a store of tiles read before.
class TileSource {
  public:
    virtual ~TileSource() = default;
    [[nodiscard]] virtual RasterSize size() const = 0;
    /// Format_RGB32, of a film Format_ARGB32_Premultiplied; at most 512 pixels a side. Errors: those of sheets::Raster.
    [[nodiscard]] virtual Result<QImage> tile(TileKey key) const = 0;
};

enum class Ground { Map, Film };

/// Reads each tile from our copy of the sheet; of a film only what is drawn on it. One thread at a time.
class FileTiles final : public TileSource {
  public:
    FileTiles(sheets::Raster raster, Theme theme, Ground ground = Ground::Map);
    [[nodiscard]] RasterSize size() const override;
    [[nodiscard]] Result<QImage> tile(TileKey key) const override;

  private:
    sheets::Raster raster_;
    Theme theme_;
    std::optional<sheets::SeeThrough> film_;
};

/// Pixels as the table shows them in its light.
[[nodiscard]] QImage imageOf(const sheets::Pixels& pixels, Theme theme);

/// Nearest while the view moves, smooth when it rests.
enum class Scaling { Nearest, Smooth };

/// Lays the sheet on the table: its tiles by one transformation, never resampled before.
[[nodiscard]] Result<void> paintSheet(QPainter& painter, const View& view, const SheetLie& lie, const TileSource& tiles,
                                      Scaling scaling);

/// From the pixels of a picture to the table, where it covers a window of a sheet's raster: affine where the sheet lies
/// straight, else through the window's four corners.
[[nodiscard]] QTransform onTable(const View& view, const SheetLie& lie, const QRectF& window, QSize picture);
/// The same for a tile.
[[nodiscard]] QTransform tileOnTable(const View& view, const SheetLie& lie, TileKey key);

}  // namespace crosstick::table
