#pragma once

#include <optional>

#include "core/plan/plan.h"

namespace crosstick::plan {

// Edits of how things lie on one film. What an edit names and the film does not show leaves the plan as it is.

/// Where a measure's symbol stands when it was set aside; nothing puts it back on its spot. A unit that stands in a
/// row takes the row along.
[[nodiscard]] Plan setAside(const Plan& plan, const ItemId& item, const FilmId& film,
                            std::optional<geodesy::PlanePoint> symbolAt);
/// Where a hand placed a label; nothing gives the places of all its labels, a route's figures too, back to the film's
/// own rules.
[[nodiscard]] Plan labelPlaced(const Plan& plan, const ItemId& item, const FilmId& film,
                               std::optional<geodesy::PlanePoint> labelAt);
/// Where a hand placed the figures of one piece of a route.
[[nodiscard]] Plan figuresPlaced(const Plan& plan, const ItemId& route, const FilmId& film, const LegPiece& leg,
                                 geodesy::PlanePoint at);
/// A unit put at the end of another's row, with the row that it led itself: from then on they are where that one is,
/// since one line leads to one spot. Nothing takes it out of its row; it stays where it is.
[[nodiscard]] Plan standingWith(const Plan& plan, const ItemId& item, const FilmId& film, std::optional<ItemId> unit);
/// Where an extension line ends: on the edge of an area or line; nothing: on the thing's own spot.
[[nodiscard]] Plan pointingTo(const Plan& plan, const ItemId& item, const FilmId& film, std::optional<ItemId> edge);

/// The unit whose row a thing stands in on a film: itself where it stands alone or leads.
[[nodiscard]] ItemId leaderOf(const Film& film, const ItemId& item);
/// A film that shows one thing less. The next in its row leads from then on, from the same place.
[[nodiscard]] Film filmWithout(const Film& film, const ItemId& item);

}  // namespace crosstick::plan
