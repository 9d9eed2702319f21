#pragma once

#include <string_view>

#include <QColor>

#include "core/drawing/drawing.h"
#include "ui/press/faces.h"
#include "ui/table/view.h"

class QPainter;

namespace crosstick::table {

/// Letters of the table's own furniture, in logical pixels.
struct LetterStyle {
    double size = 11;  ///< pixels to the em
    drawing::Weight weight = drawing::Weight::Regular;
    QColor colour;
};

[[nodiscard]] double lettersWide(std::string_view text, const LetterStyle& style);  ///< logical pixels
/// A row with the left end of its base line at a spot, turned counter-clockwise.
void letter(QPainter& painter, const press::Faces& faces, Spot start, std::string_view text, const LetterStyle& style,
            Degrees turned = Degrees(0));
/// The row cut at its end so that it is no wider than so many pixels, with three points where something was cut.
[[nodiscard]] std::string cutToWidth(std::string_view text, const LetterStyle& style, double most);

}  // namespace crosstick::table
