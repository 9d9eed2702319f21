#pragma once

#include <optional>
#include <vector>

#include "core/plan/plan.h"

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

/// The nearest route point or other point measure within reach, to be used again by a route.
[[nodiscard]] plan::MeasurePtr pointAt(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films,
                                       geodesy::PlanePoint at, Metres reach);

/// The nearest place of a route within reach that has no route point yet: on a bend, else on its line.
[[nodiscard]] std::optional<Hit> routeAt(const plan::Plan& plan, const std::vector<plan::FilmPtr>& films,
                                         geodesy::PlanePoint at, Metres reach);

[[nodiscard]] Metres apart(geodesy::PlanePoint a, geodesy::PlanePoint b);
/// To the nearest place of a straight piece between two points.
[[nodiscard]] Metres fromPiece(geodesy::PlanePoint at, geodesy::PlanePoint a, geodesy::PlanePoint b);

}  // namespace crosstick::tools
