#pragma once

#include <functional>
#include <vector>

#include "core/plan/plan.h"

namespace crosstick::plan {

/// What is to be laid into a plan, and where.
struct Pasting {
    FilmId film;  ///< of the plan that it is laid into
    Metres east, north;
    std::function<Uuid()> newId;
};

/// A plan with what was laid into it.
struct Pasted {
    Plan plan;
    std::vector<ItemId> items;  ///< new measures, then new routes
};

/// All measures and routes of one plan laid into another, moved by a distance, on top of a film; how they lay on a film
/// of theirs (symbols and labels set aside, rows) goes with them. They are new things: each has a new identity, a
/// number that its kind has not yet, a name that is not taken (PL BODKIN becomes PL BODKIN 2, PL A the next free
/// letter), and no place in papers given out. What lies on the paper is moved by 5 mm where anything is moved. Both
/// plans have the same plane.
/// Laws: (1) what the plan had stays as it was; (2) no two measures of a kind get one number; (3) points of the new
///       ones are those of the old ones, moved.
[[nodiscard]] Pasted pasted(const Plan& plan, const Plan& what, const Pasting& how);

/// The things alone that are named, with the measures that routes among them pass; films as far as they show these.
[[nodiscard]] Plan excerpt(const Plan& plan, const std::vector<ItemId>& items);

}  // namespace crosstick::plan
