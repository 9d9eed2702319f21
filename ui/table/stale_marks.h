#pragma once

#include <string>
#include <vector>

#include <QPointF>

#include "core/files/stale_traces.h"
#include "ui/press/faces.h"
#include "ui/table/palette.h"
#include "ui/table/view.h"

class QPainter;

namespace crosstick::table {

enum class Ends { Open, Closed };
[[nodiscard]] bool isRing(const plan::Measure& measure);
/// "HIGHER 120 m": whose and how far, in whole tens of metres, under 100 m in whole metres.
[[nodiscard]] std::string staleTag(const files::StaleTrace& stale);

/// Where higher's line lies now: dots in our own colour, and a tag where it runs farthest up on the table.
void paintStale(QPainter& painter, const std::vector<QPointF>& line, Ends ends, const std::string& tag,
                const View& view, const press::Faces& faces, const Palette& colours);

}  // namespace crosstick::table
