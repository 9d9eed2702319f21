#include "core/terrain/follow.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <memory>

#include "core/terrain/centre_line.h"
#include "core/terrain/dashes.h"
#include "core/terrain/faults.h"
#include "core/terrain/other_lines.h"
#include "core/terrain/vein_path.h"

namespace crosstick::terrain {
namespace {

constexpr std::array kFarther{2 * kSure, 3 * kSure};  // where nothing is nearer; beyond that no line is meant
constexpr double kFinest = 9;                         // pixels to a millimetre that a reduced picture has at least
constexpr double kTolerance = 0.1;                    // millimetres of paper between the line and its simpler form
constexpr double kClearCost = 4;                      // mean cost up to which nothing better is looked for
constexpr std::size_t kMostTries = 3;
constexpr double kAnyCost = std::numeric_limits<double>::infinity();
constexpr double kWorth = 0.65;  // of what a first try cost: a dearer one is none, it would have to be much longer

/// The same vein as it looks at both ends, or at one where at the other something may lie over it.
struct Pair {
    Vein from, to;
    double doubt = 0;
    enum class Hidden { Nowhere, AtFirst, AtLast } hidden = Hidden::Nowhere;
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

/// What is seen at one end, where nothing is alike at both.
std::vector<Pair> seenAtOneEnd(const std::vector<Vein>& from, const std::vector<Vein>& to) {
    std::vector<Pair> pairs;
    for (const Vein& vein : from) {
        pairs.push_back({vein, vein, vein.doubt, Pair::Hidden::AtLast});
    }
    for (const Vein& vein : to) {
        pairs.push_back({vein, vein, vein.doubt, Pair::Hidden::AtFirst});
    }
    std::sort(pairs.begin(), pairs.end(), [](const Pair& a, const Pair& b) { return a.doubt < b.doubt; });
    pairs.resize(std::min(pairs.size(), kMostTries));
    return pairs;
}

Cell cellOf(PicturePoint at) {
    return {static_cast<int>(std::floor(at.column)), static_cast<int>(std::floor(at.row))};
}

/// The cell nearest to a place, no farther than a hand may be off, at which the line runs or is crossed; nothing where
/// there is none.
std::optional<Cell> onLine(VeinField& field, PicturePoint place) {
    const int reach = static_cast<int>(kSure.value() * field.size().pixelsPerMm);
    const Cell middle = cellOf(place);
    std::optional<Cell> nearest;
    int least = reach * reach + 1;
    for (int row = -reach; row <= reach; ++row) {
        for (int column = -reach; column <= reach; ++column) {
            const Cell cell{middle.column + column, middle.row + row};
            const int square = row * row + column * column;
            if (square < least && field.costAt(cell).value_or(VeinCost::kOff) <= VeinCost::kLongGap) {
                nearest = cell;
                least = square;
            }
        }
    }
    return nearest;
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
            return fromOneEnd(seenAtOneEnd(*there, *here), reduced(from), reduced(to));
        }
        std::optional<Result<Try>> best;
        for (const Pair& pair : pairs) {
            auto next = along(pair, cellOf(pair.from.centre), cellOf(pair.to.centre),
                              best && *best ? kWorth * (*best)->cost : kAnyCost);
            const bool isBetter = !best || !*best || (next && next->line.meanCost < 0.5 * (*best)->line.meanCost);
            if (isBetter && (next || !best)) {
                best = std::move(next);
            }
            if (*best && (*best)->line.meanCost <= kClearCost) {
                break;
            }
        }
        return *best ? Result<FollowedLine>(std::move((*best)->line)) : tl::unexpected(best->error());
    }

  private:
    struct Try {
        FollowedLine line;
        double cost = 0;  ///< of the way of least cost
    };
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
        for (const PaperMm reach : kFarther) {
            const bool isMet = found.empty() && reach <= size_.hand && !veinsAt(patch, at, size_, reach).empty();
            if (isMet) {  // a line's side: its middle lies farther
                found = veinsAt(patch, at, size_, reach + kSure);
            }
        }
        if (found.empty()) {
            return fail(kNothingPrinted, {{"end", std::string(end)}});
        }
        return found;
    }

    /// Only what is clear all the way counts: what is seen at the other end is something else.
    Result<FollowedLine> fromOneEnd(const std::vector<Pair>& pairs, PicturePoint from, PicturePoint to) const {
        for (const Pair& pair : pairs) {
            const bool isHiddenAtFirst = pair.hidden == Pair::Hidden::AtFirst;
            VeinField field(picture_, reduction_, {pair.from}, size_);
            const auto other = onLine(field, isHiddenAtFirst ? from : to);
            const Cell seen = cellOf(pair.from.centre);
            if (field.fault()) {
                return tl::unexpected(*field.fault());
            }
            if (!other) {
                continue;
            }
            auto line = isHiddenAtFirst ? along(pair, *other, seen, kAnyCost) : along(pair, seen, *other, kAnyCost);
            if (line && line->line.meanCost <= kClearCost) {
                return std::move(line->line);
            }
        }
        return fail(kUnlikeEnds);
    }

    /// @param most  what the way may cost
    Result<Try> along(const Pair& pair, Cell from, Cell to, double most) const {
        const std::vector<Vein> seen{pair.from, pair.to};
        auto field = std::make_unique<VeinField>(picture_, reduction_, seen, size_);
        const std::optional<double> dash = dashOf(*field, pair.from, pair.to);
        if (dash) {
            field = std::make_unique<VeinField>(picture_, reduction_, seen, size_, dash);
        }
        const auto least = leastCostPath(*field, from, to, most);
        if (!least) {
            return tl::unexpected(least.error());
        }
        const double cost = costAlong(*field, *least);
        const double clarity = goingOf(*field, *least).meanCost;  // other lines are not made dear yet
        const auto path = keptOffOtherLines(*field, *least, dash);
        if (!path) {
            return tl::unexpected(path.error());
        }
        const Going going = goingOf(*field, *path);
        if (path->empty() || breaksOff(going, size_)) {
            return fail(kBreaksOff);
        }
        FollowedLine found{simplified(centreLine(*field, *path), kTolerance * size_.pixelsPerMm), pair.from,
                           std::min(clarity, going.meanCost)};
        for (PicturePoint& point : found.line) {
            point = {point.column * reduction_, point.row * reduction_};
        }
        return Try{std::move(found), cost};
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
    const PenSize size{1 / onPaper(pixel, ground.scale).value(), onPaper(ground.hand, ground.scale)};
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
