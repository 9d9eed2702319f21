#include "core/registration/crossing_finder.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/registration/crossing_trace.h"
#include "core/registration/faults.h"
#include "core/registration/least_squares.h"
#include "core/worker/faults.h"

namespace crosstick::registration {
namespace {

constexpr std::size_t kMostCrossings = 4000;
constexpr std::size_t kNeighbours = 8;
constexpr int kFarthest = 3;  ///< intervals from which a neighbour counts

using Index = std::pair<int, int>;  ///< lines northward, eastward

/// A crossing that the next ones are predicted from.
struct Known {
    LatticePoint count;
    Mark mark;
};

struct Predicted {
    PixelPoint at;
    double doubt = 0;            ///< pixels by which its neighbours differ among themselves
    std::size_t neighbours = 0;  ///< that it goes by
};

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

class Search {
  public:
    Search(const GreyPicture& picture, const Lattice& lattice) : picture_(picture), lattice_(lattice) {}

    Result<std::vector<Crossing>> from(std::span<const Mark> marks, const worker::IsStopped& isStopped);

  private:
    const GreyPicture& picture_;
    const Lattice& lattice_;
    std::optional<Model> model_;
    std::vector<Known> marks_;
    std::vector<Known> known_;                         ///< marks, and what was found for sure
    std::map<Index, std::vector<std::size_t>> cells_;  ///< of known_, by the nearest crossing
    std::map<Index, CrossingTrace> found_;
    std::map<Index, int> tries_;
    LineLook look_;

