#include "core/drawing/occupancy.h"

#include <algorithm>
#include <cmath>

namespace crosstick::drawing {
namespace {

constexpr double kCell = 12;  // millimetres, about a label's length
constexpr double kFarthest = 1e6;

std::int64_t cellKey(std::int64_t column, std::int64_t row) {
    return column * 1'000'003 + row;
}

std::int64_t cellOf(double v) {
    return static_cast<std::int64_t>(std::floor(v / kCell));
}

bool isNear(const Box& box) {
    return std::abs(box.left) < kFarthest && std::abs(box.right) < kFarthest && std::abs(box.top) < kFarthest &&
           std::abs(box.bottom) < kFarthest;
}

/// Calls back with every cell that a box touches.
template <class Visit>
void eachCell(const Box& box, Visit&& visit) {
    if (box.isEmpty() || !isNear(box)) {
        return;
    }
    for (std::int64_t column = cellOf(box.left); column <= cellOf(box.right); ++column) {
        for (std::int64_t row = cellOf(box.top); row <= cellOf(box.bottom); ++row) {
            visit(cellKey(column, row));
        }
    }
}

/// Calls back with every cell that a segment runs through: those of its box would be millions for a line across the
/// country on a film of a hand's breadth.
template <class Visit>
void eachCellAlong(Point a, Point b, Visit&& visit) {
    constexpr double kClose = 1e-6;  // a segment on a cell's edge is in both
    if (b.x < a.x) {
        std::swap(a, b);
    }
    if (!isNear({a.x, std::min(a.y, b.y), b.x, std::max(a.y, b.y)})) {
        return;
    }
    const double slope = b.x > a.x ? (b.y - a.y) / (b.x - a.x) : 0;
    for (std::int64_t column = cellOf(a.x - kClose); column <= cellOf(b.x + kClose); ++column) {
        const double from = std::max(a.x, static_cast<double>(column) * kCell);
        const double to = std::min(b.x, static_cast<double>(column + 1) * kCell);
        const double y1 = b.x > a.x ? a.y + slope * (from - a.x) : a.y;
        const double y2 = b.x > a.x ? a.y + slope * (to - a.x) : b.y;
        for (std::int64_t row = cellOf(std::min(y1, y2) - kClose); row <= cellOf(std::max(y1, y2) + kClose); ++row) {
            visit(cellKey(column, row));
        }
    }
}

struct Axes {
    Vector along, up;
};
Axes axesOf(const TurnedBox& box) {
    const double turn = radians(box.angle).value();
    return {{std::cos(turn), -std::sin(turn)}, {-std::sin(turn), -std::cos(turn)}};
}

/// Half the shadow of a box on an axis.
double reach(const TurnedBox& box, Vector axis) {
    const Axes axes = axesOf(box);
    return std::abs(dot(axes.along, axis)) * box.width / 2 + std::abs(dot(axes.up, axis)) * box.height / 2;
}

bool apart(const TurnedBox& a, const TurnedBox& b, Vector axis) {
    return std::abs(dot(b.middle - a.middle, axis)) >= reach(a, axis) + reach(b, axis) - 1e-9;
}

}  // namespace

std::array<Point, 4> TurnedBox::corners() const {
    const Axes axes = axesOf(*this);
    const Vector x = axes.along * (width / 2);
    const Vector y = axes.up * (height / 2);
    return {middle - x - y, middle + x - y, middle + x + y, middle - x + y};
}

Box TurnedBox::bounds() const {
    Box box;
    for (const Point p : corners()) {
        box = box.joined({p.x, p.y, p.x, p.y});
    }
    return box;
}

bool TurnedBox::meets(const TurnedBox& other) const {
    for (const TurnedBox* box : {this, &other}) {
        const Axes axes = axesOf(*box);
        if (apart(*this, other, axes.along) || apart(*this, other, axes.up)) {
            return false;
        }
    }
    return true;
}

bool TurnedBox::meets(Point a, Point b) const {
    const Axes axes = axesOf(*this);
    const auto local = [&](Point p) { return Point{dot(p - middle, axes.along), dot(p - middle, axes.up)}; };
    const Path line(Points{local(a), local(b)});
    return !drawing::inside(line, {-width / 2, -height / 2, width / 2, height / 2}).empty();
}

Degrees readable(Vector along) {
    // A vertical line whose last digit leans the wrong way is still lettered upward.
    constexpr double kRounding = 1e-6;
    double angle = degrees(Radians(std::atan2(-along.y, along.x))).value();
    if (angle > 90 + kRounding) {
        angle -= 180;
    } else if (angle <= -90 + kRounding) {
        angle += 180;
    }
    return Degrees(angle == 0 ? 0 : std::min(angle, 90.0));
}

void Occupancy::take(const TurnedBox& box) {
    boxes_.push_back(box);
    eachCell(box.bounds(), [&](std::int64_t cell) { boxCells_[cell].push_back(boxes_.size() - 1); });
}

void Occupancy::draw(const Points& line, std::size_t owner, bool closed) {
    const Path path(line, closed);
    for (std::size_t n = 1; n < path.points().size(); ++n) {
        const Point a = path.points()[n - 1];
        const Point b = path.points()[n];
        segments_.push_back({a, b, owner});
        eachCellAlong(a, b, [&](std::int64_t cell) { segmentCells_[cell].push_back(segments_.size() - 1); });
    }
}

void Occupancy::mark(Point spot, std::size_t owner) {
    spots_.push_back({spot, owner});
    eachCell({spot.x, spot.y, spot.x, spot.y},
             [&](std::int64_t cell) { spotCells_[cell].push_back(spots_.size() - 1); });
}

bool Occupancy::coversSpot(const TurnedBox& box, Point own, std::size_t owner, double clear) const {
    constexpr double kSame = 0.1;
    const TurnedBox wanted = box.grown(clear);
    bool covers = false;
    eachCell(wanted.bounds(), [&](std::int64_t cell) {
        const auto found = spotCells_.find(cell);
        if (covers || found == spotCells_.end()) {
            return;
        }
        for (const std::size_t n : found->second) {
            const Spot& spot = spots_[n];
            covers = covers || (spot.owner != owner && length(spot.at - own) > kSame &&
                                wanted.meets(TurnedBox{spot.at, 0, 0, Degrees(0)}));
        }
    });
    return covers;
}

int Occupancy::crossings(Point a, Point b, std::size_t owner) const {
    constexpr double kEnds = 0.2;  // a line that only touches another's end crosses nothing
    const double span = length(b - a);
    return span > 2 * kEnds ? crossings(TurnedBox{(a + b) * 0.5, span - 2 * kEnds, 0.05, readable(b - a)}, owner) : 0;
}

bool Occupancy::isFree(const TurnedBox& box, double clear) const {
    const TurnedBox wanted = box.grown(clear);
    bool free = true;
    eachCell(wanted.bounds(), [&](std::int64_t cell) {
        const auto found = boxCells_.find(cell);
        if (!free || found == boxCells_.end()) {
            return;
        }
        for (const std::size_t n : found->second) {
            free = free && !wanted.meets(boxes_[n]);
        }
    });
    return free;
}

bool Occupancy::isFree(Point a, Point b) const {
    bool free = true;
    eachCellAlong(a, b, [&](std::int64_t cell) {
        const auto found = boxCells_.find(cell);
        if (!free || found == boxCells_.end()) {
            return;
        }
        for (const std::size_t n : found->second) {
            free = free && !boxes_[n].meets(a, b);
        }
    });
    return free;
}

int Occupancy::crossings(const TurnedBox& box, std::size_t owner) const {
    std::vector<std::size_t> met;
    eachCell(box.bounds(), [&](std::int64_t cell) {
        const auto found = segmentCells_.find(cell);
        if (found == segmentCells_.end()) {
            return;
        }
        for (const std::size_t n : found->second) {
            if (segments_[n].owner != owner && box.meets(segments_[n].a, segments_[n].b)) {
                met.push_back(n);
            }
        }
    });
    std::sort(met.begin(), met.end());
    return static_cast<int>(std::unique(met.begin(), met.end()) - met.begin());
}

}  // namespace crosstick::drawing
