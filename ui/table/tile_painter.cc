#include "ui/table/tile_painter.h"

#include <cmath>
#include <utility>

#include <QPainter>
#include <QTransform>

namespace crosstick::table {
namespace {

constexpr double kUnseen = 0.2;       // of a pixel, that a corner may lie off
constexpr double kOutOfSight = -1e6;  // where the projection does not reach

}  // namespace

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

QTransform onTable(const View& view, const SheetLie& lie, const QRectF& window, QSize picture) {
    const auto at = [&](double x, double y) {
        return view.spot(lie.onGrid({window.left() + x * window.width(), window.top() + y * window.height()}));
    };
    const Spot corner = at(0, 0);
    const Spot right = at(1, 0);
    const Spot down = at(0, 1);
    const double wide = picture.width();
    const double high = picture.height();
    // What rounding leaves of a turn would cost the painter's quick way for tiles that lie straight.
    const auto step = [](double over, double pixels) { return std::abs(over) < 0.001 ? 0.0 : over / pixels; };
    const QTransform affine(step(right.x - corner.x, wide), step(right.y - corner.y, wide),
                            step(down.x - corner.x, high), step(down.y - corner.y, high), corner.x, corner.y);
    if (lie.isStraight()) {
        return affine;
    }
    const Spot last = at(1, 1);
    if (!std::isfinite(corner.x + right.x + down.x + last.x)) {
        return QTransform::fromTranslate(kOutOfSight, kOutOfSight);
    }
    const QPointF meant = affine.map(QPointF(wide, high));
    if (std::abs(meant.x() - last.x) + std::abs(meant.y() - last.y) < kUnseen) {
        return affine;
    }
    QTransform bent;
    const QPolygonF from({QPointF(0, 0), QPointF(wide, 0), QPointF(wide, high), QPointF(0, high)});
    const QPolygonF to(
        {QPointF(corner.x, corner.y), QPointF(right.x, right.y), QPointF(last.x, last.y), QPointF(down.x, down.y)});
    return QTransform::quadToQuad(from, to, bent) ? bent : affine;
}

QTransform tileOnTable(const View& view, const SheetLie& lie, TileKey key) {
    const double side = std::ldexp(kTile, key.level);
    return onTable(view, lie, QRectF(key.column * side, key.row * side, side, side), {kTile, kTile});
}

/// What is drawn on a film, by night in its light.
QImage filmImageOf(const sheets::Pixels& pixels, const sheets::PixelWindow& window, const sheets::SeeThrough& film,
                   Theme theme) {
    QImage image(pixels.columns, pixels.rows, QImage::Format_ARGB32_Premultiplied);
    const double across = static_cast<double>(window.columns) / pixels.columns;
    const double down = static_cast<double>(window.rows) / pixels.rows;
    for (int y = 0; y < pixels.rows; ++y) {
        const auto* from = &pixels.rgb[static_cast<std::size_t>(y) * static_cast<std::size_t>(pixels.columns)];
        auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
        for (int x = 0; x < pixels.columns; ++x) {
            const QRgb ink = film.pixel(from[x], {window.column + (x + 0.5) * across, window.row + (y + 0.5) * down});
            const QRgb seen =
                theme == Theme::Night ? (byNight(ink | 0xff000000U) & 0xffffffU) | (ink & 0xff000000U) : ink;
            line[x] = qPremultiply(seen);
        }
    }
    return image;
}

FileTiles::FileTiles(sheets::Raster raster, Theme theme, Ground ground) : raster_(std::move(raster)), theme_(theme) {
    if (ground == Ground::Film) {  // one that cannot be looked over is shown as it is
        if (auto film = sheets::SeeThrough::of(raster_)) {
            film_ = std::move(*film);
        }
    }
}

RasterSize FileTiles::size() const {
    return {raster_.columns(), raster_.rows()};
}

Result<QImage> FileTiles::tile(TileKey key) const {
    const TilePart part = tilePart(key, size());
    const auto pixels = raster_.read(part.window, part.columns, part.rows);
    if (!pixels) {
        return tl::unexpected(pixels.error());
    }
    return film_ ? filmImageOf(*pixels, part.window, *film_, theme_) : imageOf(*pixels, theme_);
}

Result<void> paintSheet(QPainter& painter, const View& view, const SheetLie& lie, const TileSource& tiles,
                        Scaling scaling) {
    painter.save();
    // Antialiasing of an image's edge would let the desk shine through between tiles.
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setRenderHint(QPainter::SmoothPixmapTransform, scaling == Scaling::Smooth);
    const QTransform base = painter.transform();
    for (const TileKey key : tilesIn(view, lie, tiles.size(), levelFor(lie, view.zoom()))) {
        const auto image = tiles.tile(key);
        if (!image) {
            painter.restore();
            return tl::unexpected(image.error());
        }
        painter.setTransform(tileOnTable(view, lie, key) * base);
        painter.drawImage(QPointF(0, 0), *image);
    }
    painter.restore();
    return {};
}

}  // namespace crosstick::table
