#pragma once

#include "ui/press/faces.h"
#include "ui/table/palette.h"
#include "ui/table/rim_figures.h"

class QPainter;

namespace crosstick::table {

inline constexpr double kRim = 18;  ///< wide, at the top and at the left of the table

/// The table inside its rim, for a widget or picture of a size in logical pixels.
[[nodiscard]] constexpr Area insideRim(double width, double height) {
    return {kRim, kRim, width - kRim, height - kRim};
}

/// The rim with the principal figures in bold where grid lines meet it.
void paintRim(QPainter& painter, const View& view, const RimFigures& figures, const press::Faces& faces,
              const Palette& palette);

/// The grid's lines themselves, where no sheet prints them.
void paintGrid(QPainter& painter, const View& view, const RimFigures& figures, const Palette& palette);

}  // namespace crosstick::table
