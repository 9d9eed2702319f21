#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/drawing/drawing.h"

namespace crosstick::film {

inline constexpr double kSmallLetters = 1.8;
inline constexpr double kLetters = 2.0;
inline constexpr double kThinPen = 0.25;

enum class Align { Left, Middle, Right };

/// A row of black letters; `at` is the left end, middle or right end of its base line.
[[nodiscard]] drawing::Text row(std::string text, drawing::Point at, double capHeight, Align align = Align::Left,
                                drawing::Weight weight = drawing::Weight::Regular);
/// Rows no wider than a width, broken at blanks; a word that is wider stands alone.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, double width, double capHeight);
/// Straight black lines from point to point.
[[nodiscard]] drawing::Stroke lines(std::vector<drawing::Polyline> pieces, double pen = kThinPen);
[[nodiscard]] drawing::Polyline outline(const drawing::Box& box);

}  // namespace crosstick::film
