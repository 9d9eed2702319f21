#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// Ends of extension lines (engraving A13): a dot on a spot, a tick on the edge of a line or area, nothing where the
/// spot has a dot of its own.
enum class ExtensionEnd { Dot, Tick, Bare };

/// A thin straight line, noted as ink so that what is placed afterwards shuns it, from a symbol or label that was set
/// aside to what it stands for.
void extensionLine(Desk& desk, Subject& subject, Point from, Point spot, ExtensionEnd end);

/// Letters set aside from a spot by an extension line: the first of 8 directions, 6 to 24 away, that is free and
/// crossed by no line. False where there is none.
[[nodiscard]] bool letterAside(Desk& desk, Subject& subject, const Label& label, Point spot, ExtensionEnd end);

/// The point of a label's box that a line to `spot` leaves from: the nearest of its eight, 0.6 outside.
[[nodiscard]] Point labelEdge(const TurnedBox& box, Point spot);

/// Where a symbol is set aside to, in the order of liking: E, W, SE, SW, NE, NW, S, N (engraving E2).
[[nodiscard]] std::vector<Vector> asideDirections();
/// All round, for a crowd that leaves only a gap.
[[nodiscard]] std::vector<Vector> allRound();

}  // namespace crosstick::symbols
