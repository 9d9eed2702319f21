#include "symbols/runs.h"

#include <algorithm>
#include <cmath>

namespace crosstick::symbols {

std::vector<Run> runsOf(const drawing::Path& path) {
    const Points& points = path.points();
    std::vector<Run> sides;
    Run side{{0, path.length()}};
    for (std::size_t n = 1; n + 1 < points.size(); ++n) {
        const double turn = drawing::turn(points[n] - points[n - 1], points[n + 1] - points[n]);
        if (std::abs(turn) > kCorner) {
            side.stretch.to = path.position(n);
            side.turnAfter = turn;
            sides.push_back(side);
            side = {{path.position(n), path.length()}, turn, 0};
        }
    }
    sides.push_back(side);
    return sides;
}

bool closesToward(double turn, double side) {
    return turn * side < 0;  // left turns are negative on the y-down page
}

bool isInGap(double from, double to, const std::vector<drawing::Stretch>& gaps) {
    return std::any_of(gaps.begin(), gaps.end(),
                       [=](const drawing::Stretch& gap) { return to > gap.from && from < gap.to; });
}

}  // namespace crosstick::symbols
