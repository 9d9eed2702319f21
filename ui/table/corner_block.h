#pragma once

#include <string>

#include "core/plan/plan.h"
#include "symbols/engrave.h"
#include "ui/press/faces.h"
#include "ui/table/palette.h"
#include "ui/table/view.h"

class QPainter;

namespace crosstick::table {

/// The two rows of the corner block: what lies there, and at what scale.
struct CornerRows {
    std::string first;   ///< "ISL 25, sheet 2 ULMERAY SOUTH, edition 3"
    std::string ours;    ///< "one pen": how films are drawn, where not as usual
    std::string second;  ///< "WGS 84 · 1:25,000 · seen at 1:12,400 · north up"
};
/// "north up", or which grid azimuth lies upward: "042° grid up".
[[nodiscard]] std::string upText(Degrees up);
[[nodiscard]] CornerRows cornerRows(const plan::Plan& plan, const View& view,
                                    symbols::PenMode pens = symbols::PenMode::Colour);

/// "1:25,000"; the denominator rounded to three figures for one that is seen.
[[nodiscard]] std::string scaleText(Scale scale);
[[nodiscard]] std::string seenScaleText(Scale scale);

/// Lower right on the table, 310 by 38 pixels, 8 from the edges; wider where a row needs it and the table has room.
void paintCornerBlock(QPainter& painter, const View& view, const CornerRows& rows, const press::Faces& faces,
                      const Palette& palette);

}  // namespace crosstick::table
