#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// Ends of extension lines (engraving A13): a dot on a spot, a tick on the edge of a line or area, nothing where the
/// spot has a dot of its own.
enum class ExtensionEnd { Dot, Tick, Bare };

/// A thin straight line, noted as ink so that what is placed afterwards shuns it, from a symbol or label that was set
/// aside to what it stands for.
void extensionLine(Desk& desk, Subject& subject, Point from, Point spot, ExtensionEnd end);
/// The same with elbows, from the symbol on.
void extensionLine(Desk& desk, Subject& subject, const Points& line, ExtensionEnd end);
/// Where an extension line may run: through no symbol, under no letters and across no other of its kind; in a crowd
/// that leaves no such place across others; in the last resort anyhow: what is not drawn at all misleads more.
enum class Ties { Clear, OverTies, Anyhow };
[[nodiscard]] bool mayExtend(Desk& desk, const Points& line, Ties ties);

/// Letters set aside from a spot by an extension line: the first of 8 directions, 6 to 24 away, that is free and
/// crossed by no line. False where there is none.
[[nodiscard]] bool letterAside(Desk& desk, Subject& subject, const Label& label, Point spot, ExtensionEnd end);

/// The same from a stretch of a line: its middle, else what is nearest to it and has room.
[[nodiscard]] bool asideOfStretch(Desk& desk, Subject& subject, const Label& label, const drawing::Path& path,
                                  const drawing::Stretch& stretch);

/// The same from what its own body is: a line's middle as far as it is seen, or its symbol's edge.
[[nodiscard]] bool letterAsideOfBody(Desk& desk, Subject& subject, const Label& label);

/// Ties a label that a hand put farther than 4 from its symbol, line or area to the nearest place of it; one inside its
/// area belongs to it anyhow.
/// @param body  what it names: the subject's own, or a piece of it
void tieLabel(Desk& desk, Subject& subject, const EdgeOf& body, const TurnedBox& label);

/// The point of a label's box that a line to `spot` leaves from: the nearest of its eight, 0.6 outside.
[[nodiscard]] Point labelEdge(const TurnedBox& box, Point spot);

/// Where a symbol is set aside to, in the order of liking: E, W, SE, SW, NE, NW, S, N (engraving E2).
[[nodiscard]] std::vector<Vector> asideDirections();
/// All round, for a crowd that leaves only a gap.
[[nodiscard]] std::vector<Vector> allRound();

}  // namespace crosstick::symbols
