#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "core/plan/plan.h"

namespace crosstick::plan {

/// What one thing became: both set = changed, only after = added, only before = removed, none = untouched.
template <class T>
struct Change {
    std::shared_ptr<const T> before;
    std::shared_ptr<const T> after;
    [[nodiscard]] bool isNone() const { return !before && !after; }
};

/// Identities in the order that the plan lists them.
using Order = std::vector<Uuid>;

/// Everything that two plans differ in. It is the one mechanism behind saving, repainting, the journal, and amendments.
struct Difference {
    std::optional<std::pair<Uuid, Uuid>> identity;
    Change<Heading> heading;
    Change<std::vector<Phase>> phases;
    Change<std::optional<Registration>> registration;
    Change<Force> force;
    /// Set where the sequence of identities differs in any way (added, removed, put in another order).
    Change<Order> sheetOrder;
    Change<Order> filmOrder;
    Change<Order> routeOrder;
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

/// The plan that a difference leads to from the plan it was made from. On another plan what it names is put or removed
/// all the same; identities that an order names and the plan has not are passed over, those it does not name stay at
/// the end.
[[nodiscard]] Plan apply(const Plan& before, const Difference& difference);

}  // namespace crosstick::plan
