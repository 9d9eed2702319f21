#pragma once

#include "core/plan/plan.h"

namespace crosstick::plan {

/// A film at another place of the stack, the others closing up; 0 is the lowest. A place beyond the top is the top.
[[nodiscard]] Plan restackedTo(const Plan& plan, const FilmId& film, std::size_t place);
/// The phases that a film belongs to; none: all.
[[nodiscard]] Plan withPhasesOf(const Plan& plan, const FilmId& film, std::set<int> phases);

}  // namespace crosstick::plan
