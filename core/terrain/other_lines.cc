#include "core/terrain/other_lines.h"

#include <algorithm>

#include "core/terrain/hops.h"
#include "core/terrain/vein_path.h"

namespace crosstick::terrain {
namespace {

constexpr double kMostBlankShare = 0.2;
constexpr int kBlank = 20;            // a cell of this cost has nothing of the line
constexpr double kLeastGapMm = 0.25;  // between dashes
constexpr int kMostDashRounds = 6, kMostHopRounds = 2;
constexpr double kMostDearer = 3;  // times what it costs to hop: so much a way may cost that does not

bool isInk(VeinField& field, Cell cell) {
    return field.memberAt({cell.column + 0.5, cell.row + 0.5}) >= 0.35;
}

using Run = std::pair<std::size_t, std::size_t>;  // of a path's cells: the first, one past the last

/// Where the path goes over ink.
std::vector<Run> inkRuns(VeinField& field, const std::vector<Cell>& path) {
    std::vector<Run> runs;
    const double least = kLeastGapMm * field.size().pixelsPerMm;
    for (std::size_t n = 0; n < path.size(); ++n) {
        if (!isInk(field, path[n])) {
            continue;
        }
        if (!runs.empty() && static_cast<double>(n - runs.back().second) < least) {
            runs.back().second = n + 1;
        } else {
            runs.emplace_back(n, n + 1);
        }
    }
    return runs;
}

/// Stretches of a path on which the line runs on much farther than its dashes are long: there another is printed.
std::vector<Cell> strangeStretches(VeinField& field, const std::vector<Cell>& path, double dash) {
    std::vector<Cell> strange;
    for (const auto& [from, to] : inkRuns(field, path)) {
        if (static_cast<double>(to - from) > 1.6 * dash + field.size().pixelsPerMm) {
            strange.insert(strange.end(), path.begin() + static_cast<std::ptrdiff_t>(from),
                           path.begin() + static_cast<std::ptrdiff_t>(to));
        }
    }
    return strange;
}

/// The path that runs on least where the line is another than the dashed one.
Result<std::vector<Cell>> withoutStrange(VeinField& field, std::vector<Cell> path, double dash) {
    auto strange = strangeStretches(field, path, dash);
    for (int round = 0; !strange.empty() && round < kMostDashRounds; ++round) {
        field.bar(strange);
        auto other = leastCostPath(field, path.front(), path.back());
        if (!other) {
            return other;
        }
        auto others = strangeStretches(field, *other, dash);
        if (others.size() < strange.size()) {
            path = std::move(*other);
        }
        strange = std::move(others);
    }
    return path;
}

/// The path that hops least from line to line, of those that cost not much more.
Result<std::vector<Cell>> withoutHops(VeinField& field, std::vector<Cell> path) {
    auto hops = hopsOf(path, field.size());
    if (hops.empty() || breaksOff(goingOf(field, path), field.size())) {
        return path;
    }
    const double most = kMostDearer * costAlong(field, path);
    std::size_t least = hops.size();
    std::vector<Cell> other = path;
    for (int round = 0; !hops.empty() && round < kMostHopRounds; ++round) {
        field.bar(strayedStretches(other, hops, field.size()));
        auto next = leastCostPath(field, path.front(), path.back(), most);
        if (!next || next->empty()) {
            return next ? std::move(path) : std::move(next);
        }
        other = std::move(*next);
        hops = hopsOf(other, field.size());
        if (hops.size() < least) {
            least = hops.size();
            path = other;
        }
    }
    return path;
}

}  // namespace

Going goingOf(VeinField& field, const std::vector<Cell>& path) {
    Going going;
    if (path.empty()) {
        return going;
    }
    int blank = 0;
    int run = 0;
    for (const Cell cell : path) {
        const int cost = field.costAt(cell).value_or(VeinCost::kOff);
        going.meanCost += cost;
        run = cost >= kBlank ? run + 1 : 0;
        blank += cost >= kBlank ? 1 : 0;
        going.longestBlank = std::max(going.longestBlank, run);
    }
    const auto count = static_cast<double>(path.size());
    going.meanCost /= count;
    going.blankShare = blank / count;
    return going;
}

bool breaksOff(const Going& going, PenSize size) {
    return going.blankShare > kMostBlankShare || going.longestBlank > VeinField::kMostBlankMm * size.pixelsPerMm;
}

Result<std::vector<Cell>> keptOffOtherLines(VeinField& field, std::vector<Cell> path, std::optional<double> dash) {
    return dash ? withoutStrange(field, std::move(path), *dash) : withoutHops(field, std::move(path));
}

}  // namespace crosstick::terrain
