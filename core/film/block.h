#pragma once

#include "core/film/grid_names.h"
#include "core/film/named_square.h"
#include "core/film/page.h"

namespace crosstick::film {

/// The administrative block with its upper left corner at 0, 0: 94 mm wide, 36 high or as much more as its rows need.
struct Block {
    double width = 94;
    double height = 36;
    drawing::Drawing drawing;
};

/// How high a legend is: a row is as high as its sample or as its words need.
[[nodiscard]] PaperMm legendRoom(const std::vector<LegendEntry>& legend);

/// @param square  null: the window holds no square that can be marked; the side stands without a name
[[nodiscard]] Block administrativeBlock(const PageOrder& order, const plan::Registration& registration,
                                        const GridNames& names, const NamedSquare* square);

/// "PHASE 1", "PHASES 1–3", "PHASES 1, 3"; empty for a film of no phase.
[[nodiscard]] std::string phasesText(const std::set<int>& phases, const Speech& say = filled);
/// "1:25 000".
[[nodiscard]] std::string scaleText(Scale scale);

}  // namespace crosstick::film
