#include "symbols/pole.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <queue>

namespace crosstick::symbols {
namespace {

constexpr double kNear = 0.1;              ///< millimetres: no pen shows more
constexpr std::size_t kMostCells = 20000;  ///< bounds the time on slivers; what is best by then is good enough

/// Distance to the nearest edge, negative outside.
double depth(const Points& ring, Point p) {
    double nearest = std::numeric_limits<double>::infinity();
    bool in = false;
    Point b = ring.back();
    for (const Point a : ring) {
        const Vector along = b - a;
        const Vector from = p - a;
        if ((a.y > p.y) != (b.y > p.y) && from.x < along.x * from.y / along.y) {
            in = !in;
        }
        const double square = dot(along, along);
        const double share = square > 0 ? std::clamp(dot(from, along) / square, 0.0, 1.0) : 0.0;
        const Vector off = from - along * share;
        nearest = std::min(nearest, dot(off, off));
        b = a;
    }
    return in ? std::sqrt(nearest) : -std::sqrt(nearest);
}

/// A square that may hold the pole, with the most that any point of it can be inside.
struct Cell {
    Point middle;
    double half;
    double deep;
    [[nodiscard]] double most() const { return deep + half * std::numbers::sqrt2; }
};
struct LessPromising {
    bool operator()(const Cell& a, const Cell& b) const { return a.most() < b.most(); }
};

Cell cellAt(const Points& ring, Point middle, double half) {
    return {middle, half, depth(ring, middle)};
}

Point meanOf(const Points& ring) {
    Point sum;
    for (const Point p : ring) {
        sum = sum + p * (1.0 / static_cast<double>(ring.size()));
    }
    return sum;
}

Point centroidOf(const Points& ring) {
    double twice = 0;
    Point sum;
    const Point origin = ring.front();
    for (std::size_t n = 0; n < ring.size(); ++n) {
        const Vector a = ring[n] - origin;
        const Vector b = ring[(n + 1) % ring.size()] - origin;
        const double cross = a.x * b.y - b.x * a.y;
        twice += cross;
        sum = sum + (a + b) * cross;
    }
    return std::abs(twice) < 1e-9 ? meanOf(ring) : origin + sum * (1 / (3 * twice));
}

}  // namespace

Point poleOf(const Points& ring) {
    if (ring.size() < 3) {
        return meanOf(ring);
    }
    drawing::Box box;
    for (const Point p : ring) {
        box = box.joined({p.x, p.y, p.x, p.y});
    }
    const double side =
        std::max({std::min(box.width(), box.height()), std::max(box.width(), box.height()) / 100, kNear});
    std::priority_queue<Cell, std::vector<Cell>, LessPromising> cells;
    // Cells lie evenly about the box's middle, so that what is found does not depend on where the area's edges lie.
    const auto spread = [side](double length) {
        return std::max(1, static_cast<int>(std::ceil(length / side - 1e-9)));
    };
    const int columns = spread(box.width());
    const int rows = spread(box.height());
    for (int row = 0; row < rows; ++row) {
        for (int column = 0; column < columns; ++column) {
            const Point offset{(column - (columns - 1) / 2.0) * side, (row - (rows - 1) / 2.0) * side};
            cells.push(cellAt(ring, box.middle() + offset, side / 2));
        }
    }
    Cell best = cellAt(ring, centroidOf(ring), 0);
    for (std::size_t looked = 0; !cells.empty() && looked < kMostCells; ++looked) {
        const Cell cell = cells.top();
        cells.pop();
        if (cell.most() <= best.deep + kNear) {
            break;
        }
        if (cell.deep > best.deep) {
            best = cell;
        }
        const double half = cell.half / 2;
        for (const Vector to : {Vector{-half, -half}, Vector{half, -half}, Vector{-half, half}, Vector{half, half}}) {
            const Cell part = cellAt(ring, cell.middle + to, half);
            if (part.most() > best.deep + kNear) {
                cells.push(part);
            }
        }
    }
    return best.middle;
}

}  // namespace crosstick::symbols
