#include "tests/drawing/random_lines.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace crosstick::drawing::testing {

// The standard's distributions differ between libraries; the raw generator does not.
double RandomLines::between(double low, double high) {
    return low + (high - low) * static_cast<double>(chance_() >> 11U) * 0x1p-53;
}

int RandomLines::below(int limit) {
    return static_cast<int>(between(0, limit));
}

Point RandomLines::point(double size) {
    const double x = between(-size, size);
    return {x, between(-size, size)};
}

Points RandomLines::line() {
    return bending(std::numbers::pi);
}

Points RandomLines::bending(double mostTurn) {
    Points line{point(50)};
    double heading = between(-std::numbers::pi, std::numbers::pi);
    for (int n = 1 + below(8); n > 0; --n) {
        heading += between(-mostTurn, mostTurn);
        line.push_back(line.back() + Vector{std::cos(heading), std::sin(heading)} * between(1, 25));
    }
    return line;
}

Points RandomLines::ring() {
    const Point middle = point(30);
    const int count = 3 + below(8);
    Points ring;
    for (int n = 0; n < count; ++n) {
        const double turn = 2 * std::numbers::pi * (n + between(0, 0.8)) / count;
        ring.push_back(middle + Vector{std::cos(turn), std::sin(turn)} * between(6, 40));
    }
    return ring;
}

double distance(Point p, const Points& line) {
    double nearest = std::numeric_limits<double>::infinity();
    for (std::size_t n = 1; n < line.size(); ++n) {
        const Vector span = line[n] - line[n - 1];
        const double size = dot(span, span);
        const double share = size > 0 ? std::clamp(dot(p - line[n - 1], span) / size, 0.0, 1.0) : 0;
        nearest = std::min(nearest, length(p - (line[n - 1] + span * share)));
    }
    return nearest;
}

}  // namespace crosstick::drawing::testing
