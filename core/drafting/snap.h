#pragma once

#include <functional>
#include <string>

#include "core/geodesy/plane_line.h"
#include "core/plan/plan.h"

namespace crosstick::drafting {

/// What the hand is drawn to beside points and ticks, which always draw it: on request.
struct SnapWish {
    enum class Lines { No, Yes };
    enum class Grid { No, Yes };
    Lines lines = Lines::No;
    Grid grid = Grid::No;
    friend bool operator==(const SnapWish&, const SnapWish&) = default;
};

/// A point that is in the hand itself: nothing is drawn to it, nor to what goes with it.
struct InHand {
    plan::ItemId item;
    std::size_t vertex = 0;
};

/// Where the hand may be drawn to.
struct SnapGround {
    const plan::Plan& plan;
    const std::vector<plan::FilmPtr>& films;  ///< shown
    std::vector<geodesy::PlanePoint> ticks;   ///< in the plan's plane
    SnapWish wish;
    std::optional<InHand> inHand;
    /// The place of the grid nearest to another: on a crossing, else on a line of it, in the plan's plane.
    std::function<std::optional<geodesy::PlanePoint>(geodesy::PlanePoint)> grid = {};
};

/// What the hand was drawn to.
struct Snap {
    geodesy::PlanePoint at;
    enum class What { Point, Tick, Edge, Grid };
    What what = What::Point;
    plan::ItemId item = {};  ///< whose point or line it is
};

/// The place that the hand means by another within reach: points and ticks before lines, lines before the grid; of each
/// the nearest. Nothing where none is within reach.
/// Law: what is found is never farther than the reach, and lies on what it names.
[[nodiscard]] std::optional<Snap> snapTo(const SnapGround& ground, geodesy::PlanePoint at, Metres reach);

/// The nearest crossing of a grid's lines, or a place on the nearer line where no crossing is within reach; nothing
/// where neither is. All in the grid's plane.
[[nodiscard]] std::optional<geodesy::PlanePoint> onGridLines(geodesy::PlanePoint at, Metres interval, Metres reach);

}  // namespace crosstick::drafting
