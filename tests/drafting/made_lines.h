#pragma once

#include <cmath>
#include <iostream>
#include <numbers>
#include <random>

#include "core/geodesy/plane_line.h"

namespace crosstick::drafting {

using geodesy::Line;

inline geodesy::PlanePoint at(double east, double north) {
    return {Metres(650000 + east), Metres(5100000 + north)};
}

/// Lines and rings strewn over 2 km; the seed is printed.
class MadeLines {
  public:
    explicit MadeLines(std::uint32_t seed) : random_(seed) { std::cout << "seed " << seed << '\n'; }
    double any(double from, double to) { return std::uniform_real_distribution<double>(from, to)(random_); }
    geodesy::PlanePoint place() { return at(any(0, 2000), any(0, 2000)); }
    Line line(std::size_t points) {
        Line line;
        while (line.size() < points) {
            line.push_back(place());
        }
        return line;
    }
    /// A ring that does not cross itself: round a middle, nearer and farther.
    Line ring(std::size_t points) {
        const geodesy::PlanePoint middle = at(any(500, 1500), any(500, 1500));
        Line ring;
        for (std::size_t n = 0; n < points; ++n) {
            const double turn = 2 * std::numbers::pi * static_cast<double>(n) / static_cast<double>(points);
            const Metres out(any(150, 600));
            ring.push_back({middle.easting + out * std::cos(turn), middle.northing + out * std::sin(turn)});
        }
        return ring;
    }

  private:
    std::mt19937 random_;
};

}  // namespace crosstick::drafting
