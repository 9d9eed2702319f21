#pragma once

#include <functional>

#include "ui/details/figures_list.h"
#include "ui/work/work.h"

namespace crosstick::details {

/// What a card says in figures of a measure or a route: the leg that leads to a route point, where a point lies, how
/// long a route is; what is not known is said to be unknown. The figures are those of the ledger and the route card.
/// @param say  words a fault
[[nodiscard]] std::vector<FigureRow> cardFigures(const work::Work& work, const plan::ItemId& item,
                                                 const std::function<QString(const Error&)>& say);

}  // namespace crosstick::details
