#include "core/registration/crossing_finder.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/registration/faults.h"
#include "core/registration/known_crossings.h"
#include "core/registration/whole_line.h"
#include "core/worker/faults.h"

namespace crosstick::registration {
namespace {

constexpr std::size_t kMostCrossings = 4000;

/// A crossing by its two lines as wholes.
struct Reading {
    PixelPoint at;
    double confidence = 0;
};

/// Where two lines cut.
PixelPoint cut(const LineAt& a, const LineAt& b) {
    const double area = a.direction.x * b.direction.y - a.direction.y * b.direction.x;
    const double t = ((b.at.x - a.at.x) * b.direction.y - (b.at.y - a.at.y) * b.direction.x) / area;
    return {a.at.x + t * a.direction.x, a.at.y + t * a.direction.y};
}

class Search {
  public:
    Search(const GreyPicture& picture, const Lattice& lattice, const worker::IsStopped& isStopped)
        : picture_(picture), lattice_(lattice), isStopped_(isStopped), known_(lattice) {}

    Result<std::vector<Crossing>> from(std::span<const Mark> marks);

  private:
    using Lines = std::map<Index, LineAt>;  ///< by their crossings

    const GreyPicture& picture_;
    const Lattice& lattice_;
    const worker::IsStopped& isStopped_;
    std::vector<Known> marks_;
    KnownCrossings known_;  ///< marks, and what was found for sure
    std::map<Index, CrossingTrace> found_;
    std::map<Index, int> tries_;
    LineLook look_;

