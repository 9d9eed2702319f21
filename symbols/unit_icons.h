#pragma once

#include "symbols/unit_frame.h"

namespace crosstick::symbols {

/// One icon inside a frame whose middle is 0, 0 on the pencil's sheet (engraving C3).
/// @param h  symbol height, millimetres
void drawIcon(Pencil& pencil, measures::UnitIcon icon, const UnitFrame& frame, double h);

}  // namespace crosstick::symbols
