#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/plan.h"

namespace crosstick::movement {

/// Where a leg begins or ends.
struct LegEnd {
    plan::Stop stop;
    std::string label;                  ///< "CP 3"; empty where no measure stands there
    std::optional<plan::ItemId> rally;  ///< the last rally point that the route has passed up to here
};

/// Where people gather: a rally point, or the objective rally point.
[[nodiscard]] bool isRally(const plan::Measure& measure);

/// Where a route's legs begin and end: its stops in rising order, from the start point on where one of them is one and
/// is not the last; both ends of a route that has fewer than two. At least two; the route has two vertices or more.
[[nodiscard]] std::vector<LegEnd> legEnds(const plan::Plan& plan, const plan::Route& route);

}  // namespace crosstick::movement
