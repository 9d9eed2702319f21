#pragma once

#include "core/movement/paper_figures.h"
#include "ui/press/paper_table.h"
#include "ui/press/route_card_words.h"

namespace crosstick::press {

/// A route's card as a table on A4: a row a straight piece; what is said of a leg stands in the row of its last piece.
/// Columns by key: leg, to, grid, tie, magnetic, back_magnetic, grid_azimuth, back_grid_azimuth, map_m, ground_m,
/// paces, time, arrive, climb, descent, map_m_so_far, time_so_far, notes. The first row is the start.
[[nodiscard]] PaperTable routePaper(const plan::Plan& plan, const movement::RouteFigures& figures,
                                    const movement::PaperRoute& paper, const CardWords& words, geodesy::AngleUnit unit);

/// "Light", "13 MAR: BMNT 0517, BMCT 0551, ...": a fact each date, for the head of a paper that lies.
[[nodiscard]] std::vector<CardFact> lightFacts(const std::vector<CardLight>& light);

}  // namespace crosstick::press
