#include "core/terrain/vein_cost.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace crosstick::terrain {
namespace {

constexpr int kShortGap = 14;  // cells: dashes lie no farther apart
constexpr int kNoGap = 2;      // what has the line's ink right before and right behind it lies on its edge
constexpr std::uint8_t kMayBeInk = 120, kIsNoInk = 110;
constexpr double kLikeEnough = 0.75;
constexpr double kTightestBend = 60;  // cells: radius of what still counts as straight on
constexpr std::array kBulges{0.0, -1.0, 1.0};
constexpr int kStride = 3, kLongestLook = 51;  // cells

int offset(double column, double row, int stride) {
    return static_cast<int>(std::lround(row)) * stride + static_cast<int>(std::lround(column));
}

}  // namespace

VeinCost::VeinCost(const std::vector<Vein>& seen, PenSize size, std::optional<double> dash, int stride)
    : dash_(dash),
      longestRun_(dash ? std::min(1.5 * *dash + 0.6 * size.pixelsPerMm, 1.9 * kLongestLook) : 0),
      stride_(stride) {
    const auto [thinnest, widest] = std::minmax_element(
        seen.begin(), seen.end(), [](const Vein& a, const Vein& b) { return a.halfWidth < b.halfWidth; });
    prepareProbes(thinnest->halfWidth, widest->halfWidth, size);
    prepareRays(widest->halfWidth);
}

/// Inside: the middle, and for a broad line half way to its edges. Beside: just beyond the edges.
void VeinCost::prepareProbes(double thinnest, double widest, PenSize size) {
    const double step = std::max(0.6, size.pixelsPerMm / 12);
    const double beside = widest + 1.6;
    for (std::size_t n = 0; n < kDirections; ++n) {
        const double turn = static_cast<double>(n) * std::numbers::pi / kDirections;
        const double dx = std::cos(turn);
        const double dy = std::sin(turn);
        Probe& probe = probes_[n];
        for (const double along : {0.0, -1.5, 1.5, -3.0, 3.0}) {
            const auto at = [&](double across) {
                return offset(dx * along * step - dy * across, dy * along * step + dx * across, stride_);
            };
            probe.inner.push_back(at(0));
            if (thinnest >= 1.5) {
                probe.inner.push_back(at(-0.55 * thinnest));
                probe.inner.push_back(at(0.55 * thinnest));
            }
            probe.left.push_back(at(-beside));
            probe.right.push_back(at(beside));
        }
    }
}

void VeinCost::prepareRays(double widest) {
    // So far a line must run on where a ray meets it: one that is met aslant does not.
    const double run = std::min(17.0, dash_ ? 0.6 * *dash_ : 17.0);
    for (std::size_t n = 0; n < 2 * kFineDirections; ++n) {
        const double turn = static_cast<double>(n) * std::numbers::pi / kFineDirections;
        const double dx = std::cos(turn);
        const double dy = std::sin(turn);
        strides_[n] = {kStride * dx, kStride * dy};
        Ray& ray = rays_[n];
        const auto at = [&](double along, double across) {
            return offset(dx * along - dy * across, dy * along + dx * across, stride_);
        };
        for (std::size_t bend = 0; bend < kBends; ++bend) {
            const double bulge = kBulges[bend] / (2 * kTightestBend);
            for (double along = 1.5; along <= run; along += 1.5) {
                ray.onward[bend].push_back(at(along, bulge * along * along));
            }
        }
        for (std::size_t k = 0; k < ray.along.size(); ++k) {
            ray.along[k] = at(static_cast<double>(k), 0);
        }
        for (std::size_t k = 0; k < ray.flanks.size(); ++k) {
            const double along = static_cast<double>(k) * kFlankStep;
            for (const double across : {2.0, widest + 1.1, widest + 2.2}) {  // nearer, it would be met
                ray.flanks[k].push_back(at(along, -across));
                ray.flanks[k].push_back(at(along, across));
            }
        }
        ray.left = at(run / 2, -widest - 2.2);
        ray.right = at(run / 2, widest + 2.2);
    }
}

/// How well the surroundings are those of the vein in the direction that suits best, 0 to 1.
double VeinCost::likeness(Place place) const {
    const auto mean = [at = place.member](const Offsets& offsets) {
        int sum = 0;
        for (const int by : offsets) {
            sum += at[by];
        }
        return sum / (255.0 * static_cast<double>(offsets.size()));
    };
    double best = 0;
    for (const Probe& probe : probes_) {
        const double inner = mean(probe.inner);
        if (inner <= best) {
            continue;
        }
        const double left = mean(probe.left);
        const double right = mean(probe.right);
        best = std::max(best, inner * (1 - 0.7 * std::max(left, right) - 0.15 * (left + right)));
    }
    return best;
}

