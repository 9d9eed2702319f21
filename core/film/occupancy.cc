#include "core/film/occupancy.h"

#include <algorithm>
#include <cmath>

namespace crosstick::film {
namespace {

constexpr double kStep = 0.5;        ///< a line is sampled this often
constexpr double kMost = 2000;       ///< cells a side; no paper is larger
constexpr double kFarthest = 20000;  ///< longer pieces lie mostly elsewhere and are sampled within this length

int cellsOf(double length) {
    return static_cast<int>(std::ceil(std::clamp(length, 1.0, kMost)));
}

int clampedCell(double at, int most) {
    return static_cast<int>(std::clamp(at, 0.0, static_cast<double>(most)));
}

/// Part of a piece inside the window along one axis, as shares of its length.
struct Part {
    double from = 0, to = 1;
    void cut(double start, double change, double limit) {
        if (change == 0) {
            if (start < 0 || start > limit) {
                to = -1;
            }
            return;
        }
        const double a = -start / change;
        const double b = (limit - start) / change;
        from = std::max(from, std::min(a, b));
        to = std::min(to, std::max(a, b));
    }
};

}  // namespace

Occupancy::Occupancy(const drawing::Box& window, const std::vector<std::vector<drawing::Point>>& lines)
    : columns_(cellsOf(window.width())),
      rows_(cellsOf(window.height())),
      sums_(static_cast<std::size_t>(columns_ + 1) * static_cast<std::size_t>(rows_ + 1), 0) {
    const auto at = [this](int column, int row) -> int& { return sums_[cell(column, row)]; };
    const auto mark = [&](drawing::Point a, drawing::Point b) {
        const drawing::Vector d = b - a;
        Part part;
        part.cut(a.x, d.x, columns_ - 1e-9);
        part.cut(a.y, d.y, rows_ - 1e-9);
        if (!(part.from <= part.to)) {  // outside, or not finite
            return;
        }
        const double length = std::min(std::hypot(d.x, d.y) * (part.to - part.from), kFarthest);
        const int steps = static_cast<int>(length / kStep) + 1;
        for (int n = 0; n <= steps; ++n) {
            const drawing::Point p = a + d * (part.from + (part.to - part.from) * n / steps);
            at(clampedCell(std::floor(p.x), columns_ - 1) + 1, clampedCell(std::floor(p.y), rows_ - 1) + 1) = 1;
        }
    };
    for (const auto& line : lines) {
        for (std::size_t n = 0; n < line.size(); ++n) {
            mark(line[n], line[std::min(n + 1, line.size() - 1)]);
        }
    }
    for (int row = 1; row <= rows_; ++row) {
        for (int column = 1; column <= columns_; ++column) {
            at(column, row) += at(column - 1, row) + at(column, row - 1) - at(column - 1, row - 1);
        }
    }
}

int Occupancy::sumTo(int column, int row) const {
    return sums_[cell(column, row)];
}

int Occupancy::within(const drawing::Box& box) const {
    const int left = clampedCell(std::floor(box.left), columns_);
    const int right = clampedCell(std::ceil(box.right), columns_);
    const int top = clampedCell(std::floor(box.top), rows_);
    const int bottom = clampedCell(std::ceil(box.bottom), rows_);
    if (box.isEmpty() || left >= right || top >= bottom) {
        return 0;
    }
    return sumTo(right, bottom) - sumTo(left, bottom) - sumTo(right, top) + sumTo(left, top);
}

}  // namespace crosstick::film
