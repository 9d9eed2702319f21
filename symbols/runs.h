#pragma once

#include <numbers>

#include "symbols/desk.h"

namespace crosstick::symbols {

// What half circles and teeth along a line have in common.

/// Who turns by more than this at a vertex turns a corner.
inline constexpr double kCorner = 30 * std::numbers::pi / 180;

/// A stretch between corners, and how much the line turns at both of them (0 at a free end).
struct Run {
    drawing::Stretch stretch;
    double turnBefore = 0;
    double turnAfter = 0;
};
[[nodiscard]] std::vector<Run> runsOf(const drawing::Path& path);

/// Does the line turn toward the side? There half circles and teeth would run into each other.
[[nodiscard]] bool closesToward(double turn, double side);

/// Does a stretch of a line lie in one of the gaps left for its letters?
[[nodiscard]] bool isInGap(double from, double to, const std::vector<drawing::Stretch>& gaps);

}  // namespace crosstick::symbols
