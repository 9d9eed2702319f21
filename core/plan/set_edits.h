#pragma once

#include <vector>

#include "core/plan/plan.h"

namespace crosstick::plan {

// Edits of several things at once, in the manner of edits.h: what an edit names and the plan has not leaves it alone.

/// Measures and routes moved as one. A route takes the points on it along, and a point every vertex that it sits on;
/// nothing is moved twice. What lies on a film's paper stays.
/// Laws: (1) moved and moved back it is the same plan, to rounding; (2) the order of the items does not matter.
[[nodiscard]] Plan allMovedBy(const Plan& plan, const std::vector<ItemId>& items, Metres east, Metres north);

/// All of them taken out, as without() does it for one.
[[nodiscard]] Plan withoutAll(const Plan& plan, const std::vector<ItemId>& items);

/// All of them shown on one film in place of another.
[[nodiscard]] Plan allMovedToFilm(const Plan& plan, const std::vector<ItemId>& items, const FilmId& from,
                                  const FilmId& to);

/// A thing shown wherever another one is, right above it.
[[nodiscard]] Plan shownAbove(const Plan& plan, const ItemId& below, const ItemId& item);

}  // namespace crosstick::plan
