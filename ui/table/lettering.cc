#include "ui/table/lettering.h"

#include <string>

#include <QGlyphRun>
#include <QPainter>

#include "core/drawing/text_ruler.h"

namespace crosstick::table {

double lettersWide(std::string_view text, const LetterStyle& style) {
    return drawing::bundledRuler().advance(text, style.weight) * style.size;
}

void letter(QPainter& painter, const press::Faces& faces, Spot start, std::string_view text, const LetterStyle& style,
            Degrees turned) {
    painter.save();
    painter.translate(start.x, start.y);
    painter.rotate(-turned.value());
    painter.setPen(style.colour);
    const auto row = drawing::setRow(text, style.weight);
    QList<quint32> glyphs;
    QList<QPointF> places;
    for (std::size_t at = 0; at < row.size(); ++at) {
        glyphs.push_back(faces.glyph(row[at].letter, row[at].face, style.weight));
        places.emplace_back(row[at].at * style.size, 0);
        if (at + 1 == row.size() || row[at + 1].face != row[at].face) {
            QGlyphRun run;
            run.setRawFont(faces.sized(row[at].face, style.weight, style.size));
            run.setGlyphIndexes(glyphs);
            run.setPositions(places);
            painter.drawGlyphRun({}, run);
            glyphs.clear();
            places.clear();
        }
    }
    painter.restore();
}

std::string cutToWidth(std::string_view text, const LetterStyle& style, double most) {
    if (lettersWide(text, style) <= most) {
        return std::string(text);
    }
    std::string cut(text);
    const auto isTail = [](char c) { return (static_cast<unsigned char>(c) & 0xc0U) == 0x80U; };
    while (!cut.empty() && lettersWide(cut + "...", style) > most) {
        while (cut.size() > 1 && isTail(cut.back())) {
            cut.pop_back();
        }
        cut.pop_back();
    }
    return cut + "...";
}

}  // namespace crosstick::table
