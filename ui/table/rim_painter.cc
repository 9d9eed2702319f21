#include "ui/table/rim_painter.h"

#include <cmath>

#include <QPainter>

#include "core/drawing/text_ruler.h"
#include "ui/table/lettering.h"

namespace crosstick::table {
namespace {

constexpr double kLetters = 11;
constexpr double kTickLong = 4;
constexpr double kAir = 3;  ///< between a figure and the corner or the end of the rim

/// A line one pixel wide falls on whole pixels only in their middle.
double onPixel(double at) {
    return std::floor(at) + 0.5;
}

void paintUpper(QPainter& painter, const View& view, const RimFigures& figures, const press::Faces& faces,
                const LetterStyle& style, const Palette& palette) {
    const double base = std::round(kRim / 2 + kLetters * drawing::kCapital / 2);
    for (const RimFigure& figure : figures.upper) {
        painter.setPen(QPen(palette.edge, 1));
        painter.drawLine(QPointF(onPixel(figure.at), kRim - kTickLong), QPointF(onPixel(figure.at), kRim));
        const double wide = lettersWide(figure.figure, style);
        const double start = figure.at - wide / 2;
        if (start > kRim + kAir && start + wide < view.area().right() - kAir) {
            letter(painter, faces, {start, base - 1}, figure.figure, style);
        }
    }
}

void paintLeft(QPainter& painter, const View& view, const RimFigures& figures, const press::Faces& faces,
               const LetterStyle& style, const Palette& palette) {
    const double capital = kLetters * drawing::kCapital;
    for (const RimFigure& figure : figures.left) {
        painter.setPen(QPen(palette.edge, 1));
        painter.drawLine(QPointF(kRim - kTickLong, onPixel(figure.at)), QPointF(kRim, onPixel(figure.at)));
        const double wide = lettersWide(figure.figure, style);
        const bool lies = wide <= kRim - 2;
        const double half = (lies ? capital : wide) / 2;
        if (figure.at - half < kRim + kAir || figure.at + half > view.area().bottom() - kAir) {
            continue;
        }
        if (lies) {
            letter(painter, faces, {(kRim - wide) / 2 - 0.5, figure.at + capital / 2}, figure.figure, style);
        } else {  // three figures and more stand along the rim and are read from the right
            letter(painter, faces, {kRim / 2 + capital / 2, figure.at + wide / 2}, figure.figure, style, Degrees(90));
        }
    }
}

}  // namespace

void paintRim(QPainter& painter, const View& view, const RimFigures& figures, const press::Faces& faces,
              const Palette& palette) {
    const Area& area = view.area();
    painter.fillRect(QRectF(0, 0, area.right(), kRim), palette.card);
    painter.fillRect(QRectF(0, 0, kRim, area.bottom()), palette.card);
    painter.setPen(QPen(palette.edge, 1));
    painter.drawLine(QPointF(kRim - 0.5, kRim - 0.5), QPointF(area.right(), kRim - 0.5));
    painter.drawLine(QPointF(kRim - 0.5, kRim - 0.5), QPointF(kRim - 0.5, area.bottom()));
    const LetterStyle style{kLetters, drawing::Weight::Bold, palette.inkTwo};
    paintUpper(painter, view, figures, faces, style, palette);
    paintLeft(painter, view, figures, faces, style, palette);
}

void paintGrid(QPainter& painter, const View& view, const RimFigures& figures, const Palette& palette) {
    painter.setPen(QPen(palette.grid, 1));
    const double quarter = view.up().value() / 90;
    const bool isStraight = quarter == std::round(quarter);
    for (const GridLine& line : figures.lines) {
        const bool isUpright = line.kind == figures.above;
        Spot from = line.from;
        Spot to = line.to;
        if (isStraight) {
            (isUpright ? from.x : from.y) = (isUpright ? to.x : to.y) = onPixel(isUpright ? from.x : from.y);
        }
        painter.drawLine(QPointF(from.x, from.y), QPointF(to.x, to.y));
    }
}

}  // namespace crosstick::table
