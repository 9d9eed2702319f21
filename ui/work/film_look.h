#pragma once

#include <array>

namespace crosstick::work {

/// A colour that a film's ink has on the table alone, to be told from other films: on paper it keeps its pens.
enum class Tint { None, Amber, Rose, Teal };
inline constexpr std::array kTints{Tint::None, Tint::Amber, Tint::Rose, Tint::Teal};

/// How a film lies on the table: not a part of the plan.
struct FilmLook {
    bool shown = true;
    double strength = 1;  ///< 0 to 1
    Tint tint = Tint::None;
    friend bool operator==(const FilmLook&, const FilmLook&) = default;
};

/// The strengths that a film is given, in per cent; ours.
inline constexpr std::array kStrengths{100, 70, 50, 30};
enum class Fading { Fainter, Stronger };
/// The next of the strengths; the last of them stays.
[[nodiscard]] FilmLook faded(FilmLook look, Fading by);
/// The next of the tints, then none again.
[[nodiscard]] Tint tintAfter(Tint tint);

}  // namespace crosstick::work
