#include "core/terrain/hops.h"

#include <algorithm>
#include <cmath>

namespace crosstick::terrain {
namespace {

constexpr double kArmMm = 1;         // of the path, before and behind a corner
constexpr double kStraight = 0.643;  // cosine of 50 degrees between the arms
constexpr double kOneHopMm = 2.5;    // corners closer to each other belong together

bool isCorner(Cell before, Cell at, Cell behind) {
    const double ax = at.column - before.column;
    const double ay = at.row - before.row;
    const double bx = behind.column - at.column;
    const double by = behind.row - at.row;
    return ax * bx + ay * by < kStraight * std::hypot(ax, ay) * std::hypot(bx, by);
}

}  // namespace

std::vector<Hop> hopsOf(const std::vector<Cell>& path, PenSize size) {
    std::vector<Hop> hops;
    const auto arm = static_cast<std::size_t>(kArmMm * size.pixelsPerMm);
    for (std::size_t n = arm; n + arm < path.size(); ++n) {
        if (!isCorner(path[n - arm], path[n], path[n + arm])) {
            continue;
        }
        if (!hops.empty() && static_cast<double>(n - hops.back().to) < kOneHopMm * size.pixelsPerMm) {
            hops.back().to = n;
        } else {
            hops.push_back({n, n});
        }
    }
    return hops;
}

std::vector<Cell> strayedStretches(const std::vector<Cell>& path, const std::vector<Hop>& hops, PenSize size) {
    std::vector<Cell> strayed;
    const auto add = [&](std::size_t from, std::size_t to) {
        strayed.insert(strayed.end(), path.begin() + static_cast<std::ptrdiff_t>(from),
                       path.begin() + static_cast<std::ptrdiff_t>(to));
    };
    if (hops.size() == 1) {
        const auto arm = static_cast<std::size_t>(kArmMm * size.pixelsPerMm);  // no hop is nearer to an end
        add(hops[0].from - arm, hops[0].to + arm);
    }
    for (std::size_t n = 1; n < hops.size(); n += 2) {
        add(hops[n - 1].to, hops[n].from);
    }
    return strayed;
}

}  // namespace crosstick::terrain
