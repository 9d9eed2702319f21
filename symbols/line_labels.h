#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// A line with its name at both ends (engraving A12): draws the line, broken where a label stands in it, and letters
/// it.
void placeNamedLine(Desk& desk, Subject& subject);
/// The same labels for a line that inks itself; gives the gaps it is to have for them.
/// @param reach  how far its ink reaches to its sides: letters above and below keep clear of it
[[nodiscard]] std::vector<drawing::Stretch> letterEnds(Desk& desk, Subject& subject, const drawing::Path& path,
                                                       const std::vector<std::string>& rows, double reach);
/// A line's points from west to east, or from south to north: one drawn backwards looks the same.
[[nodiscard]] Points fromTheWest(Points points);
/// Rows for a phase line, a line of departure and their like.
[[nodiscard]] std::vector<std::string> lineRows(const plan::Measure& measure);

/// A stretch of a line that is seen, cut into shares of about 120 that carry a mark each (engraving A11).
struct SeenStretch {
    drawing::Stretch whole;
    std::vector<drawing::Stretch> shares;
    /// So long that it carries a mark in any case, aside of it where it has no room.
    [[nodiscard]] bool mustCarry() const { return whole.length() >= 40; }
};
[[nodiscard]] std::vector<SeenStretch> seenStretches(const drawing::Path& path, const drawing::Box& window);
/// Of what is seen the stretch whose mark is one that a hand placed beside a line: the nearest. Nothing is seen: 0.
[[nodiscard]] std::size_t stretchOfHand(const std::vector<SeenStretch>& seen, const drawing::Path& path, Point hand);

}  // namespace crosstick::symbols
