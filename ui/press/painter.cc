#include "ui/press/painter.h"

#include <cmath>

#include <QGlyphRun>
#include <QPainter>
#include <QPainterPath>

#include "ui/press/kept_letters.h"

namespace crosstick::press {
namespace {

constexpr double kMiterLimit = 4;

bool isFinite(drawing::Point p) {
    return std::isfinite(p.x) && std::isfinite(p.y);
}

QPointF onPaper(drawing::Point p) {
    return {p.x, p.y};
}

/// One line, broken where a point is not finite.
void addLine(QPainterPath& path, const drawing::Polyline& line) {
    bool begun = false;
    bool whole = true;
    for (const drawing::Point p : line.points) {
        if (!isFinite(p)) {
            begun = whole = false;
        } else if (begun) {
            path.lineTo(onPaper(p));
        } else {
            path.moveTo(onPaper(p));
            begun = true;
        }
    }
    if (line.closed && whole && begun) {
        path.closeSubpath();
    }
}

bool isDot(const drawing::Polyline& line) {
    for (const drawing::Point p : line.points) {
        if (!isFinite(p) || p != line.points.front()) {
            return false;
        }
    }
    return !line.points.empty();
}

/// A line of no length has no ink but that of its round caps.
void paintDots(QPainter& painter, const drawing::Stroke& stroke, const QColor& colour) {
    if (stroke.cap != drawing::Cap::Round) {
        return;
    }
    QPainterPath dots;
    for (const drawing::Polyline& line : stroke.pieces) {
        if (isDot(line)) {
            dots.addEllipse(onPaper(line.points.front()), stroke.width / 2, stroke.width / 2);
        }
    }
    painter.fillPath(dots, colour);
}

void paintMark(QPainter& painter, const drawing::Stroke& stroke, const Brushes& brushes) {
    QPen pen(brushes.inks.of(stroke.ink), stroke.width);
    pen.setCapStyle(stroke.cap == drawing::Cap::Butt ? Qt::FlatCap : Qt::RoundCap);
    pen.setJoinStyle(stroke.join == drawing::Join::Miter ? Qt::SvgMiterJoin : Qt::RoundJoin);
    pen.setMiterLimit(kMiterLimit);
    QPainterPath path;
    for (const drawing::Polyline& line : stroke.pieces) {
        if (!isDot(line)) {
            addLine(path, line);
        }
    }
    if (!path.isEmpty()) {
        painter.strokePath(path, pen);
    }
    paintDots(painter, stroke, pen.color());
}

void paintMark(QPainter& painter, const drawing::Fill& fill, const Brushes& brushes) {
    QPainterPath path;
    path.setFillRule(Qt::OddEvenFill);
    for (const auto& ring : fill.rings) {
        addLine(path, {ring, true});
    }
    painter.fillPath(path, brushes.inks.of(fill.ink));
}

/// One glyph run for each stretch of letters of one face. Blanks are left out: places are given, and the face's one
/// glyph for blank and tabulator would come out as a tabulator where text is copied from the page.
void setLetters(QPainter& painter, const drawing::Text& text, const Brushes& brushes) {
    const double scale = text.capHeight / drawing::kCapital / Faces::kSize;
    painter.scale(scale, scale);
    painter.setPen(brushes.inks.of(text.ink));
    QList<quint32> glyphs;
    QList<QPointF> places;
    const auto row = drawing::setRow(text.text, text.weight);
    for (std::size_t at = 0; at < row.size(); ++at) {
        if (row[at].letter != U' ') {
            glyphs.push_back(brushes.faces.glyph(row[at].letter, row[at].face, text.weight));
            places.emplace_back(row[at].at * Faces::kSize, 0);
        }
        if (at + 1 == row.size() || row[at + 1].face != row[at].face) {
            QGlyphRun run;
            run.setRawFont(brushes.faces.font(row[at].face, text.weight));
            run.setGlyphIndexes(glyphs);
            run.setPositions(places);
            painter.drawGlyphRun({}, run);
            glyphs.clear();
            places.clear();
        }
    }
}

void paintMark(QPainter& painter, const drawing::Text& text, const Brushes& brushes) {
    if (!isFinite(text.start) || !std::isfinite(text.angle.value())) {
        return;
    }
    if (brushes.kept != nullptr && brushes.letters == Letters::AsOutlines &&
        brushes.kept->paint(painter, text, brushes)) {
        return;
    }
    painter.save();
    painter.translate(onPaper(text.start));
    painter.rotate(-text.angle.value());
    const bool rimmed = brushes.halo == HaloRule::Painted && text.halo == drawing::Halo::Paper;
    if (rimmed || brushes.letters == Letters::AsOutlines) {
        paintOutlines(painter, brushes.faces.outlines(text), text, brushes);
    }
    if (brushes.letters == Letters::AsText) {
        setLetters(painter, text, brushes);
    }
    painter.restore();
}

constexpr QRgb kBlackPen = 0xff111417;
constexpr QRgb kBluePen = 0xff0b3a8c;
constexpr QRgb kRedPen = 0xffb0121b;
constexpr QRgb kGreenPen = 0xff0f5e33;
constexpr QRgb kYellowPen = 0xff8a6500;  // dark enough for letters: 5.2 to 1 on white
constexpr QRgb kNightMeasure = 0xfff2463a;
constexpr QRgb kNightGround = 0xff0c0101;

}  // namespace

Inks dayInks() {
    return {{kBlackPen, kBluePen, kRedPen, kGreenPen, kYellowPen}, Qt::white};
}

Inks nightInks() {
    return {{kNightMeasure, kNightMeasure, kNightMeasure, kNightMeasure, kNightMeasure}, kNightGround};
}

Inks paperInks() {
    return {{Qt::black, kBluePen, kRedPen, kGreenPen, kYellowPen}, Qt::white};
}

Inks onePenInks() {
    return {{Qt::black, Qt::black, Qt::black, Qt::black, Qt::black}, Qt::white};
}

void paintOutlines(QPainter& painter, const QPainterPath& outlines, const drawing::Text& text, const Brushes& brushes) {
    if (brushes.halo == HaloRule::Painted && text.halo == drawing::Halo::Paper) {
        painter.strokePath(outlines,
                           QPen(brushes.inks.paper, 2 * kHaloRim, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    }
    if (brushes.letters == Letters::AsOutlines) {
        painter.fillPath(outlines, brushes.inks.of(text.ink));
    }
}

void paint(QPainter& painter, const drawing::Drawing& drawing, const Brushes& brushes) {
    painter.save();
    for (const drawing::Mark& mark : drawing.marks) {
        std::visit([&](const auto& one) { paintMark(painter, one, brushes); }, mark);
    }
    painter.restore();
}

}  // namespace crosstick::press
