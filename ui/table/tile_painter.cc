#include "ui/table/tile_painter.h"

#include <cmath>
#include <utility>

#include <QPainter>
#include <QTransform>

namespace crosstick::table {
QImage imageOf(const sheets::Pixels& pixels, Theme theme) {
    QImage image(pixels.columns, pixels.rows, QImage::Format_RGB32);
    for (int y = 0; y < pixels.rows; ++y) {
        const auto* from = &pixels.rgb[static_cast<std::size_t>(y) * static_cast<std::size_t>(pixels.columns)];
        auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
        for (int x = 0; x < pixels.columns; ++x) {
            line[x] = theme == Theme::Night ? byNight(from[x]) : from[x];
        }
    }
    return image;
}

QTransform tileOnTable(const View& view, const plan::Placement& placement, TileKey key) {
    const double side = std::ldexp(1.0, key.level);
    const auto at = [&](double x, double y) {
        return view.spot(onGrid(placement, {(key.column * kTile + x) * side, (key.row * kTile + y) * side}));
    };
    const Spot corner = at(0, 0);
    const Spot right = at(1, 0);
    const Spot down = at(0, 1);
    // What rounding leaves of a turn would cost the painter's quick way for tiles that lie straight.
    const auto step = [](double d) { return std::abs(d) * kTile < 0.001 ? 0.0 : d; };
    return {step(right.x - corner.x),
            step(right.y - corner.y),
            step(down.x - corner.x),
            step(down.y - corner.y),
            corner.x,
            corner.y};
}

FileTiles::FileTiles(sheets::Raster raster, Theme theme) : raster_(std::move(raster)), theme_(theme) {}

RasterSize FileTiles::size() const {
    return {raster_.columns(), raster_.rows()};
}

Result<QImage> FileTiles::tile(TileKey key) const {
    const TilePart part = tilePart(key, size());
    const auto pixels = raster_.read(part.window, part.columns, part.rows);
    if (!pixels) {
        return tl::unexpected(pixels.error());
    }
    return imageOf(*pixels, theme_);
}

Result<void> paintSheet(QPainter& painter, const View& view, const plan::Placement& placement, const TileSource& tiles,
                        Scaling scaling) {
    painter.save();
    // Antialiasing of an image's edge would let the desk shine through between tiles.
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setRenderHint(QPainter::SmoothPixmapTransform, scaling == Scaling::Smooth);
    const QTransform base = painter.transform();
    for (const TileKey key : tilesIn(view, placement, tiles.size(), levelFor(placement, view.zoom()))) {
        const auto image = tiles.tile(key);
        if (!image) {
            painter.restore();
            return tl::unexpected(image.error());
        }
        painter.setTransform(tileOnTable(view, placement, key) * base);
        painter.drawImage(QPointF(0, 0), *image);
    }
    painter.restore();
    return {};
}

std::array<Spot, 4> sheetCorners(const View& view, const plan::Placement& placement, RasterSize raster) {
    const double columns = raster.columns;
    const double rows = raster.rows;
    return {view.spot(onGrid(placement, {0, 0})), view.spot(onGrid(placement, {columns, 0})),
            view.spot(onGrid(placement, {columns, rows})), view.spot(onGrid(placement, {0, rows}))};
}

}  // namespace crosstick::table
