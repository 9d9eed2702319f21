#pragma once

#include "symbols/desk.h"

namespace crosstick::symbols {

/// Units in a row on one extension line (engraving A13): symbols 2.0 apart, stems from their bottoms' middles to one
/// level rail, the line from the rail's middle to the leader's spot, or to the edge of the area or line it points to.
/// A row of one has no rail; one that stands below its spot has it above its symbols. The row stands where its leader
/// was set aside by hand, else above its spot where there is room, else beside or below it.
void placeRow(Desk& desk, Subject& leader);

}  // namespace crosstick::symbols