/// The cells to where a ray meets a piece of the line that runs on in about the ray's direction.
std::optional<int> VeinCost::meets(Place place, const Ray& ray, int farthest) const {
    int cells = std::max<int>(1, *place.away);  // there is no ink nearer
    while (cells <= farthest && place.near[ray.along[static_cast<std::size_t>(cells)]] < kIsInk) {
        ++cells;
    }
    if (cells > farthest) {
        return std::nullopt;
    }
    const int met = ray.along[static_cast<std::size_t>(cells)];
    const bool isAlone = place.member[met + ray.left] < kIsNoInk && place.member[met + ray.right] < kIsNoInk;
    const bool runsOn =
        isAlone && std::any_of(ray.onward.begin(), ray.onward.end(), [&](const Offsets& onward) {
            return std::all_of(onward.begin(), onward.end(), [&](int by) { return place.near[met + by] >= kIsInk; });
        });
    return runsOn ? std::optional(cells) : std::nullopt;
}

/// Whether nothing of the line lies beside a ray: a gap lies between two ends, not between two lines that pass.
bool VeinCost::isClear(Place place, const Ray& ray, int length) const {
    for (int cells = 0; cells < length; cells += kFlankStep) {
        for (const int by : ray.flanks[static_cast<std::size_t>(cells / kFlankStep)]) {
            if (place.member[by] >= kIsNoInk) {
                return false;
            }
        }
    }
    return true;
}

/// Cells of ink in a direction, without a break and round the bends, as far as it is looked.
int VeinCost::runOn(Place place, std::size_t direction) const {
    constexpr double kShift = 2 * kMargin;  // so that what is cut off is rounded down
    double column = kShift + 0.5;
    double row = kShift + 0.5;
    int run = 0;
    while (run + kStride <= kLongestLook) {
        bool isInk = false;
        for (const std::size_t turn : {std::size_t{0}, std::size_t{1}, rays_.size() - 1}) {
            const std::size_t way = (direction + turn) % rays_.size();
            const double c = column + strides_[way].column;
            const double r = row + strides_[way].row;
            const int by = (static_cast<int>(r) - 2 * kMargin) * stride_ + static_cast<int>(c) - 2 * kMargin;
            if (place.near[by] >= kMayBeInk) {
                column = c;
                row = r;
                direction = way;
                isInk = true;
                break;
            }
        }
        if (!isInk) {
            break;
        }
        run += kStride;
    }
    return run;
}

bool VeinCost::runsTooFar(Place at) const {
    for (std::size_t n = 0; n < kFineDirections; ++n) {
        if (runOn(at, n) + runOn(at, n + kFineDirections) > longestRun_) {
            return true;
        }
    }
    return false;
}

/// What it costs to go on straight from one of the line's ends to another; kOff where none face each other here.
int VeinCost::acrossGap(Place at, int gapCost) const {
    int least = kOff;
    const int farthest = kLongestGap - *at.away;  // what is left beyond the nearest ink
    if (farthest < *at.away) {
        return kOff;
    }
    for (std::size_t n = 0; n < kFineDirections && least > gapCost; ++n) {
        const Ray& onward = rays_[n];
        const Ray& back = rays_[n + kFineDirections];
        const auto ahead = meets(at, onward, farthest);
        const auto behind = ahead ? meets(at, back, kLongestGap - *ahead) : std::nullopt;
        const bool isGap = behind && *ahead + *behind > kNoGap;
        if (isGap && isClear(at, onward, *ahead) && isClear(at, back, *behind)) {
            least = std::min(least, *ahead + *behind <= kShortGap ? gapCost : kLongGap);
        }
    }
    return least;
}

int VeinCost::of(Place at) const {
    // What differs by noise alone costs no more than the vein itself: no line is left for a clearer one.
    const double unlike = *at.member < 50 ? 1 : std::max(0.0, 1 - likeness(at) / kLikeEnough);
    const int cost = 1 + static_cast<int>(std::lround((kOff - 1) * unlike * unlike));
    const int gapCost = dash_ ? kDashGap : kGap;
    if (cost <= gapCost) {
        return dash_ && runsTooFar(at) ? kBarred : cost;
    }
    const int onInk = cost < kOff && dash_ && runsTooFar(at) ? kOff : cost;
    return std::min(onInk, acrossGap(at, gapCost));
}

}  // namespace crosstick::terrain
