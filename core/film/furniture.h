#pragma once

#include "core/film/page.h"

namespace crosstick::film {

/// A piece of a page with its own upper left corner at 0, 0.
struct Piece {
    drawing::Drawing drawing;
    double width = 0;
    double height = 0;
    Bar bar{};  ///< of a bar: its line, from 0 to 100
};

[[nodiscard]] Piece levelBar(const Speech& say);
[[nodiscard]] Piece uprightBar(const Speech& say);
/// Grid north and magnetic north 20 mm long from one foot, the angle true, and whence it is.
[[nodiscard]] Piece northMark(const movement::GmAngle& gm, geodesy::AngleUnit unit, const Speech& say);
/// A film's place in the stack, cut at the upper right: one notch each, a wide one for five. Right end at width.
[[nodiscard]] Piece notches(std::size_t number, std::size_t count, const Speech& say = filled);
[[nodiscard]] Piece marking(const std::string& text);

/// A tick at 0, 0.
/// @param inward  -1 or +1 along x and y (down): the quadrant toward the window's middle, where the label stands
struct TickDrawing {
    drawing::Drawing drawing;
    drawing::Box box;    ///< what nothing else may touch: arms with 2 mm more, and the label
    drawing::Box label;  ///< of the letters
};
enum class TickLabel { Full, Figures };
[[nodiscard]] TickDrawing tick(geodesy::PlanePoint at, drawing::Vector inward, TickLabel label);

/// Angle marks at a square's corners (film millimetres) and its name and side at the lower left.
struct SquareMarks {
    drawing::Drawing drawing;
    std::vector<drawing::Box> boxes;
};
[[nodiscard]] SquareMarks squareMarks(const drawing::Box& square, const std::string& name, PaperMm side);

/// Frame of the window and the coordinates of its corners outside it.
[[nodiscard]] drawing::Drawing windowFrame(const drawing::Box& window, const plan::Registration& registration);
inline constexpr double kCornerRoom = 2.9;  ///< what the coordinates take above and below the window

}  // namespace crosstick::film
