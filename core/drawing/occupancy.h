#pragma once

#include <array>
#include <cstdint>
#include <unordered_map>
#include <vector>

#include "core/drawing/path.h"

namespace crosstick::drawing {

/// A box turned by an angle (counter-clockwise as seen).
struct TurnedBox {
    Point middle;
    double width = 0, height = 0;
    Degrees angle;

    [[nodiscard]] std::array<Point, 4> corners() const;
    [[nodiscard]] Box bounds() const;
    [[nodiscard]] TurnedBox grown(double by) const { return {middle, width + 2 * by, height + 2 * by, angle}; }
    [[nodiscard]] bool meets(const TurnedBox& other) const;  ///< separating axes; touching is not meeting
    [[nodiscard]] bool meets(Point a, Point b) const;        ///< a segment
    [[nodiscard]] bool inside(const Box& box) const { return box.contains(bounds()); }
};

/// The angle letters are set at along a direction: in (-90, 90] (engraving A3).
[[nodiscard]] Degrees readable(Vector along);

/// Which places of a film are taken: letters and symbols, which nothing may overlap, and lines, which letters had
/// better not cross. A grid of cells keeps a question's cost that of its neighbourhood.
class Occupancy {
  public:
    void take(const TurnedBox& box);
    void draw(const Points& line, std::size_t owner, bool closed = false);  ///< ink of a line, with whose it is
    void mark(Point spot, std::size_t owner);  ///< a true place that a symbol of another had better not cover

    /// No taken box nearer than the clearance.
    [[nodiscard]] bool isFree(const TurnedBox& box, double clear = 0.6) const;
    /// No taken box under a segment.
    [[nodiscard]] bool isFree(Point a, Point b) const;
    /// How many segments of lines other than the owner's cross the box.
    [[nodiscard]] int crossings(const TurnedBox& box, std::size_t owner) const;
    [[nodiscard]] int crossings(Point a, Point b, std::size_t owner) const;
    /// Does the box cover another's true place, with the clearance? A place that lies on `own` is no other one.
    [[nodiscard]] bool coversSpot(const TurnedBox& box, Point own, std::size_t owner, double clear = 0.8) const;

  private:
    struct Segment {
        Point a, b;
        std::size_t owner;
    };
    struct Spot {
        Point at;
        std::size_t owner;
    };
    std::vector<TurnedBox> boxes_;
    std::vector<Segment> segments_;
    std::vector<Spot> spots_;
    std::unordered_map<std::int64_t, std::vector<std::size_t>> boxCells_, segmentCells_, spotCells_;
};

}  // namespace crosstick::drawing