    Result<bool> calibrate(std::span<const Mark> marks);
    [[nodiscard]] std::vector<Index> nextRing(int mostTries) const;
    Result<void> tryAll(const std::vector<Index>& ring);
    [[nodiscard]] Reach reachFor(Index index, const CrossSight& cross, const Predicted& predicted) const;
    [[nodiscard]] double consistency(Index index, PixelPoint at) const;
    [[nodiscard]] const CrossingTrace* sureAt(LatticePoint count) const;
    Result<void> learn();
    [[nodiscard]] bool isNear(PixelPoint at) const;
    [[nodiscard]] std::vector<Station> stations(Index& first, Index step, int count) const;
    Result<Lines> follow(const std::set<Index>& wanted, Index step) const;
    Result<std::map<Index, Reading>> readings() const;
    [[nodiscard]] std::vector<Crossing> answer(const std::map<Index, Reading>& readings) const;
};

/// The lines at the marks' own crossings tell what lines look like here; false where they show none.
Result<bool> Search::calibrate(std::span<const Mark> marks) {
    std::vector<LineTrace> lines;
    std::size_t looked = 0;
    for (const Mark& mark : marks) {
        const auto count = lattice_.count(mark.place);
        if (!count || apart(*count, countOf(indexOf(*count))) > 0.02) {
            continue;
        }
        const auto cross = known_.sight(countOf(indexOf(*count)), mark.at);
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
    std::set<Index> ring;
    for (const Known& known : known_.all()) {
        for (int n = -1; n <= 1; ++n) {
            for (int e = -1; e <= 1; ++e) {
                const Index middle = indexOf(known.count);
                const Index index{middle.first + n, middle.second + e};
                const auto tried = tries_.find(index);
                const auto found = found_.find(index);
                if ((found == found_.end() || found->second.confidence < kSure) &&
                    (tried == tries_.end() || tried->second < mostTries)) {
                    ring.insert(index);
                }
            }
        }
    }
    return {ring.begin(), ring.end()};
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

Result<void> Search::tryAll(const std::vector<Index>& ring) {
    for (const Index& index : ring) {
        if (isStopped_ && isStopped_()) {
            return fail(worker::kStopped);
        }
        ++tries_[index];
        const auto predicted = known_.predict(countOf(index));
        const auto cross = predicted ? known_.sight(countOf(index), predicted->at) : std::nullopt;
        if (!cross || !isInside(picture_, cross->at)) {
            continue;
        }
        const auto trace = traceCrossing(picture_, *cross, reachFor(index, *cross, *predicted), look_);
        if (!trace) {
            return tl::unexpected(trace.error());
        }
        const auto before = found_.find(index);
        if (*trace && (before == found_.end() || (*trace)->confidence > before->second.confidence)) {
            found_[index] = **trace;
        }
    }
    return {};
}

/// 1 where a crossing lies as its neighbours say, less where it stands off from them.
double Search::consistency(Index index, PixelPoint at) const {
    const auto expected = known_.predict(countOf(index), countOf(index));
    if (!expected) {
        return 1;
    }
    const double off = std::hypot(at.x - expected->at.x, at.y - expected->at.y);
    const double allowed = 1.5 + 3 * std::min(1.5, expected->doubt);
    return off <= allowed ? 1 : 0.45 * allowed / off;
}

/// What was found for sure at a crossing.
const CrossingTrace* Search::sureAt(LatticePoint count) const {
    const auto found = found_.find(indexOf(count));
    const bool isIt = found != found_.end() && apart(count, countOf(found->first)) < 0.02;
    return isIt && found->second.confidence >= kSure ? &found->second : nullptr;
}

/// Takes what was found for sure as known, but for what stands off from its neighbours; marks give way to what was
/// found at them. From many, what the sheet's lines look like is told anew: at the marks a name may hide them.
Result<void> Search::learn() {
    std::vector<Known> known;
    std::copy_if(marks_.begin(), marks_.end(), std::back_inserter(known),
                 [&](const Known& mark) { return sureAt(mark.count) == nullptr; });
    std::vector<LineTrace> lines;
    for (const auto& [index, trace] : found_) {
        if (trace.confidence >= kSure) {
            known.push_back({countOf(index), {trace.at, *lattice_.place(countOf(index))}});
            lines.insert(lines.end(), {trace.east, trace.north});
        }
    }
    constexpr std::size_t kMany = 16;
    if (lines.size() >= kMany) {
        look_ = lookOf(lines);
    }
    constexpr std::size_t kFew = 8;  // with so few there is nothing to tell strays by
    if (auto learned = known_.learn(known); !learned || known.size() < kFew) {
        return learned;
    }
    std::vector<Known> sound;
    std::copy_if(known.begin(), known.end(), std::back_inserter(sound), [&](const Known& one) {
        return sureAt(one.count) == nullptr || consistency(indexOf(one.count), one.mark.at) == 1;
    });
    static_cast<void>(known_.learn(std::move(sound)));  // where too few are left, all stay
    return {};
}

/// Whether a place lies in the picture or not farther off than its own size: towards a horizon intervals grow endless.
bool Search::isNear(PixelPoint at) const {
    return std::abs(at.x - picture_.columns / 2.0) < 1.5 * picture_.columns &&
           std::abs(at.y - picture_.rows / 2.0) < 1.5 * picture_.rows;
}

/// Where a line should run at its crossings, as far as there is a place for them.
/// @param first  the first of them; then the first that has a place
std::vector<Station> Search::stations(Index& first, Index step, int count) const {
    std::vector<Station> list;
    std::vector<PixelPoint> offs;
    Index index = first;
    for (int k = 0; k < count; ++k, index = {index.first + step.first, index.second + step.second}) {
        const auto at = known_.modelled(countOf(index));
        const auto predicted = known_.predict(countOf(index));
        if (at && predicted && isNear(*at)) {
            first = list.empty() ? index : first;
            list.push_back({*at, 0});
            offs.push_back({predicted->at.x - at->x, predicted->at.y - at->y});
        } else if (!list.empty()) {
            break;
        }
    }
    for (std::size_t k = 0; k < list.size() && list.size() > 1; ++k) {
        const PixelPoint a = list[k == 0 ? 0 : k - 1].at;
        const PixelPoint b = list[std::min(k + 1, list.size() - 1)].at;
        list[k].aside = (offs[k].y * (b.x - a.x) - offs[k].x * (b.y - a.y)) / std::hypot(b.x - a.x, b.y - a.y);
    }
    return list;
}

/// All lines that run one way, at the crossings that are wanted and some beside. @param step  to the next crossing
Result<Search::Lines> Search::follow(const std::set<Index>& wanted, Index step) const {
    const bool isEastward = step.first == 0;
    std::map<int, std::pair<int, int>> ranges;  // of each line
    for (const auto& [north, east] : wanted) {
        const int along = isEastward ? east : north;
        auto& range = ranges.try_emplace(isEastward ? north : east, along, along).first->second;
        range = {std::min(range.first, along), std::max(range.second, along)};
    }
    Lines lines;
    for (const auto& [line, range] : ranges) {
        if (isStopped_ && isStopped_()) {
            return fail(worker::kStopped);
        }
        Index at = isEastward ? Index{line, range.first - 1} : Index{range.first - 1, line};
        const auto followed = followLine(picture_, stations(at, step, range.second - range.first + 3), look_);
        if (!followed) {
            return tl::unexpected(followed.error());
        }
        for (const auto& here : *followed) {
            if (here) {
                lines[at] = *here;
            }
            at = {at.first + step.first, at.second + step.second};
        }
    }
    return lines;
}

/// The crossings that were found on the way out, and those beside them, by their lines as wholes.
Result<std::map<Index, Reading>> Search::readings() const {
    std::set<Index> wanted;
    for (const auto& [index, trace] : found_) {
        for (const Index& step : {Index{0, 0}, Index{1, 0}, Index{-1, 0}, Index{0, 1}, Index{0, -1}}) {
            wanted.insert({index.first + step.first, index.second + step.second});
        }
    }
    const auto east = follow(wanted, {0, 1});
    const auto north = follow(wanted, {1, 0});
    if (!east || !north) {
        return tl::unexpected(east ? north.error() : east.error());
    }
    std::map<Index, Reading> readings;
    for (const Index& index : wanted) {
        const auto a = east->find(index);
        const auto b = north->find(index);
        if (a == east->end() || b == north->end()) {
            continue;
        }
        const PixelPoint at = cut(a->second, b->second);
        if (isInside(picture_, at)) {
            readings[index] = {at, std::min(confidenceOf(a->second, look_), confidenceOf(b->second, look_))};
        }
    }
    return readings;
}

std::vector<Crossing> Search::answer(const std::map<Index, Reading>& readings) const {
    constexpr double kNone = 0.05;  // a corner, or a line's end
    std::vector<Crossing> crossings;
    for (const auto& [index, reading] : readings) {
        const double confidence = reading.confidence * consistency(index, reading.at);
        if (confidence >= kNone) {
            crossings.push_back({reading.at, *lattice_.place(countOf(index)), confidence});
        }
    }
    std::stable_sort(crossings.begin(), crossings.end(), [](const Crossing& a, const Crossing& b) {
        return a.place.northing != b.place.northing ? a.place.northing > b.place.northing
                                                    : a.place.easting < b.place.easting;
    });
    return crossings;
}

Result<std::vector<Crossing>> Search::from(std::span<const Mark> marks) {
    for (const Mark& mark : marks) {
        if (const auto count = lattice_.count(mark.place)) {
            marks_.push_back({*count, mark});
        }
    }
    if (auto learned = known_.learn(marks_); !learned) {
        return tl::unexpected(learned.error());
    }
    const auto hasLines = calibrate(marks);
    if (!hasLines || !*hasLines) {
        return hasLines ? Result<std::vector<Crossing>>(std::vector<Crossing>{}) : tl::unexpected(hasLines.error());
    }
    for (const int mostTries : {1, 2, 3}) {  // what was not found on the way out may be once all is better known
        for (auto ring = nextRing(mostTries); !ring.empty() && found_.size() < kMostCrossings;
             ring = nextRing(mostTries)) {
            if (auto tried = tryAll(ring).and_then([&] { return learn(); }); !tried) {
                return tl::unexpected(tried.error());
            }
        }
    }
    return readings().map([&](const std::map<Index, Reading>& readings) { return answer(readings); });
}

}  // namespace

Result<std::vector<Crossing>> findCrossings(const GreyPicture& picture, const Lattice& lattice,
                                            std::span<const Mark> marks, const worker::IsStopped& isStopped) {
    if (marks.size() < 3) {
        return fail(kTooFewMarks, {{"marks", static_cast<std::int64_t>(marks.size())}, {"least", std::int64_t{3}}});
    }
    return Search(picture, lattice, isStopped).from(marks);
}

}  // namespace crosstick::registration
