#pragma once

#include <optional>
#include <vector>

#include "core/movement/relief.h"
#include "core/plan/plan.h"

namespace crosstick::movement {

/// The ground along a route as somebody reads it off the sheet: a height where the route crosses a contour. Between one
/// contour and the next the ground is taken to rise evenly, as whoever measures a profile by hand takes it (common
/// practice); before the first and after the last nobody knows it.
class HandProfile {
  public:
    /// A contour on the way, by the distance from the route's first vertex along its vertices, in the plan's plane.
    struct Spot {
        Metres along;
        Metres height;
        friend bool operator==(const Spot&, const Spot&) = default;
    };

    HandProfile() = default;
    /// Every contour stands at the place of the route nearest to it, where that is near enough; of several at one place
    /// the last one given counts.
    explicit HandProfile(const plan::Route& route);

    /// By rising distance. Fewer than two tell nothing of the ground between.
    [[nodiscard]] const std::vector<Spot>& spots() const { return spots_; }
    [[nodiscard]] Metres along(std::size_t vertex) const { return along_[vertex]; }
    [[nodiscard]] std::optional<Metres> heightAt(Metres along) const;
    /// Up, down and steepest from a vertex to the next one, between the contours there; nothing where the ground at one
    /// of both is unknown.
    /// @param ground  the piece's true length, to which its steps are scaled
    [[nodiscard]] std::optional<Relief> after(std::size_t vertex, Metres ground) const;

  private:
    std::vector<Spot> spots_;
    std::vector<Metres> along_;  ///< of the vertices

    [[nodiscard]] std::vector<Spot> spotsFrom(Metres from, Metres to) const;
};

/// A contour farther off the route than this was read for another way: our own figure, 2 mm at 1:25 000.
inline constexpr Metres kBesideTheRoute{50};

/// The place of a route that is nearest to a point.
struct PlaceOnRoute {
    Metres along;  ///< by the distance along the route's vertices
    geodesy::PlanePoint at;
    Metres off;  ///< how far the point lies from it
};
/// Both in the plan's plane; the route has a vertex or more.
[[nodiscard]] PlaceOnRoute nearestOn(const std::vector<geodesy::PlanePoint>& vertices, geodesy::PlanePoint point);

}  // namespace crosstick::movement
