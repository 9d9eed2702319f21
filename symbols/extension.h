#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// Ends of extension lines (engraving A13): a dot on a spot, a tick on the edge of a line or area, nothing where the
/// spot has a dot of its own.
enum class ExtensionEnd { Dot, Tick, Bare };

/// A thin straight line from a symbol or label that was set aside to what it stands for.
void extensionLine(Desk& desk, Subject& subject, Point from, Point spot, ExtensionEnd end);

/// The point of a label's box that a line to `spot` leaves from: the nearest of its eight, 0.6 outside.
[[nodiscard]] Point labelEdge(const TurnedBox& box, Point spot);

}  // namespace crosstick::symbols
