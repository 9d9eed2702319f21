#include "core/drawing/occupancy.h"

#include <algorithm>
#include <cmath>
#include <optional>

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
    if (box.angle.value() == 0) {
        return {{1, 0}, {0, -1}};
    }
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

/// A segment less what may touch another's end: that crosses nothing. None of one that is no longer.
std::optional<TurnedBox> withoutEnds(Point a, Point b) {
    constexpr double kEnds = 0.2;
    constexpr double kThin = 0.05;
    const double span = length(b - a) - 2 * kEnds;
    return span > 0 ? std::optional(TurnedBox{(a + b) * 0.5, span, kThin, readable(b - a)}) : std::nullopt;
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
    // Most are far from each other, however they are turned.
    const double near = (width + height + other.width + other.height) / 2;
    if (std::abs(middle.x - other.middle.x) > near || std::abs(middle.y - other.middle.y) > near) {
        return false;
    }
    for (const TurnedBox* box : {this, &other}) {
        const Axes axes = axesOf(*box);
        if (apart(*this, other, axes.along) || apart(*this, other, axes.up)) {
            return false;
        }
    }
    return true;
}

bool TurnedBox::meets(Point a, Point b) const {
    const double near = (width + height) / 2;
    if (std::min(a.x, b.x) > middle.x + near || std::max(a.x, b.x) < middle.x - near ||
        std::min(a.y, b.y) > middle.y + near || std::max(a.y, b.y) < middle.y - near) {
        return false;
    }
    const Axes axes = axesOf(*this);
    const auto local = [&](Point p) { return Point{dot(p - middle, axes.along), dot(p - middle, axes.up)}; };
    // Liang and Barsky: the share of the segment that lies between the sides, pair by pair.
    const Point from = local(a);
    const Vector way = local(b) - from;
    double first = 0;
    double last = 1;
    const auto between = [&](double at, double change, double half) {
        if (std::abs(change) < 1e-12) {
            return std::abs(at) <= half;
        }
        const double enters = (-half - at) / change;
        const double leaves = (half - at) / change;
        first = std::max(first, std::min(enters, leaves));
        last = std::min(last, std::max(enters, leaves));
        return first < last;
    };
    return between(from.x, way.x, width / 2) && between(from.y, way.y, height / 2) && first < last;
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
        addSegment({path.points()[n - 1], path.points()[n], owner});
    }
}

void Occupancy::addSegment(const Segment& segment) {
    segments_.push_back(segment);
    eachCellAlong(segment.a, segment.b,
                  [&](std::int64_t cell) { segmentCells_[cell].push_back(segments_.size() - 1); });
}

void Occupancy::addTie(const Segment& segment) {
    ties_.push_back(segment);
    eachCellAlong(segment.a, segment.b, [&](std::int64_t cell) { tieCells_[cell].push_back(ties_.size() - 1); });
}

void Occupancy::tie(Point a, Point b, std::size_t owner) {
    draw({a, b}, owner);
    if (length(b - a) > 0) {
        addTie({a, b, owner});
    }
}

void Occupancy::mark(Point spot, std::size_t owner) {
    spots_.push_back({spot, owner});
    eachCell({spot.x, spot.y, spot.x, spot.y},
             [&](std::int64_t cell) { spotCells_[cell].push_back(spots_.size() - 1); });
}

Occupancy::Taken Occupancy::takeBack(const Level& level) {
    const auto forget = [](auto& cells, std::size_t from) {
        return [&cells, from](std::int64_t cell) {
            std::vector<std::size_t>& held = cells[cell];
            while (!held.empty() && held.back() >= from) {
                held.pop_back();
            }
        };
    };
    const auto above = [](auto& all, std::size_t from) {
        std::vector<std::decay_t<decltype(all.front())>> taken(all.begin() + static_cast<std::ptrdiff_t>(from),
                                                               all.end());
        all.resize(from);
        return taken;
    };
    Taken taken;
    taken.boxes_ = above(boxes_, level.boxes);
    taken.segments_ = above(segments_, level.segments);
    taken.ties_ = above(ties_, level.ties);
    for (const TurnedBox& box : taken.boxes_) {
        eachCell(box.bounds(), forget(boxCells_, level.boxes));
    }
    for (const Segment& one : taken.segments_) {
        eachCellAlong(one.a, one.b, forget(segmentCells_, level.segments));
    }
    for (const Segment& one : taken.ties_) {
        eachCellAlong(one.a, one.b, forget(tieCells_, level.ties));
    }
    return taken;
}

void Occupancy::put(const Taken& taken) {
    for (const TurnedBox& box : taken.boxes_) {
        take(box);
    }
    for (const Segment& one : taken.segments_) {
        addSegment(one);
    }
    for (const Segment& one : taken.ties_) {
        addTie(one);
    }
}

bool Occupancy::isFree(const Taken& taken) const {
    return std::all_of(taken.boxes_.begin(), taken.boxes_.end(), [&](const TurnedBox& box) { return isFree(box); }) &&
           std::all_of(taken.ties_.begin(), taken.ties_.end(),
                       [&](const Segment& one) { return couldTie(one.a, one.b); });
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
    const auto inner = withoutEnds(a, b);
    return inner ? crossings(*inner, owner) : 0;
}

bool Occupancy::meetsTie(const TurnedBox& box) const {
    bool meets = false;
    eachCell(box.bounds(), [&](std::int64_t cell) {
        const auto found = tieCells_.find(cell);
        if (meets || found == tieCells_.end()) {
            return;
        }
        for (const std::size_t n : found->second) {
            meets = meets || box.meets(ties_[n].a, ties_[n].b);
        }
    });
    return meets;
}

bool Occupancy::couldTie(Point a, Point b) const {
    const auto inner = withoutEnds(a, b);
    if (!inner) {
        return true;
    }
    const Vector half = unit(b - a) * (inner->width / 2);
    return isFree(inner->middle - half, inner->middle + half) && !meetsTie(*inner);
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
    return free && (tieCells_.empty() || !meetsTie(wanted));
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
