#include "sample-data/sheet/mask.h"

#include <QPainter>

#include "core/drawing/steps.h"
#include "sample-data/sheet/canvas.h"

namespace crosstick::demo {

Mask::Mask() : pixels_(SheetPaper::kColumns, SheetPaper::kRows, QImage::Format_Grayscale8) {
    pixels_.fill(0);
}

void Mask::fill(const QPainterPath& area, std::uint8_t value) {
    QPainter painter(&pixels_);
    painter.scale(SheetPaper::kDotsPerMm, SheetPaper::kDotsPerMm);
    painter.fillPath(area, QColor(value, value, value));
}

int Mask::at(QPointF place) const {
    const int column = static_cast<int>(std::floor(place.x() * SheetPaper::kDotsPerMm));
    const int row = static_cast<int>(std::floor(place.y() * SheetPaper::kDotsPerMm));
    return pixels_.valid(column, row) ? pixels_.constScanLine(row)[column] : 0;
}

double Mask::share(const QRectF& box, std::uint8_t value) const {
    constexpr double kStep = 0.25;
    int all = 0;
    int met = 0;
    const std::vector<double> across = drawing::steps(box.left(), box.right(), kStep);
    for (const double y : drawing::steps(box.top(), box.bottom(), kStep)) {
        for (const double x : across) {
            ++all;
            met += at({x, y}) == value ? 1 : 0;
        }
    }
    return all == 0 ? 0 : static_cast<double>(met) / all;
}

}  // namespace crosstick::demo
