#include "sample-data/sheet/cliffs.h"

#include <algorithm>
#include <cmath>

namespace crosstick::demo {
namespace {

constexpr double kShortest = 80;      // metres of shore
constexpr double kTaper = 70;         // metres over which a cliff comes out of the shore
constexpr double kNarrow = 22;        // metres from foot to edge at 20 m
constexpr double kWide = 40;          // and at 45 m and more
constexpr std::ptrdiff_t kLook = 12;  // pegs on either side that give the shore's direction

/// The shore's pegs, turned so that the first is no cliff where any is none.
PegLine fromLowShore(const PegLine& edge) {
    PegLine turned = edge;
    const auto low = std::find_if(turned.begin(), turned.end(), [](const Peg& peg) { return peg.height < kCliffFrom; });
    if (low != turned.end()) {
        std::rotate(turned.begin(), low, turned.end());
    }
    return turned;
}

double eased(double share) {
    const double t = std::clamp(share, 0.0, 1.0);
    return t * t * (3 - 2 * t);
}

/// Means of five neighbours, the ends kept.
Line evened(const Line& line) {
    Line even = line;
    for (std::size_t n = 2; n + 2 < line.size(); ++n) {
        even[n] = (line[n - 2] + line[n - 1] + line[n] + line[n + 1] + line[n + 2]) * 0.2;
    }
    return even;
}

Cliff cliffOn(const PegLine& edge, std::size_t from, std::size_t to) {
    std::vector<double> until{0};
    for (std::size_t n = from + 1; n < to; ++n) {
        until.push_back(until.back() + length(edge[n].at - edge[n - 1].at));
    }
    const auto count = static_cast<std::ptrdiff_t>(edge.size());
    Cliff cliff;
    for (std::size_t n = from; n < to; ++n) {
        const auto here = static_cast<std::ptrdiff_t>(n);
        const Spot before = edge[static_cast<std::size_t>((here - kLook + count) % count)].at;
        const Spot after = edge[static_cast<std::size_t>((here + kLook) % count)].at;
        const Spot along = after - before;
        const Spot inland = Spot{-along.north, along.east} * (1 / std::max(length(along), 1e-9));
        const double done = until[n - from];
        const double taper = eased(std::min(done, until.back() - done) / kTaper);
        const double width = kNarrow + (kWide - kNarrow) * std::clamp((edge[n].height - kCliffFrom) / 25, 0.0, 1.0);
        cliff.foot.push_back(edge[n].at);
        cliff.top.push_back(edge[n].at + inland * (width * taper));
    }
    for (int round = 0; round < 4; ++round) {
        cliff.top = evened(cliff.top);
    }
    return cliff;
}

/// The level of the edge for cells of sea and shore near a cliff.
void carryEdgeSeawards(Field<float>& heights, const Ground& ground) {
    constexpr double kReach = 100;  // metres, more than the drawing out reaches
    constexpr double kInland = 40;  // where the edge's height is pinned
    const Lattice& lattice = heights.lattice;
    Field<float> nearest(lattice, 1e6F);
    Field<float> level(lattice);
    const int reach = static_cast<int>(kReach / lattice.cell);
    for (std::size_t n = 0; n < ground.edge.size(); n += 2) {
        const Peg& peg = ground.edge[n];
        const int column = lattice.nearestColumn(peg.at);
        const int row = lattice.nearestRow(peg.at);
        for (int r = row - reach; r <= row + reach; ++r) {
            for (int c = column - reach; c <= column + reach; ++c) {
                const Spot apart = lattice.centre(c, r) - peg.at;
                const auto away = static_cast<float>(apart.east * apart.east + apart.north * apart.north);
                if (lattice.holds(c, r) && away < nearest(c, r)) {
                    nearest(c, r) = away;
                    level(c, r) = static_cast<float>(peg.height);
                }
            }
        }
    }
    for (std::size_t n = 0; n < heights.values.size(); ++n) {
        const bool isSea = ground.cover.values[n] == Cover::Sea;
        const double most = isSea ? kReach : kInland;
        if (static_cast<double>(nearest.values[n]) <= most * most &&
            static_cast<double>(level.values[n]) >= kCliffFrom && (isSea || heights.values[n] < level.values[n])) {
            heights.values[n] = level.values[n];
        }
    }
}

/// Brings the surface to a height at a place, and the ground round it along.
void lift(Field<float>& drawn, const Peg& peg) {
    constexpr double kRound = 60;  // metres
    const Lattice& lattice = drawn.lattice;
    const double missing = peg.height - sampled(drawn, peg.at);
    const int reach = static_cast<int>(3 * kRound / lattice.cell);
    const int column = lattice.nearestColumn(peg.at);
    const int row = lattice.nearestRow(peg.at);
    for (int r = row - reach; r <= row + reach; ++r) {
        for (int c = column - reach; c <= column + reach; ++c) {
            if (lattice.holds(c, r)) {
                const double away = length(lattice.centre(c, r) - peg.at) / kRound;
                drawn(c, r) += static_cast<float>(missing * std::exp(-0.5 * away * away));
            }
        }
    }
}

}  // namespace

std::vector<Cliff> cliffsOf(const Ground& ground) {
    const PegLine edge = fromLowShore(ground.edge);
    std::vector<Cliff> cliffs;
    for (std::size_t n = 0; n < edge.size();) {
        std::size_t end = n;
        double run = 0;
        while (end < edge.size() && edge[end].height >= kCliffFrom) {
            run += end > n ? length(edge[end].at - edge[end - 1].at) : 0;
            ++end;
        }
        if (run >= kShortest) {
            cliffs.push_back(cliffOn(edge, n, end));
        }
        n = std::max(end, n + 1);
    }
    return cliffs;
}

Field<float> heightsToDraw(const Ground& ground, const std::vector<SpotHeight>& spots) {
    constexpr double kCells = 4.5;
    Field<float> heights = ground.heights;
    carryEdgeSeawards(heights, ground);
    Field<float> drawn = blurred(heights, kCells);
    Field<float> lost(heights.lattice);
    for (std::size_t n = 0; n < drawn.values.size(); ++n) {
        lost.values[n] = heights.values[n] - drawn.values[n];
    }
    const Field<float> back = blurred(lost, kCells);
    for (std::size_t n = 0; n < drawn.values.size(); ++n) {
        drawn.values[n] += back.values[n];
    }
    for (const SpotHeight& spot : spots) {
        if (spot.kind != SpotKind::Lake) {
            lift(drawn, spot.peg);
        }
    }
    return drawn;
}

}  // namespace crosstick::demo
