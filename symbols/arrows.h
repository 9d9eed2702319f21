#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// Where an arrow's shaft must end so that the head's ink ends exactly at the tip (engraving A7).
struct ShaftEnd {
    Point at;
};

/// Open V at the tip of a line that comes along u: half angle 30, arms of a length.
ShaftEnd openHead(Pencil& pencil, Point tip, Vector u, double arms);
/// Outlined V of a main attack: a closed polygon 1.5 thick; the shaft ends at its inner vertex.
/// @param line  length of the whole arrow: one under 1.5 heads has a head scaled to it, never under 1.6 long
ShaftEnd outlinedHead(Pencil& pencil, Point tip, Vector u, double line);
/// Filled: length 2.4, half angle 20, tip exactly at the point.
ShaftEnd filledHead(Pencil& pencil, Point tip, Vector u);
/// The same on a line of a length: one under 1.5 heads has a head scaled to it, never under 1.6 long.
ShaftEnd filledHead(Pencil& pencil, Point tip, Vector u, double line);

}  // namespace crosstick::symbols
