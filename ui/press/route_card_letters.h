#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/drawing/drawing.h"

namespace crosstick::press {

/// How a row of letters on a card is written.
struct Hand {
    double capHeight = 2.0;  ///< millimetres
    drawing::Weight weight = drawing::Weight::Regular;
};
enum class Align { Left, Middle, Right };

[[nodiscard]] double widthOf(std::string_view text, Hand hand);

/// The text where it fits, else its beginning with "…". Cut between letters, never inside one (UTF-8).
[[nodiscard]] std::string fitted(const std::string& text, double width, Hand hand);
/// Rows no wider than that, broken at blanks, a longer word between letters. What is left after the last row is marked
/// by "…" there. @param most  at least 1
[[nodiscard]] std::vector<std::string> wrapped(const std::string& text, double width, Hand hand, std::size_t most);
/// Parts joined by ", " into rows no wider than that; a part is broken only where it alone is too wide.
[[nodiscard]] std::vector<std::string> packed(const std::vector<std::string>& parts, double width, Hand hand);
/// "a, b, c" in its parts.
[[nodiscard]] std::vector<std::string> atCommas(std::string_view text);

/// Collects the marks of a card. Black only: cards survive any printer.
class CardPen {
  public:
    /// @param at  on the base line: left end, middle or right end by the alignment
    void write(const std::string& text, drawing::Point at, Hand hand, Align align = Align::Left);
    /// Figures that must never leave their column: written smaller until they fit.
    void writeWithin(const std::string& text, drawing::Point at, double width, Hand hand, Align align);
    void line(drawing::Point from, drawing::Point to, double width);
    void block(const drawing::Box& box);
    void dot(drawing::Point middle, double diameter);
    void append(const drawing::Drawing& other) { drawing_.append(other); }
    [[nodiscard]] drawing::Drawing take() && { return std::move(drawing_); }

  private:
    drawing::Drawing drawing_;
};

}  // namespace crosstick::press
