// Marks of the hand's tools: what it is drawn to, what is aimed at, the protractor.
#include <cmath>

#include <fmt/format.h>

#include <QPainter>

#include "core/drawing/text_ruler.h"
#include "ui/table/lettering.h"
#include "ui/table/overlay.h"

namespace crosstick::table {
namespace {

constexpr double kMark = 6;  // from the middle to a corner
constexpr double kRose = 92;

QPointF turned(QPointF middle, Degrees azimuthOnScreen, double out) {
    const double angle = radians(azimuthOnScreen).value();
    return middle + QPointF(std::sin(angle) * out, -std::cos(angle) * out);
}

/// Letters about a place, on a little of the sheet's own ground.
void letterAbout(QPainter& painter, QPointF middle, const std::string& text, const LetterStyle& style,
                 const press::Faces& faces, const Palette& colours) {
    const double wide = lettersWide(text, style);
    QColor ground = colours.pens.paper;
    ground.setAlpha(215);
    painter.fillRect(QRectF(middle.x() - wide / 2 - 2, middle.y() - 7, wide + 4, 14), ground);
    letter(painter, faces, {middle.x() - wide / 2, middle.y() + 4}, text, style);
}

void paintNorth(QPainter& painter, QPointF middle, Degrees way, const std::string& letters, double out,
                const press::Faces& faces, const Palette& colours) {
    painter.setPen(QPen(colours.ours, 1.5));
    painter.drawLine(turned(middle, way, kRose - 8), turned(middle, way, out));
    const LetterStyle style{11, drawing::Weight::Bold, colours.ours};
    letterAbout(painter, turned(middle, way, out + 8), letters, style, faces, colours);
}

}  // namespace

void paintOther(QPainter& painter, const std::vector<QPointF>& line, const Palette& colours) {
    if (line.size() < 2) {
        return;
    }
    painter.save();
    for (const QPen& pen : {QPen(colours.pens.paper, 4), QPen(colours.ours, 1.5, Qt::DashLine, Qt::FlatCap)}) {
        painter.setPen(pen);
        painter.drawPolyline(line.data(), static_cast<int>(line.size()));
    }
    painter.restore();
}

void paintSnap(QPainter& painter, QPointF at, const std::string& word, const View& view, const press::Faces& faces,
               const Palette& colours) {
    const QPointF corners[] = {at + QPointF(0, -kMark), at + QPointF(kMark, 0), at + QPointF(0, kMark),
                               at + QPointF(-kMark, 0)};
    painter.save();
    painter.setBrush(Qt::NoBrush);
    for (const QPen& pen : {QPen(colours.pens.paper, 4), QPen(colours.ours, 1.5)}) {
        painter.setPen(pen);
        painter.drawPolygon(corners, 4);
    }
    const LetterStyle style{11, drawing::Weight::Bold, colours.ours};
    const double wide = lettersWide(word, style);
    const double left = at.x() + 12 + wide > view.area().right() - 4 ? at.x() - 12 - wide : at.x() + 12;
    const double base = at.y() - 10 < view.area().top + 14 ? at.y() + 22 : at.y() - 10;
    QColor ground = colours.pens.paper;
    ground.setAlpha(215);
    painter.fillRect(QRectF(left - 3, base - 11, wide + 6, 15), ground);
    letter(painter, faces, {left, base}, word, style);
    painter.restore();
}

std::string snapWord(const drafting::Snap& snap, const std::string& name) {
    switch (snap.what) {
        case drafting::Snap::What::Point:
            return name.empty() ? "point" : name;
        case drafting::Snap::What::Tick:
            return "tick";
        case drafting::Snap::What::Edge:
            return "on " + (name.empty() ? std::string("line") : name);
        case drafting::Snap::What::Grid:
            break;
    }
    return "grid";
}

void paintRose(QPainter& painter, QPointF at, const tools::Rose& rose, const View& view, const press::Faces& faces,
               const Palette& colours) {
    painter.save();
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colours.pens.paper, 3.5));
    painter.drawEllipse(at, kRose, kRose);
    painter.setPen(QPen(colours.ours, 1));
    painter.drawEllipse(at, kRose, kRose);
    const LetterStyle style{11, drawing::Weight::Regular, colours.ours};
    for (int tens = 0; tens < 36; ++tens) {
        const Degrees way = Degrees(tens * 10) - view.up();
        const bool isNamed = tens % 3 == 0;
        painter.setPen(QPen(colours.ours, 1));
        painter.drawLine(turned(at, way, kRose - (isNamed ? 9 : 5)), turned(at, way, kRose));
        if (isNamed && tens != 0) {
            const std::string figures = fmt::format("{:03}", tens * 10);
            letterAbout(painter, turned(at, way, kRose - 21), figures, style, faces, colours);
        }
    }
    paintNorth(painter, at, -view.up(), "G", kRose + 10, faces, colours);
    paintNorth(painter, at, rose.toMagnetic - view.up(), "M", kRose + 26, faces, colours);
    paintNorth(painter, at, rose.toTrue - view.up(), "T", kRose + 42, faces, colours);
    painter.restore();
}

}  // namespace crosstick::table
