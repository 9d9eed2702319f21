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

/// Calls back with every cell that a box touches.
template <class Visit>
void eachCell(const Box& box, Visit&& visit) {
    if (box.isEmpty() || !(std::abs(box.left) < kFarthest && std::abs(box.right) < kFarthest &&
                           std::abs(box.top) < kFarthest && std::abs(box.bottom) < kFarthest)) {
        return;
    }
    const auto at = [](double v) { return static_cast<std::int64_t>(std::floor(v / kCell)); };
    for (std::int64_t column = at(box.left); column <= at(box.right); ++column) {
        for (std::int64_t row = at(box.top); row <= at(box.bottom); ++row) {
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
    double angle = degrees(Radians(std::atan2(-along.y, along.x))).value();
    if (angle > 90) {
        angle -= 180;
    } else if (angle <= -90) {
        angle += 180;
    }
    return Degrees(angle == 0 ? 0 : angle);
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
        eachCell(Box{std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)},
                 [&](std::int64_t cell) { segmentCells_[cell].push_back(segments_.size() - 1); });
    }
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
