#pragma once

#include <functional>

#include "symbols/extension.h"

namespace crosstick::symbols {

/// A symbol round its spot at 0, 0: a closed outline, lines of the main pen, fills, and letters inside.
struct Mark {
    Points outline;
    std::vector<drawing::Polyline> lines = {};
    drawing::Join join = drawing::Join::Miter;
    std::vector<Points> fills = {};
    std::optional<Label> inside = {};
    Point insideAt = {};
    Second second = Second::Outside;  ///< of its outline, where it is doubled
    /// What of it nothing may overlap, where that is less than all of its ink: arms may run beside letters.
    std::vector<drawing::Box> body = {};
};

/// Is the spot on the film? A remark where it is not.
[[nodiscard]] bool isSeen(Desk& desk, Subject& subject);

/// Draws a symbol on its spot; where it was set aside by hand; or, where its spot is taken or too near the window's
/// edge, aside by an extension line. Gives the box of its ink, nothing where there is no room.
[[nodiscard]] std::optional<drawing::Box> placeMark(Desk& desk, Subject& subject, const Mark& mark);

/// The extension line of a symbol that stands at a place, from the symbol to its spot.
using LineFrom = std::function<Points(Point centre)>;

/// Where a block round 0, 0 goes: where its symbol was set aside by hand, moved no farther than the window asks; on its
/// own place where that is free; else aside of the spot.
[[nodiscard]] std::optional<Point> blockPlace(Desk& desk, const Subject& subject, const drawing::Box& bounds, Point own,
                                              const LineFrom& lineFrom);

/// What a place costs: worst is to cover another's true place, then lines under it, then lines under its extension
/// line. 0: nothing is in the way. None where its line may not run.
[[nodiscard]] std::optional<int> costOf(Desk& desk, const TurnedBox& box, const Points& line, std::size_t owner,
                                        Ties ties = Ties::Clear);

/// Letters right of a symbol, else left, above or below it.
void nameBeside(Desk& desk, Subject& subject, const std::string& name, const drawing::Box& symbol);

}  // namespace crosstick::symbols
