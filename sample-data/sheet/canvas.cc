#include "sample-data/sheet/canvas.h"

#include <QTransform>

#include "sample-data/faults.h"
#include "sample-data/ground/curve.h"

namespace crosstick::demo {
namespace {

constexpr double kCapital = 0.76;  // of an em
constexpr double kLoadedAt = 1000;

}  // namespace

Result<Letters> Letters::open(const std::filesystem::path& faces) {
    Letters letters;
    const std::map<Cut, const char*> files{
        {Cut::Regular, "B612-Regular.otf"}, {Cut::Bold, "B612-Bold.otf"}, {Cut::Italic, "B612-Italic.otf"}};
    for (const auto& [cut, name] : files) {
        const auto file = faces / name;
        QRawFont font(QString::fromStdString(file.string()), kLoadedAt, QFont::PreferNoHinting);
        if (!font.isValid()) {
            return fail(kNoData, {{"file", file.string()}});
        }
        letters.fonts_.emplace(cut, std::move(font));
    }
    return letters;
}

Letters::Letter Letters::letter(QChar c, Cut cut, double capHeight) const {
    const QRawFont& font = fonts_.at(cut);
    const double size = capHeight / kCapital / kLoadedAt;
    const auto glyphs = font.glyphIndexesForString(QString(c));
    if (glyphs.isEmpty()) {
        return {{}, 0};
    }
    const auto advance = font.advancesForGlyphIndexes(glyphs, QRawFont::SeparateAdvances).front().x();
    return {QTransform::fromScale(size, size).map(font.pathForGlyph(glyphs.front())), advance * size};
}

QPainterPath Letters::row(const QString& text, Cut cut, double capHeight, double spacing) const {
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    double x = 0;
    for (const QChar c : text) {
        const Letter one = letter(c, cut, capHeight);
        path.addPath(one.path.translated(x, 0));
        x += one.advance + spacing * capHeight / kCapital;
    }
    return path;
}

double Letters::width(const QString& text, Cut cut, double capHeight, double spacing) const {
    double x = 0;
    for (const QChar c : text) {
        x += letter(c, cut, capHeight).advance + spacing * capHeight / kCapital;
    }
    return x - spacing * capHeight / kCapital;
}

void Canvas::stroke(const QPainterPath& path, const QColor& colour, double width, Qt::PenCapStyle cap) const {
    painter.strokePath(path, QPen(colour, width, Qt::SolidLine, cap, Qt::RoundJoin));
}

void Canvas::dashes(const QPainterPath& path, const QColor& colour, double width, double on, double off) const {
    QPen pen(colour, width, Qt::CustomDashLine, Qt::FlatCap, Qt::RoundJoin);
    pen.setDashPattern({on / width, off / width});
    painter.strokePath(path, pen);
}

void Canvas::letter(const QPainterPath& row, const QColor& colour, double rimWidth) const {
    QBrush bareGround(bare);
    bareGround.setTransform(QTransform::fromScale(1 / SheetPaper::kDotsPerMm, 1 / SheetPaper::kDotsPerMm));
    painter.strokePath(row, QPen(bareGround, 2 * rimWidth, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.fillPath(row, colour);
}

QPainterPath pathOf(const Line& line, bool closed) {
    QPainterPath path;
    for (std::size_t n = 0; n < line.size(); ++n) {
        const QPointF p = SheetPaper::at(line[n]);
        n == 0 ? path.moveTo(p) : path.lineTo(p);
    }
    if (closed && !line.empty()) {
        path.closeSubpath();
    }
    return path;
}

Line curved(const Line& points, bool closed) {
    return smoothed(points, Metres(8), closed ? Ends::Closed : Ends::Open);
}

}  // namespace crosstick::demo
