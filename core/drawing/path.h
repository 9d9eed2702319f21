#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/drawing/drawing.h"

namespace crosstick::drawing {

using Points = std::vector<Point>;

[[nodiscard]] double length(Vector v);
[[nodiscard]] Vector unit(Vector v);  ///< 0, 0 for no length
[[nodiscard]] double cross(Vector a, Vector b);
[[nodiscard]] double dot(Vector a, Vector b);
/// Left of travel on the y-down page: (uy, -ux).
[[nodiscard]] constexpr Vector leftOf(Vector u) {
    return {u.y, -u.x};
}
[[nodiscard]] double turn(Vector from, Vector to);  ///< radians, (-pi, pi]
[[nodiscard]] bool isFinite(Point p);
/// Without points that are not finite and points nearer than 0.05 to the one before (engraving A16).
[[nodiscard]] Points cleaned(std::span<const Point> points);

/// A line by its arc length. Positions outside [0, length] mean the nearer end.
class Path {
  public:
    /// @param points  cleaned; a closed line gets its first point again at the end
    explicit Path(Points points, bool closed = false);

    [[nodiscard]] double length() const { return at_.empty() ? 0 : at_.back(); }
    [[nodiscard]] bool closed() const { return closed_; }
    [[nodiscard]] const Points& points() const { return points_; }
    [[nodiscard]] double position(std::size_t vertex) const { return at_[vertex]; }
    [[nodiscard]] Point at(double s) const;
    /// Direction from P(s - k/2) to P(s + k/2), a unit vector.
    [[nodiscard]] Vector chord(double s, double k) const;
    /// The piece from s to e with the vertices between.
    [[nodiscard]] Points between(double s, double e) const;
    /// Sum of the turns at vertices strictly between, radians.
    [[nodiscard]] double turning(double s, double e) const;

  private:
    Points points_;
    std::vector<double> at_;
    bool closed_;
};

/// A stretch of a path.
struct Stretch {
    double from, to;
    [[nodiscard]] double length() const { return to - from; }
};
/// Where a path lies inside a box, in order.
[[nodiscard]] std::vector<Stretch> inside(const Path& path, const Box& box);
/// What is left of stretches when gaps are taken out; pieces under 0.05 vanish.
[[nodiscard]] std::vector<Stretch> without(const std::vector<Stretch>& stretches, const std::vector<Stretch>& gaps);
/// The parts of a line inside a box.
[[nodiscard]] std::vector<Polyline> clipped(const Polyline& line, const Box& box);

/// Where a ray from a point crosses a ring farthest out.
struct RayEnd {
    double far;    ///< from the ray's start, in lengths of u
    double along;  ///< arc length from the ring's first point
};
/// @param ring  closed without repeating its first point
/// Nothing where the ray meets it nowhere ahead.
[[nodiscard]] std::optional<RayEnd> leaves(const Points& ring, Point from, Vector u);

/// A parallel line, left of travel positive, with mitres up to 2.85 (then cut to a bevel).
[[nodiscard]] Points offset(const Points& points, double by, bool closed = false);

}  // namespace crosstick::drawing
