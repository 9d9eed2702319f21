#pragma once

#include <vector>

#include "core/plan/plan.h"

namespace crosstick::plan {

/// What one kind of thing became: both set = changed, only after = added, only before = removed.
template <class T>
struct Change {
    std::shared_ptr<const T> before;
    std::shared_ptr<const T> after;
};

/// Everything that two plans differ in. It is the one mechanism behind saving, repainting, the journal, and amendments.
struct Difference {
    bool identity = false;
    bool heading = false;
    bool phases = false;
    bool registration = false;
    bool stackOrder = false;   ///< films were put in another order
    bool sheetOrder = false;
    bool routeOrder = false;
    std::vector<Change<Sheet>> sheets;
    std::vector<Change<Film>> films;
    std::vector<Change<Route>> routes;
    std::vector<Change<Measure>> measures;  ///< in order of identity
    [[nodiscard]] bool isEmpty() const;
};

/// Compares pointers first, values only where pointers differ, so it costs what changed.
/// Laws: (1) difference(p, p) is empty; (2) it is empty exactly when before == after;
///       (3) swapping the arguments swaps before and after in every change; (4) apply(before, difference) == after.
[[nodiscard]] Difference difference(const Plan& before, const Plan& after);
/// The plan that a difference leads to.
[[nodiscard]] Plan apply(const Plan& before, const Difference& difference, const Plan& after);

}  // namespace crosstick::plan
