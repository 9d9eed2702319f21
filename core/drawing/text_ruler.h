#pragma once

#include <string_view>

#include "core/drawing/drawing.h"

namespace crosstick::drawing {

/// How wide letters are. The core's own ruler reads a table made from the bundled faces (face_table.cc), so that
/// neither core nor tests need a font engine; a test compares the table with the faces.
class TextRuler {
  public:
    virtual ~TextRuler() = default;
    /// Sum of advances in em. A letter that neither face has counts as the replacement box.
    [[nodiscard]] virtual double advance(std::string_view utf8, Weight weight) const = 0;
};

/// The bundled faces: B612, and DejaVu Sans for letters that B612 lacks.
[[nodiscard]] const TextRuler& bundledRuler();

/// Height of a capital in em (B612: 0.760): font size = capHeight / kCapital.
inline constexpr double kCapital = 0.760;

/// Width of a row of letters in millimetres.
[[nodiscard]] double textWidth(std::string_view utf8, double capHeight, Weight weight = Weight::Regular);

/// Which bundled face sets a letter.
enum class Face { Main, Wide };
struct GlyphPlace {
    char32_t letter;
    Face face;
    double at;  ///< em from the start of the row
};
/// Every letter of a row with its face and its place: what the painter sets and the ruler measures are one thing.
[[nodiscard]] std::vector<GlyphPlace> setRow(std::string_view utf8, Weight weight);

}  // namespace crosstick::drawing
