#include "ui/table/stale_marks.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "core/measures/catalogue.h"
#include "ui/table/lettering.h"

namespace crosstick::table {
namespace {

constexpr double kDot = 3;
constexpr double kPitch = 7;
constexpr double kTagHigh = 18;

}  // namespace

bool isRing(const plan::Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    return entry != nullptr && entry->shape == measures::Shape::Area;
}

std::string staleTag(const files::StaleTrace& stale) {
    const double metres = stale.moved.value();
    const auto shown = metres < 100 ? std::llround(metres) : std::llround(metres / 10) * 10;
    return "moved " + std::to_string(shown) + " m";
}

void paintStale(QPainter& painter, const std::vector<QPointF>& line, Ends ends, const std::string& tag,
                const View& view, const press::Faces& faces, const Palette& colours) {
    if (line.empty()) {
        return;
    }
    std::vector<QPointF> dotted = line;
    if (ends == Ends::Closed || line.size() == 1) {
        dotted.push_back(line.front());
    }
    painter.save();
    for (const auto& [colour, wide] : {std::pair(colours.pens.paper, kDot + 2), std::pair(colours.ours, kDot)}) {
        QPen dots(colour, wide, Qt::CustomDashLine, Qt::RoundCap);
        dots.setDashPattern({0.01, kPitch / wide});
        painter.setPen(dots);
        painter.drawPolyline(dotted.data(), static_cast<int>(dotted.size()));
    }
    // The tag stands above a corner that is seen, the one nearest to the table's middle.
    const Spot middle = view.area().middle();
    const QPointF at = *std::min_element(line.begin(), line.end(), [&](const QPointF& a, const QPointF& b) {
        return std::hypot(a.x() - middle.x, a.y() - middle.y) < std::hypot(b.x() - middle.x, b.y() - middle.y);
    });
    const LetterStyle style{11, drawing::Weight::Bold, colours.ours};
    const double wide = std::ceil(lettersWide(tag, style)) + 10;
    const QRectF box(std::round(at.x() - wide / 2), std::round(at.y() - kTagHigh - 8), wide, kTagHigh);
    painter.fillRect(box, colours.well);
    painter.setPen(QPen(colours.ours, 1));
    painter.drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5));
    letter(painter, faces, {box.left() + 5, box.bottom() - 5}, tag, style);
    painter.restore();
}

}  // namespace crosstick::table
