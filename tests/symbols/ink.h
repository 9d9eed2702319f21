#pragma once

#include <vector>

#include "core/drawing/drawing.h"
#include "core/drawing/occupancy.h"

namespace crosstick::symbols::testing {

/// How far the ink reaches beyond a point along a direction, strokes with their width, mitres and bevels: 0 where it
/// ends exactly at the point. Letters do not count.
/// @param within  only ink whose own corners lie nearer than this to the point
[[nodiscard]] double reach(const drawing::Drawing& drawing, drawing::Point from, drawing::Vector along, double within);

/// Boxes of the rows of letters: advances wide, a capital high.
[[nodiscard]] std::vector<drawing::TurnedBox> letterBoxes(const drawing::Drawing& drawing);
[[nodiscard]] std::vector<drawing::Text> texts(const drawing::Drawing& drawing);

/// All the straight pieces of all strokes.
struct InkLine {
    drawing::Point from, to;
    double width;
};
[[nodiscard]] std::vector<InkLine> inkLines(const drawing::Drawing& drawing);
/// Distance from a box of letters to the nearest ink of a drawing, half the pen taken off; negative where ink runs
/// through it.
[[nodiscard]] double clearance(const drawing::TurnedBox& letters, const drawing::Drawing& drawing);

/// Is every point of the strokes and fills of one drawing found in another, and the other way round, within a
/// tolerance? The order of marks, pieces and points does not count.
[[nodiscard]] bool isSameInk(const drawing::Drawing& a, const drawing::Drawing& b);

}  // namespace crosstick::symbols::testing
