#pragma once

#include "core/plan/plan.h"

namespace crosstick::plan {

enum class Pin { Pinned, Loose };
/// A film held fast with what lies on it, or let go.
[[nodiscard]] Plan withPin(const Plan& plan, const FilmId& film, Pin pin);

/// The pinned film whose ink a step from one plan to the next would change: something on it drawn, moved, renamed or
/// wiped off, or the film laid away; the lowest of several. Null where the step leaves every pinned film as it lies.
/// What is told of a thing beside its ink (why, tie, times, notes on legs) may change, as may the film's name, phases
/// and place in the stack. A step that lets a film go is free to change it as well.
/// Costs what changed, times the length of the pinned films' lists.
/// Laws: (1) null for pinnedAgainst(p, p); (2) null where no film of `before` is pinned.
[[nodiscard]] FilmPtr pinnedAgainst(const Plan& before, const Plan& after);

}  // namespace crosstick::plan
