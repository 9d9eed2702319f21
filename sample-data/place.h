#pragma once

#include <cmath>
#include <vector>

namespace crosstick::demo {

/// A place on the island or a displacement there: metres east and north in UTM zone 25 north, WGS 84 (EPSG:32625). The
/// type is the unit; arithmetic on it is plain.
struct Spot {
    double east = 0;
    double north = 0;
    friend constexpr bool operator==(Spot, Spot) = default;
};
[[nodiscard]] constexpr Spot operator+(Spot a, Spot b) {
    return {a.east + b.east, a.north + b.north};
}
[[nodiscard]] constexpr Spot operator-(Spot a, Spot b) {
    return {a.east - b.east, a.north - b.north};
}
[[nodiscard]] constexpr Spot operator*(Spot a, double k) {
    return {a.east * k, a.north * k};
}
[[nodiscard]] inline double length(Spot a) {
    return std::hypot(a.east, a.north);
}
using Line = std::vector<Spot>;

/// A place with its height in metres above the sea.
struct Peg {
    Spot at;
    double height = 0;
};
using PegLine = std::vector<Peg>;

[[nodiscard]] inline Line placesOf(const PegLine& pegs) {
    Line line;
    line.reserve(pegs.size());
    for (const Peg& peg : pegs) {
        line.push_back(peg.at);
    }
    return line;
}

}  // namespace crosstick::demo
