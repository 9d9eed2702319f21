#include "ui/table/lettering.h"

#include <string>

#include <QPainter>
#include <QPainterPath>

#include "core/drawing/text_ruler.h"

namespace crosstick::table {

double lettersWide(std::string_view text, const LetterStyle& style) {
    return drawing::bundledRuler().advance(text, style.weight) * style.size;
}

void letter(QPainter& painter, const press::Faces& faces, Spot start, std::string_view text, const LetterStyle& style,
            Degrees turned) {
    drawing::Text row;
    row.text = std::string(text);
    row.capHeight = style.size * drawing::kCapital;
    row.weight = style.weight;
    painter.save();
    painter.translate(start.x, start.y);
    painter.rotate(-turned.value());
    painter.fillPath(faces.outlines(row), style.colour);
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
