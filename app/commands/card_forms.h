#pragma once

#include <string>
#include <vector>

#include "core/movement/evacuation.h"
#include "core/movement/paper_figures.h"
#include "core/movement/route_figures.h"
#include "core/movement/route_light.h"
#include "core/movement/runs_along.h"

namespace crosstick::app {

/// One route with everything that its card, table and records say.
struct CardContent {
    movement::RouteFigures figures;
    movement::PaperRoute paper;
    std::vector<movement::Crossing> crossings;
    std::vector<movement::RunAlong> runs;
    std::vector<movement::DatedLight> light;
    std::optional<movement::EvacuationFigures> evacuation;
};

/// For the terminal: aligned, rounded as the trade does, the source of every figure under it.
[[nodiscard]] std::string cardTable(const plan::Plan& plan, const CardContent& content, geodesy::AngleUnit unit,
                                    const std::string& modelName);
/// RFC 4180, UTF-8, CRLF, decimal points: a row a straight piece, degrees to 0.0001, metres to 0.001, unknown cells
/// empty; what is said of a leg stands on its last piece. A text that a spreadsheet would take for a formula gets an
/// apostrophe in front.
/// @param columns  those that are wanted, in their order; none: all. Errors: app/no-such-column.
[[nodiscard]] Result<std::string> cardCsv(const plan::Plan& plan, const std::vector<CardContent>& routes,
                                          const std::vector<std::string>& columns);
/// One array, an object a route: full precision, the unit in the key, null for unknown. Ends with a line end.
[[nodiscard]] std::string cardJson(const plan::Plan& plan, const std::vector<CardContent>& routes,
                                   const std::string& modelName);

}  // namespace crosstick::app
