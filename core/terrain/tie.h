#pragma once

#include <string>
#include <string_view>

#include "core/plan/plan.h"

namespace crosstick::terrain {

/// Where a point lies from a thing that a person recognises: "40 m NE of the road junction"; "at the road junction"
/// where the distance, to 10 m as the trade writes it, is nothing.
/// @param thing  in words, with or without "the"  @param from  the thing, @param to  the point, both in the grid of the
/// work: the direction is the nearest of sixteen winds from grid north
[[nodiscard]] std::string tieWords(std::string_view thing, geodesy::PlanePoint from, geodesy::PlanePoint to);

/// The plan in which that stands with the point: on ledger and card. Without such a measure the plan as it is.
[[nodiscard]] plan::Plan withTie(const plan::Plan& plan, const plan::ItemId& point, std::string tie);

}  // namespace crosstick::terrain
