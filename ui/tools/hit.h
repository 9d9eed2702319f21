#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/edits.h"

namespace crosstick::tools {

/// What lies under the hand.
struct Hit {
    plan::ItemId item;
    std::optional<std::size_t> vertex;  ///< a point of it
    std::optional<std::size_t> before;  ///< beside a line: a new point would go in before this one
    Metres away;
};

/// The nearest thing of the films within reach: points before lines, the selected one before all others, upper films
/// before lower ones.
[[nodiscard]] std::optional<Hit> hitAt(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films,
                                       const std::optional<plan::ItemId>& selected, geodesy::PlanePoint at,
                                       Metres reach);

/// Everything within reach, what hitAt() would find first (without a selected one) before the rest.
[[nodiscard]] std::vector<plan::ItemId> allAt(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films,
                                              geodesy::PlanePoint at, Metres reach);

/// A box drawn from corner to corner, its sides along and across the table as it is turned.
struct Box {
    geodesy::PlanePoint from, to;
    Degrees up;  ///< the azimuth that lies upward
    [[nodiscard]] plan::Points corners() const;
    [[nodiscard]] bool holds(geodesy::PlanePoint at) const;
};
/// What lies in a box with all its points, from the uppermost film down; films that are pinned keep theirs.
[[nodiscard]] std::vector<plan::ItemId> allIn(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films,
                                              const Box& box);

/// The nearest route point or other point measure within reach, to be used again by a route.
[[nodiscard]] plan::MeasurePtr pointAt(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films,
                                       geodesy::PlanePoint at, Metres reach);

/// The nearest place of a route within reach that has no route point yet: on a bend, else on its line.
[[nodiscard]] std::optional<Hit> routeAt(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films,
                                         geodesy::PlanePoint at, Metres reach);

/// A point of a thing, the origin where it has none such; and how many it has.
[[nodiscard]] geodesy::PlanePoint pointOf(const plan::Plan& plan, const plan::ItemId& item, std::size_t vertex);
[[nodiscard]] std::size_t pointsOf(const plan::Plan& plan, const plan::ItemId& item);
/// "RTE QUILL", "CP 3": how a thing is called on the table.
[[nodiscard]] std::string nameOf(const plan::Plan& plan, const plan::ItemId& item);

[[nodiscard]] Metres apart(geodesy::PlanePoint a, geodesy::PlanePoint b);
/// To the nearest place of a straight piece between two points.
[[nodiscard]] Metres fromPiece(geodesy::PlanePoint at, geodesy::PlanePoint a, geodesy::PlanePoint b);

}  // namespace crosstick::tools