    Result<void> fit();
    Result<bool> calibrate(std::span<const Mark> marks);
    [[nodiscard]] std::vector<Index> nextRing(int mostTries) const;
    Result<void> tryAll(const std::vector<Index>& ring, const worker::IsStopped& isStopped);
    [[nodiscard]] Reach reachFor(Index index, const CrossSight& cross, const Predicted& predicted) const;
    [[nodiscard]] double own(Index index) const;
    [[nodiscard]] double consistency(Index index) const;
    Result<void> learn();
    [[nodiscard]] std::optional<Predicted> predict(LatticePoint count, std::optional<Index> without) const;
    [[nodiscard]] std::optional<CrossSight> sight(Index index, const Predicted& predicted) const;
    [[nodiscard]] std::vector<Crossing> answer() const;
};

LatticePoint countOf(Index index) {
    return {static_cast<double>(index.second), static_cast<double>(index.first)};
}

Index indexOf(LatticePoint count) {
    return {static_cast<int>(std::lround(count.north)), static_cast<int>(std::lround(count.east))};
}

double apart(LatticePoint a, LatticePoint b) {
    return std::hypot(a.east - b.east, a.north - b.north);
}

/// All known so far: affine, from six on projective; what they do not determine, by the next simpler.
Result<void> Search::fit() {
    std::vector<Mark> marks;
    cells_.clear();
    for (std::size_t n = 0; n < known_.size(); ++n) {
        marks.push_back(known_[n].mark);
        cells_[indexOf(known_[n].count)].push_back(n);
    }
    std::optional<Error> why;
    for (const Kind kind : {Kind::Projective, Kind::Affine, Kind::Similarity}) {
        if (kind == Kind::Projective && marks.size() < 6) {
            continue;
        }
        auto solved = solve(kind, marks);
        if (solved) {
            model_ = solved->model;
            return {};
        }
        why = solved.error();
    }
    return tl::unexpected(*why);
}

/// By the model, and by what its nearest neighbours differ from it.
std::optional<Predicted> Search::predict(LatticePoint count, std::optional<Index> without) const {
    const auto place = lattice_.place(count);
    const auto at = place ? model_->pixel(*place) : std::nullopt;
    if (!at) {
        return std::nullopt;
    }
    std::vector<std::pair<double, std::size_t>> near;
    const Index middle = indexOf(count);
    for (int n = -kFarthest; n <= kFarthest; ++n) {
        for (int e = -kFarthest; e <= kFarthest; ++e) {
            const auto cell = cells_.find({middle.first + n, middle.second + e});
            for (const std::size_t k : cell == cells_.end() ? std::vector<std::size_t>{} : cell->second) {
                const double distance = apart(known_[k].count, count);
                if (!(without && distance < 0.01)) {
                    near.emplace_back(distance, k);
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

/// Where the lines of a crossing run in the picture, and how far apart they lie.
std::optional<CrossSight> Search::sight(Index index, const Predicted& predicted) const {
    const LatticePoint count = countOf(index);
    const auto pixelAt = [&](LatticePoint point) {
        const auto place = lattice_.place(point);
        return place ? model_->pixel(*place) : std::nullopt;
    };
    constexpr double kStep = 0.1;
    const auto east = pixelAt({count.east + kStep, count.north});
    const auto west = pixelAt({count.east - kStep, count.north});
    const auto north = pixelAt({count.east, count.north + kStep});
    const auto south = pixelAt({count.east, count.north - kStep});
    if (!east || !west || !north || !south) {
        return std::nullopt;
    }
    const PixelPoint along{(east->x - west->x) / (2 * kStep), (east->y - west->y) / (2 * kStep)};
    const PixelPoint up{(north->x - south->x) / (2 * kStep), (north->y - south->y) / (2 * kStep)};
    return CrossSight{predicted.at, along, up};
}

/// The lines at the marks' own crossings tell what lines look like here; false where they show none.
Result<bool> Search::calibrate(std::span<const Mark> marks) {
    std::vector<LineTrace> lines;
    std::size_t looked = 0;
    for (const Mark& mark : marks) {
        const auto count = lattice_.count(mark.place);
        if (!count || apart(*count, {std::round(count->east), std::round(count->north)}) > 0.02) {
            continue;
        }
        const Index index = indexOf(*count);
        const auto cross = sight(index, {mark.at, 0});
        if (!cross) {
            continue;
        }
        auto seen = traceLines(picture_, *cross, Reach{4, 0, 0.03}, kFaintest);
        if (!seen) {
            return tl::unexpected(seen.error());
        }
        ++looked;
        for (const auto& line : {seen->east, seen->north}) {
            if (line && line->behind + line->ahead > 0.8) {
                lines.push_back(*line);
            }
        }
    }
    if (lines.empty() || lines.size() < looked) {
        return false;
    }
    look_ = lookOf(lines);
    return true;
}

/// Crossings next to a known one that have not been tried so often yet.
std::vector<Index> Search::nextRing(int mostTries) const {
    std::map<Index, bool> ring;
    for (const Known& known : known_) {
        for (int n = -1; n <= 1; ++n) {
            for (int e = -1; e <= 1; ++e) {
                const Index middle = indexOf(known.count);
                const Index index{middle.first + n, middle.second + e};
                const auto tried = tries_.find(index);
                const auto found = found_.find(index);
                if ((found == found_.end() || own(index) < kSure) &&
                    (tried == tries_.end() || tried->second < mostTries)) {
                    ring[index] = true;
                }
            }
        }
    }
    std::vector<Index> list;
    for (const auto& [index, yes] : ring) {
        list.push_back(index);
    }
    return list;
}

/// With few neighbours to go by, on a photo the next crossing may lie a tenth of an interval off, or at a second look a
/// fifth.
Reach Search::reachFor(Index index, const CrossSight& cross, const Predicted& predicted) const {
    constexpr std::size_t kFew = 4;
    const bool isSecond = tries_.at(index) > 1;
    const Reach lonely{(isSecond ? 0.22 : 0.1) * cross.spacing(), 0, isSecond ? 0.12 : 0.06};
    Reach reach = predicted.neighbours < kFew ? lonely : Reach{0.03 * cross.spacing(), 0, 0.03};
    reach.search = std::clamp(std::max(reach.search, 3 * predicted.doubt), 4.0, 0.25 * cross.spacing());
    return reach;
}

Result<void> Search::tryAll(const std::vector<Index>& ring, const worker::IsStopped& isStopped) {
    for (const Index& index : ring) {
        if (isStopped && isStopped()) {
            return fail(worker::kStopped);
        }
        ++tries_[index];
        const auto predicted = predict(countOf(index), std::nullopt);
        const auto cross = predicted ? sight(index, *predicted) : std::nullopt;
        if (!cross || !isInside(picture_, cross->at)) {
            continue;
        }
        const auto trace = traceCrossing(picture_, *cross, reachFor(index, *cross, *predicted), look_);
        if (!trace) {
            return tl::unexpected(trace.error());
        }
        const auto before = found_.find(index);
        if (*trace && (before == found_.end() || (*trace)->confidence > before->second.confidence ||
                       (*trace)->enclosed > before->second.enclosed)) {
            found_[index] = **trace;
        }
    }
    return {};
}

/// Confidence by the crossing's own lines.
double Search::own(Index index) const {
    const CrossingTrace& trace = found_.at(index);
    const auto has = [&](int n, int e) {
        const auto there = found_.find({index.first + n, index.second + e});
        return there != found_.end() && there->second.arms >= 3;
    };
    return has(-1, 0) && has(1, 0) && has(0, -1) && has(0, 1) ? trace.enclosed : trace.confidence;
}

/// 1 where a crossing lies as its neighbours say, less where it stands off from them.
double Search::consistency(Index index) const {
    const auto expected = predict(countOf(index), index);
    if (!expected) {
        return 1;
    }
    const PixelPoint at = found_.at(index).at;
    const double off = std::hypot(at.x - expected->at.x, at.y - expected->at.y);
    // What only its neighbours make sure must lie closer to where they have it.
    const double allowed =
        own(index) > found_.at(index).confidence ? 0.8 + expected->doubt : 1.5 + 3 * std::min(1.5, expected->doubt);
    return off <= allowed ? 1 : 0.45 * allowed / off;
}

/// Takes what was found for sure as known, but for what stands off from its neighbours; marks give way to what was
/// found at them.
Result<void> Search::learn() {
    known_ = marks_;
    for (const auto& [index, trace] : found_) {
        if (own(index) >= kSure) {
            std::erase_if(known_,
                          [&, count = countOf(index)](const Known& old) { return apart(old.count, count) < 0.02; });
            known_.push_back({countOf(index), {trace.at, *lattice_.place(countOf(index))}});
        }
    }
    if (auto fitted = fit(); !fitted || known_.size() < 8) {
        return fitted;  // with so few there is nothing to tell strays by
    }
    std::vector<LatticePoint> strays;
    for (const auto& [index, trace] : found_) {
        if (own(index) >= kSure && consistency(index) < 1) {
            strays.push_back(countOf(index));
        }
    }
    const auto all = known_;
    std::erase_if(known_, [&](const Known& known) {
        return std::any_of(strays.begin(), strays.end(),
                           [&](LatticePoint stray) { return apart(stray, known.count) < 0.01; });
    });
    if (auto fitted = fit(); !fitted) {
        known_ = all;
        return fit();
    }
    return {};
}

std::vector<Crossing> Search::answer() const {
    std::vector<Crossing> crossings;
    for (auto it = found_.rbegin(); it != found_.rend(); ++it) {
        if (it->second.arms < 3 && own(it->first) < kSure) {
            continue;
        }
        crossings.push_back(
            {it->second.at, *lattice_.place(countOf(it->first)), own(it->first) * consistency(it->first)});
    }
    std::stable_sort(crossings.begin(), crossings.end(), [](const Crossing& a, const Crossing& b) {
        return a.place.northing != b.place.northing ? a.place.northing > b.place.northing
                                                    : a.place.easting < b.place.easting;
    });
    return crossings;
}

Result<std::vector<Crossing>> Search::from(std::span<const Mark> marks, const worker::IsStopped& isStopped) {
    for (const Mark& mark : marks) {
        if (const auto count = lattice_.count(mark.place)) {
            marks_.push_back({*count, mark});
        }
    }
    known_ = marks_;
    if (auto fitted = fit(); !fitted) {
        return tl::unexpected(fitted.error());
    }
    const auto hasLines = calibrate(marks);
    if (!hasLines || !*hasLines) {
        return hasLines ? Result<std::vector<Crossing>>(std::vector<Crossing>{}) : tl::unexpected(hasLines.error());
    }
    for (const int mostTries : {1, 2, 3}) {  // what was not found on the way out may be once all is better known
        for (auto ring = nextRing(mostTries); !ring.empty() && found_.size() < kMostCrossings;
             ring = nextRing(mostTries)) {
            if (auto tried = tryAll(ring, isStopped).and_then([&] { return learn(); }); !tried) {
                return tl::unexpected(tried.error());
            }
        }
    }
    return answer();
}

}  // namespace

Result<std::vector<Crossing>> findCrossings(const GreyPicture& picture, const Lattice& lattice,
                                            std::span<const Mark> marks, const worker::IsStopped& isStopped) {
    if (marks.size() < 3) {
        return fail(kTooFewMarks, {{"marks", static_cast<std::int64_t>(marks.size())}, {"least", std::int64_t{3}}});
    }
    return Search(picture, lattice).from(marks, isStopped);
}

}  // namespace crosstick::registration
