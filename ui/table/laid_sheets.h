#pragma once

#include <vector>

#include <QPolygonF>

#include "core/plan/plan.h"
#include "core/sheets/seams.h"
#include "ui/table/palette.h"
#include "ui/table/sheet_lie.h"

class QPainter;

namespace crosstick::press {
class Faces;
}

namespace crosstick::table {

/// A sheet of a plan as it lies on the table.
struct LaidSheet {
    std::size_t place = 0;  ///< among the plan's sheets
    plan::SheetPtr sheet;
    SheetLie lie;
};

/// A plan's sheets, the lowest first: of a smaller scale below a larger one, the plan's first above its equals; scans
/// of films above all maps. A sheet that cannot be brought to the grid of the work is left out.
[[nodiscard]] std::vector<LaidSheet> laidSheets(const plan::Plan& plan);

enum class Collar { AsThePlanSays, Shown };

/// The ground that a sheet's map covers, on the grid of the work.
[[nodiscard]] GridBox groundOf(const LaidSheet& laid);
/// The edge of what is shown of a sheet, on the table.
[[nodiscard]] QPolygonF edgeOf(const View& view, const LaidSheet& laid, Collar collar = Collar::AsThePlanSays);
/// Clips at no cost where the edge is an upright rectangle.
void clipTo(QPainter& painter, const QPolygonF& edge);

/// A seam that does not meet, as the table shows it: on the grid of the work, with its offset in words.
struct SeamMark {
    geodesy::PlanePoint from, to;
    QString words;  ///< "14 m missing", "14 m overlap"
};
/// Nothing for a seam that meets or that cannot be worked out.
[[nodiscard]] std::vector<SeamMark> seamMarks(const plan::Plan& plan);
void paintSeams(QPainter& painter, const View& view, const std::vector<SeamMark>& seams, const press::Faces& faces,
                const Palette& colours);

}  // namespace crosstick::table
