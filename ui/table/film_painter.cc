#include "ui/table/film_painter.h"

#include <algorithm>

#include <QPainter>

#include "ui/press/film_marks.h"
#include "ui/table/covered_labels.h"

namespace crosstick::table {
namespace {

constexpr double kInner = 4;     ///< from the outer line of the edge to the inner one
constexpr double kHaloRoom = 1;  ///< millimetres that halos and pens reach beyond an extent

/// What of a film lies in a view's area, in its millimetres.
drawing::Box seenOf(const View& view, const film::Frame& frame) {
    drawing::Box seen;
    for (const Spot corner : view.corners()) {
        const drawing::Point p = frame.gridToFilm(view.place(corner));
        seen = seen.joined({p.x, p.y, p.x, p.y});
    }
    return seen;
}

/// The upright box round a part of the grid as a view shows it.
QRectF paintedBox(const View& view, const GridBox& ground) {
    QPolygonF corners;
    for (const Metres easting : {ground.southWest.easting, ground.northEast.easting}) {
        for (const Metres northing : {ground.southWest.northing, ground.northEast.northing}) {
            const Spot spot = view.spot({easting, northing});
            corners << QPointF(spot.x, spot.y);
        }
    }
    return corners.boundingRect();
}

QRectF snapped(const QRectF& r) {
    return QRectF(QPointF(std::round(r.left()), std::round(r.top())),
                  QPointF(std::round(r.right()), std::round(r.bottom())));
}

}  // namespace

QTransform filmTransform(const View& view, const film::Frame& frame) {
    const Spot origin = view.spot(frame.filmToGrid({0, 0}));
    const Spot right = view.spot(frame.filmToGrid({1, 0}));
    const Spot down = view.spot(frame.filmToGrid({0, 1}));
    return {right.x - origin.x, right.y - origin.y, down.x - origin.x, down.y - origin.y, origin.x, origin.y};
}

void paintFilm(QPainter& painter, const View& view, const FilmInk& film, const press::Brushes& brushes) {
    painter.save();
    const QTransform toTable = filmTransform(view, film.frame);
    painter.setTransform(toTable, true);
    const drawing::Box seen = seenOf(view, film.frame).grown(kHaloRoom);
    for (const std::size_t item : film.shown) {
        if (film.extents[item].meets(seen)) {
            const symbols::EngravedItem& inked = film.engraved->items[item];
            const auto covered = film.covered.find(item);
            press::paint(painter,
                         covered == film.covered.end() ? inked.drawing : withoutLetters(inked, covered->second),
                         brushes);
        }
    }
    drawing::Drawing ticks = film.ticks;
    for (drawing::Mark& mark : ticks.marks) {
        if (auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
            stroke->width =
                std::max(stroke->width, 1 / std::hypot(toTable.m11(), toTable.m12()));  // never under a pixel
        }
    }
    press::paint(painter, ticks, brushes);
    painter.restore();
}

QImage flattened(const View& view, const std::vector<FilmInk>& films, std::size_t count, const press::Brushes& brushes,
                 QSize size, double deviceRatio) {
    QImage image(size, QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(deviceRatio);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    for (std::size_t n = 0; n < std::min(count, films.size()); ++n) {
        paintFilm(painter, view, films[n], brushes);
    }
    return image;
}

void paintFilmEdge(QPainter& painter, const View& view, const FilmInk& film, int placeInSet, const Palette& palette) {
    const drawing::Box window = film.frame.window();
    std::optional<GridBox> ground;
    if (!window.isEmpty()) {
        ground = GridBox{film.frame.filmToGrid({window.left, window.bottom}),
                         film.frame.filmToGrid({window.right, window.top})};
    }
    paintFilmEdge(painter, view, ground, placeInSet, palette);
}

void paintFilmEdge(QPainter& painter, const View& view, const std::optional<GridBox>& window, int placeInSet,
                   const Palette& palette) {
    const Area& area = view.area();
    painter.setBrush(Qt::NoBrush);
    const QRectF edge(area.left + 1, area.top + 1, area.width - 2, area.height - 2);
    if (window && edge.contains(paintedBox(view, *window))) {
        const Spot upper = view.spot({window->southWest.easting, window->northEast.northing});
        const Spot right = view.spot(window->northEast);
        const double turn = degrees(Radians(std::atan2(right.y - upper.y, right.x - upper.x))).value();
        const double wide = window->width().value() * view.zoom().value();
        const double high = window->height().value() * view.zoom().value();
        painter.save();
        QRectF film(0, 0, wide, high);
        if (turn == 0) {
            film = snapped(QRectF(upper.x, upper.y, wide, high));
        } else {
            painter.translate(upper.x, upper.y);
            painter.rotate(turn);
        }
        painter.strokePath(press::filmOutline(film, placeInSet), QPen(palette.ours, 2));
        painter.setPen(QPen(palette.ours, 1));
        painter.drawRect(film.adjusted(kInner + 0.5, 2 * kInner + 0.5, -kInner - 2.5, -kInner - 0.5));
        painter.restore();
        return;
    }
    painter.setPen(QPen(palette.ours, 2));
    painter.drawRect(edge);
}

}  // namespace crosstick::table
