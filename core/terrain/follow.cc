#include "core/terrain/follow.h"

#include <algorithm>
#include <cmath>
#include <memory>

#include "core/terrain/centre_line.h"
#include "core/terrain/dashes.h"
#include "core/terrain/faults.h"
#include "core/terrain/vein_path.h"

namespace crosstick::terrain {
namespace {

constexpr double kFinest = 9;       // pixels to a millimetre that a reduced picture has at least
constexpr double kTolerance = 0.1;  // millimetres of paper between the line and its simpler form
constexpr double kClearCost = 4;    // mean cost up to which nothing better is looked for
constexpr double kMostBlankShare = 0.2;
constexpr int kBlank = 20;  // a cell of this cost has nothing of the line
constexpr std::size_t kMostTries = 3;
constexpr double kLeastGapMm = 0.25;  // between dashes
constexpr int kMostRounds = 7;

/// The same vein as it looks at both ends.
struct Pair {
    Vein from, to;
    double doubt = 0;
};

double contrastOf(const Vein& vein) {
    return std::min(colourDistance(vein.ink, vein.left), colourDistance(vein.ink, vein.right));
}

/// 0 for the same look, more for another; above 1 it is another line.
double difference(const Vein& a, const Vein& b) {
    const double colours = colourDistance(a.ink, b.ink) / std::min(contrastOf(a), contrastOf(b));
    const double widths = std::abs(a.halfWidth - b.halfWidth) / (0.5 + 0.5 * std::max(a.halfWidth, b.halfWidth));
    return std::max(colours / 0.5, widths / 1.2);
}

std::vector<Pair> pairsOf(const std::vector<Vein>& from, const std::vector<Vein>& to, const std::optional<Vein>& like) {
    std::vector<Pair> pairs;
    for (const Vein& a : from) {
        for (const Vein& b : to) {
            const double unlike = difference(a, b);
            if (unlike > 1) {
                continue;
            }
            const bool isLiked = like && difference(a, *like) < 0.6;
            pairs.push_back({a, b, a.doubt + b.doubt + unlike - (isLiked ? 0.4 : 0)});
        }
    }
    std::sort(pairs.begin(), pairs.end(), [](const Pair& a, const Pair& b) { return a.doubt < b.doubt; });
    pairs.resize(std::min(pairs.size(), kMostTries));
    return pairs;
}

/// What a path goes over.
struct Going {
    double meanCost = 0;
    double blankShare = 0;
    int longestBlank = 0;  ///< cells
};

Going goingOf(VeinField& field, const std::vector<Cell>& path) {
    Going going;
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
std::vector<Cell> strangeStretches(VeinField& field, const std::vector<Cell>& path, std::optional<double> dash) {
    std::vector<Cell> strange;
    if (!dash) {
        return strange;
    }
    for (const auto& [from, to] : inkRuns(field, path)) {
        if (static_cast<double>(to - from) > 1.6 * *dash + field.size().pixelsPerMm) {
            strange.insert(strange.end(), path.begin() + static_cast<std::ptrdiff_t>(from),
                           path.begin() + static_cast<std::ptrdiff_t>(to));
        }
    }
    return strange;
}

/// How long the dashes are where an end shows some: an unbroken line shows none evenly, while close by another line a
/// dashed one may seem unbroken.
std::optional<double> dashOf(VeinField& field, const Vein& from, const Vein& to) {
    const auto first = dashAt(field, from);
    const auto last = dashAt(field, to);
    return first && last ? std::max(first, last) : first ? first : last;
}

class Follower {
  public:
    Follower(const Picture& picture, PenSize size) : picture_(picture), size_(size) {
        while (size_.pixelsPerMm / 2 >= kFinest) {
            size_.pixelsPerMm /= 2;
            reduction_ *= 2;
        }
    }

    Result<FollowedLine> between(PicturePoint from, PicturePoint to, const std::optional<Vein>& like) {
        const auto there = veins(from, "first");
        if (!there) {
            return tl::unexpected(there.error());
        }
        const auto here = veins(to, "last");
        if (!here) {
            return tl::unexpected(here.error());
        }
        const auto pairs = pairsOf(*there, *here, like);
        if (pairs.empty()) {
            return fail(kUnlikeEnds);
        }
        std::optional<Result<FollowedLine>> best;
        for (const Pair& pair : pairs) {
            auto line = along(pair);
            const bool isBetter = !best || !*best || (line && line->meanCost < 0.5 * (*best)->meanCost);
            if (isBetter && (line || !best)) {
                best = std::move(line);
            }
            if (*best && (*best)->meanCost <= kClearCost) {
                break;
            }
        }
        return std::move(*best);
    }

  private:
    const Picture& picture_;
    PenSize size_;
    int reduction_ = 1;

    [[nodiscard]] PicturePoint reduced(PicturePoint at) const { return {at.column / reduction_, at.row / reduction_}; }

    Result<std::vector<Vein>> veins(PicturePoint place, const char* end) const {
        if (!(place.column >= 0 && place.row >= 0 && place.column < picture_.columns() &&
              place.row < picture_.rows())) {
            return fail(kOffPicture);
        }
        const PicturePoint at = reduced(place);
        const int half = static_cast<int>(std::ceil(kPatchMm * size_.pixelsPerMm));
        Patch patch{{}, static_cast<int>(at.column) - half, static_cast<int>(at.row) - half};
        const int side = 2 * half + 1;
        auto pixels = picture_.read(
            {patch.column * reduction_, patch.row * reduction_, side * reduction_, side * reduction_}, side, side);
        if (!pixels) {
            return tl::unexpected(pixels.error());
        }
        patch.pixels = std::move(*pixels);
        auto found = veinsAt(patch, at, size_);
        if (found.empty()) {
            return fail(kNothingPrinted, {{"end", std::string(end)}});
        }
        return found;
    }

    Result<FollowedLine> along(const Pair& pair) const {
        const auto cellOf = [](PicturePoint at) {
            return Cell{static_cast<int>(std::floor(at.column)), static_cast<int>(std::floor(at.row))};
        };
        const Cell from = cellOf(pair.from.centre);
        const Cell to = cellOf(pair.to.centre);
        const std::vector<Vein> seen{pair.from, pair.to};
        auto field = std::make_unique<VeinField>(picture_, reduction_, seen, size_);
        const std::optional<double> dash = dashOf(*field, pair.from, pair.to);
        if (dash) {
            field = std::make_unique<VeinField>(picture_, reduction_, seen, size_, dash);
        }
        auto path = leastCostPath(*field, from, to);
        auto strange = path ? strangeStretches(*field, *path, dash) : std::vector<Cell>{};
        for (int round = 1; !strange.empty() && round < kMostRounds; ++round) {
            field->bar(strange);
            auto other = leastCostPath(*field, from, to);
            if (!other) {
                return tl::unexpected(other.error());
            }
            auto others = strangeStretches(*field, *other, dash);
            if (others.size() < strange.size()) {
                path = std::move(other);
            }
            strange = std::move(others);
        }
        if (!path) {
            return tl::unexpected(path.error());
        }
        const Going going = path->empty() ? Going{} : goingOf(*field, *path);
        if (path->empty() || going.blankShare > kMostBlankShare ||
            going.longestBlank > VeinField::kMostBlankMm * size_.pixelsPerMm) {
            return fail(kBreaksOff);
        }
        FollowedLine found{simplified(centreLine(*field, *path), kTolerance * size_.pixelsPerMm), pair.from,
                           going.meanCost};
        for (PicturePoint& point : found.line) {
            point = {point.column * reduction_, point.row * reduction_};
        }
        return found;
    }
};

PicturePoint inPicture(const plan::Placement& placement, geodesy::PlanePoint at) {
    const plan::RasterSpot spot = plan::inRaster(placement, at);
    return {spot.column, spot.row};
}

}  // namespace

Result<FollowedLine> followedLine(const Picture& picture, PenSize size, PicturePoint from, PicturePoint to,
                                  const std::optional<Vein>& like) {
    return Follower(picture, size).between(from, to, like);
}

Result<FollowedGround> followedLine(const PrintedGround& ground, geodesy::PlanePoint from, geodesy::PlanePoint to,
                                    const std::optional<Vein>& like) {
    const plan::Placement& p = ground.placement;
    const Metres pixel(std::sqrt(std::abs(p.eastPerColumn * p.northPerRow - p.eastPerRow * p.northPerColumn)));
    const PenSize size{1 / onPaper(pixel, ground.scale).value()};
    const auto found = followedLine(ground.picture, size, inPicture(p, from), inPicture(p, to), like);
    if (!found) {
        return tl::unexpected(found.error());
    }
    FollowedGround line{{}, found->vein};
    for (const PicturePoint point : found->line) {
        line.line.push_back(plan::onGrid(p, point.column, point.row));
    }
    return line;
}

}  // namespace crosstick::terrain
