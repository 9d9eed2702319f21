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
    /// A thin line that ties what stands aside to its place: nothing is placed on it, and no other should cross it.
    void tie(Point a, Point b, std::size_t owner);
    void mark(Point spot, std::size_t owner);  ///< a true place that a symbol of another had better not cover

    /// What was taken on trial: boxes, lines and ties.
    class Taken;
    struct Level {
        std::size_t boxes, segments, ties;
    };
    [[nodiscard]] Level level() const { return {boxes_.size(), segments_.size(), ties_.size()}; }
    /// Forgets what was taken above a level, and hands it over.
    [[nodiscard]] Taken takeBack(const Level& level);
    /// Takes it again as it was.
    void put(const Taken& taken);
    /// Could all of it be put as it was: are its boxes free, and could its ties run where they ran?
    [[nodiscard]] bool isFree(const Taken& taken) const;

    /// No taken box nearer than the clearance, and no tie under it.
    [[nodiscard]] bool isFree(const TurnedBox& box, double clear = 0.6) const;
    /// No taken box under a segment.
    [[nodiscard]] bool isFree(Point a, Point b) const;
    /// Could a tie run from a to b: over no taken box, and across no other tie? Two may end on one place.
    [[nodiscard]] bool couldTie(Point a, Point b) const;
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
    [[nodiscard]] bool meetsTie(const TurnedBox& box) const;

    void addSegment(const Segment& segment);
    void addTie(const Segment& segment);

    std::vector<TurnedBox> boxes_;
    std::vector<Segment> segments_, ties_;
    std::vector<Spot> spots_;
    std::unordered_map<std::int64_t, std::vector<std::size_t>> boxCells_, segmentCells_, tieCells_, spotCells_;
};

class Occupancy::Taken {
  public:
    [[nodiscard]] const std::vector<TurnedBox>& boxes() const { return boxes_; }

  private:
    friend class Occupancy;
    std::vector<TurnedBox> boxes_;
    std::vector<Segment> segments_, ties_;
};

}  // namespace crosstick::drawing
