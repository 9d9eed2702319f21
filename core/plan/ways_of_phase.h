#pragma once

#include <optional>
#include <vector>

#include "core/plan/plan.h"

namespace crosstick::plan {

/// The ways that films show: routes on foot, and arrows along which somebody goes. Points are in the plan's plane.
class WaysOfPhase {
  public:
    WaysOfPhase(const Plan& plan, const std::vector<FilmPtr>& films);

    struct Led {
        ItemId item;  ///< a route or an arrow
        geodesy::PlanePoint end;
    };
    /// The way of a side that begins nearest to a place, not farther from it than kWithTheMarch, with where it ends: of
    /// a route that goes on to something, there.
    [[nodiscard]] std::optional<Led> from(geodesy::PlanePoint place, Whose whose) const;
    /// The route that a measure is a stop of.
    [[nodiscard]] std::optional<ItemId> standsOn(const ItemId& measure) const;
    /// The primary route that crosses a line, touching it counts.
    [[nodiscard]] std::optional<ItemId> across(const std::vector<geodesy::PlanePoint>& line) const;
    /// The primary route that begins in an area and ends outside it.
    [[nodiscard]] std::optional<ItemId> outOf(const std::vector<geodesy::PlanePoint>& ring) const;

  private:
    struct Way {
        ItemId item;
        Whose whose = Whose::Own;
        std::vector<geodesy::PlanePoint> points;
    };
    std::vector<RoutePtr> routes_;
    std::vector<Way> ways_;
};

}  // namespace crosstick::plan
