#pragma once

#include <string>

#include "core/plan/plan.h"

namespace crosstick::plan {

// Edits of whole routes, in the manner of edits.h: what an edit names and the plan has not leaves the plan as it is.

/// The way back. Ground of the legs, halts and remarks go with it; what was said for the other direction does not:
/// where it goes on to, catching features, rally points, what to do in contact, when separated or lost.
[[nodiscard]] Plan reversed(const Plan& plan, const ItemId& item);

/// Cut at a vertex between its ends, which then ends the one and begins the other, with its route point where it has
/// one. The second one is new, alike in use, shown on the same films above the first, and goes on where the route did.
[[nodiscard]] Plan splitAt(const Plan& plan, const ItemId& item, std::size_t vertex, const ItemId& second,
                           std::string name);

/// The second one put on to the first, straight from end to start where these lie apart, and taken out of the plan. The
/// first one goes on where the second did.
[[nodiscard]] Plan joined(const Plan& plan, const ItemId& first, const ItemId& second);

/// A point measure of the plan put on a route: on one of its bends, where it is moved to. A vertex that has a route
/// point already keeps it.
[[nodiscard]] Plan withStop(const Plan& plan, const ItemId& item, std::size_t vertex, const ItemId& measure);

/// A contour's height where a route crosses it, read off the sheet.
[[nodiscard]] Plan withContour(const Plan& plan, const ItemId& route, ContourSpot spot);
/// Without the one that was read last.
[[nodiscard]] Plan withoutLastContour(const Plan& plan, const ItemId& route);

/// What is said of the leg that ends on a route point; of every leg that ends there, where a route passes it twice.
[[nodiscard]] Plan withLegNotes(const Plan& plan, const ItemId& item, const ItemId& point, const LegNotes& notes);

/// Primary and alternate change places.
[[nodiscard]] Plan swappedUse(const Plan& plan, const ItemId& one, const ItemId& other);

}  // namespace crosstick::plan
