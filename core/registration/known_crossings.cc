#include "core/registration/known_crossings.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/registration/least_squares.h"

namespace crosstick::registration {
namespace {

constexpr std::size_t kNeighbours = 8;
constexpr int kFarthest = 3;  ///< intervals from which a neighbour counts

/// By how much a known crossing stands off from the model, so many intervals from where it is asked.
struct Offset {
    double east = 0, north = 0;
    PixelPoint pixels;
    double doubt = 0;  ///< pixels by which the others differ from it
};

/// What neighbours' offsets say of one among them: their mean, nearer ones counting more; and where they are enough and
/// stand on all sides, the plane through them, for paper that curls.
Offset smoothed(const std::vector<Offset>& offsets) {
    double w = 0;
    PixelPoint mean;
    Offset centre;
    const auto weightOf = [](const Offset& o) { return 1 / (0.5 + o.east * o.east + o.north * o.north); };
    for (const Offset& o : offsets) {
        const double weight = weightOf(o);
        w += weight;
        mean = {mean.x + weight * o.pixels.x, mean.y + weight * o.pixels.y};
        centre.east += weight * o.east;
        centre.north += weight * o.north;
    }
    if (w == 0) {
        return {};
    }
    mean = {mean.x / w, mean.y / w};
    centre.east /= w;
    centre.north /= w;
    double ee = 0.02 * w;  // a little stiffness: three on one side tell no slope
    double en = 0;
    double nn = 0.02 * w;
    PixelPoint e;
    PixelPoint n;
    for (const Offset& o : offsets) {
        const double weight = weightOf(o);
        const double x = o.east - centre.east;
        const double y = o.north - centre.north;
        ee += weight * x * x;
        en += weight * x * y;
        nn += weight * y * y;
        e = {e.x + weight * x * (o.pixels.x - mean.x), e.y + weight * x * (o.pixels.y - mean.y)};
        n = {n.x + weight * y * (o.pixels.x - mean.x), n.y + weight * y * (o.pixels.y - mean.y)};
    }
    constexpr std::size_t kEnough = 5;
    const double area = offsets.size() < kEnough ? 0 : ee * nn - en * en;
    const auto slopes = [&](double a, double b) {
        return area > 0 ? std::pair{(a * nn - b * en) / area, (b * ee - a * en) / area} : std::pair{0.0, 0.0};
    };
    const auto [xe, xn] = slopes(e.x, n.x);
    const auto [ye, yn] = slopes(e.y, n.y);
    Offset here{
        0, 0, {mean.x - xe * centre.east - xn * centre.north, mean.y - ye * centre.east - yn * centre.north}, 0};
    for (const Offset& o : offsets) {
        const double x = here.pixels.x + xe * o.east + xn * o.north - o.pixels.x;
        const double y = here.pixels.y + ye * o.east + yn * o.north - o.pixels.y;
        here.doubt += weightOf(o) / w * (x * x + y * y);
    }
    here.doubt = std::sqrt(here.doubt);
    return here;
}

Result<Model> modelOf(const std::vector<Known>& known) {
    std::vector<Mark> marks;
    for (const Known& one : known) {
        marks.push_back(one.mark);
    }
    if (marks.size() >= 6) {
        if (auto solved = solve(Kind::Projective, marks)) {
            return std::move(solved->model);
        }
    }
    auto solved = solve(Kind::Affine, marks);
    if (!solved) {
        solved = solve(Kind::Similarity, marks);
    }
    return solved.map([](Solved& found) { return std::move(found.model); });
}

}  // namespace

LatticePoint countOf(Index index) {
    return {static_cast<double>(index.second), static_cast<double>(index.first)};
}

Index indexOf(LatticePoint count) {
    return {static_cast<int>(std::lround(count.north)), static_cast<int>(std::lround(count.east))};
}

double apart(LatticePoint a, LatticePoint b) {
    return std::hypot(a.east - b.east, a.north - b.north);
}

Result<void> KnownCrossings::learn(std::vector<Known> known) {
    return modelOf(known).map([&](Model model) {
        model_ = std::move(model);
        known_ = std::move(known);
        cells_.clear();
        for (std::size_t n = 0; n < known_.size(); ++n) {
            cells_[indexOf(known_[n].count)].push_back(n);
        }
    });
}

std::optional<PixelPoint> KnownCrossings::modelled(LatticePoint count) const {
    const auto place = lattice_.place(count);
    return place ? model_->pixel(*place) : std::nullopt;
}

std::optional<Predicted> KnownCrossings::predict(LatticePoint count, std::optional<LatticePoint> without) const {
    const auto at = modelled(count);
    if (!at) {
        return std::nullopt;
    }
    std::vector<std::pair<double, std::size_t>> near;
    const Index middle = indexOf(count);
    for (int n = -kFarthest; n <= kFarthest; ++n) {
        for (int e = -kFarthest; e <= kFarthest; ++e) {
            const auto cell = cells_.find({middle.first + n, middle.second + e});
            for (const std::size_t k : cell == cells_.end() ? std::vector<std::size_t>{} : cell->second) {
                if (!(without && apart(known_[k].count, *without) < 0.01)) {
                    near.emplace_back(apart(known_[k].count, count), k);
                }
            }
        }
    }
    const std::size_t few = std::min(kNeighbours, near.size());
    std::partial_sort(near.begin(), near.begin() + static_cast<std::ptrdiff_t>(few), near.end());
    std::vector<Offset> offsets;
    for (std::size_t n = 0; n < few; ++n) {
        const Known& known = known_[near[n].second];
        const PixelPoint its = model_->pixel(known.mark.place).value_or(known.mark.at);
        offsets.push_back({known.count.east - count.east,
                           known.count.north - count.north,
                           {known.mark.at.x - its.x, known.mark.at.y - its.y}});
    }
    const Offset here = smoothed(offsets);
    return Predicted{{at->x + here.pixels.x, at->y + here.pixels.y}, here.doubt, few};
}

std::optional<CrossSight> KnownCrossings::sight(LatticePoint count, PixelPoint at) const {
    constexpr double kStep = 0.1;
    const auto east = modelled({count.east + kStep, count.north});
    const auto west = modelled({count.east - kStep, count.north});
    const auto north = modelled({count.east, count.north + kStep});
    const auto south = modelled({count.east, count.north - kStep});
    if (!east || !west || !north || !south) {
        return std::nullopt;
    }
    const PixelPoint along{(east->x - west->x) / (2 * kStep), (east->y - west->y) / (2 * kStep)};
    const PixelPoint up{(north->x - south->x) / (2 * kStep), (north->y - south->y) / (2 * kStep)};
    return CrossSight{at, along, up};
}

}  // namespace crosstick::registration
