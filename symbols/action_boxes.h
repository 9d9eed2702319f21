#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// What stands in an action box, and beside it.
struct BoxContent {
    std::vector<std::string> rows;  ///< inside: abbreviation over number, or a lone number
    bool hasCross = false;          ///< a cross over the rows, or alone
    std::string beside;             ///< a name too long for the box
};
[[nodiscard]] BoxContent boxContent(const plan::Measure& measure);

enum class Strokes { Single, Double };

/// An action box's outline and where its letters go, its tip at 0, 0 (engraving B1).
struct BoxShape {
    Points outline;       ///< closed; its tip set back so that the ink ends on the spot
    drawing::Box bounds;  ///< of the ink
    Point bodyMiddle;
    std::vector<Label> rows;
    std::vector<Point> rowMiddles;
    std::optional<Point> cross = {};  ///< its middle
};
/// @param strokes  the enemy's with one pen: larger by the room that the second stroke takes inside
[[nodiscard]] BoxShape boxShape(const BoxContent& content, const drawing::Gauge& gauge,
                                Strokes strokes = Strokes::Single);

/// Places and draws an action box: on its spot, where it was set aside by hand, or in the first place aside that is
/// free.
void placeActionBox(Desk& desk, Subject& subject);

}  // namespace crosstick::symbols
