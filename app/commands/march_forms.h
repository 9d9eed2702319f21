#pragma once

#include <string>
#include <vector>

#include "core/movement/march_table.h"
#include "ui/press/march_paper.h"

namespace crosstick::app {

/// One route's march table with what it was made from.
struct MarchContent {
    movement::RouteFigures figures;
    movement::MarchTable table;
    press::MarchFacts facts;
};

/// How times are written for the terminal.
enum class Clock { Local, Zulu, HHour };

/// For the terminal: elements down, points across, "2111-2113" a cell (arrives, clear).
[[nodiscard]] std::string marchText(const plan::Plan& plan, const MarchContent& content, Clock clock);
/// RFC 4180, UTF-8, CRLF: a record for each element at each point, and one for the whole column there.
/// @param columns  those that are wanted, in their order; none: all. Errors: app/no-such-column.
[[nodiscard]] Result<std::string> marchCsv(const plan::Plan& plan, const std::vector<MarchContent>& routes,
                                           const std::vector<std::string>& columns);
/// One array, an object a route: full precision, the unit in the key, null for unknown.
[[nodiscard]] std::string marchJson(const plan::Plan& plan, const std::vector<MarchContent>& routes);

}  // namespace crosstick::app
