#include "core/terrain/vein_field.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/terrain/faults.h"

namespace crosstick::terrain {
namespace {

constexpr std::array kSteps{2, 3, 4, 6, 8, 10, 12, 14, 17, 20, 23, 27, 31, 35};
constexpr int kShortGap = 14;  // cells: dashes lie no farther apart
constexpr std::uint8_t kIsInk = 180, kMayBeInk = 120, kIsNoInk = 110;
constexpr int kBarred = 15;
constexpr double kLikeEnough = 0.75;

int offset(double column, double row, int side) {
    return static_cast<int>(std::lround(row)) * side + static_cast<int>(std::lround(column));
}

int roundedUp(int a, int b) {
    return (a + b - 1) / b;
}

/// Of every cell and its eight neighbours the most; the outermost cells stay as they are.
std::vector<std::uint8_t> mostAround(const std::vector<std::uint8_t>& plane, std::size_t side) {
    std::vector<std::uint8_t> across = plane;
    for (std::size_t n = 1; n + 1 < plane.size(); ++n) {
        across[n] = std::max({plane[n - 1], plane[n], plane[n + 1]});
    }
    std::vector<std::uint8_t> most = across;
    for (std::size_t n = side; n + side < plane.size(); ++n) {
        most[n] = std::max({across[n - side], across[n], across[n + side]});
    }
    return most;
}

double thinnestOf(const std::vector<Vein>& seen) {
    double half = 100;
    for (const Vein& vein : seen) {
        half = std::min(half, vein.halfWidth);
    }
    return half;
}

double widestOf(const std::vector<Vein>& seen) {
    double half = 0;
    for (const Vein& vein : seen) {
        half = std::max(half, vein.halfWidth);
    }
    return half;
}

}  // namespace

VeinField::VeinField(const Picture& picture, int reduction, const std::vector<Vein>& seen, PenSize size,
                     std::optional<double> dash)
    : picture_(picture),
      reduction_(reduction),
      columns_(roundedUp(picture.columns(), reduction)),
      rows_(roundedUp(picture.rows(), reduction)),
      tilesAcross_(roundedUp(columns_, kTile)),
      size_(size),
      membership_(seen),
      thinnest_(thinnestOf(seen)),
      widest_(widestOf(seen)),
      dash_(dash),
      tiles_(static_cast<std::size_t>(tilesAcross_) * static_cast<std::size_t>(roundedUp(rows_, kTile))) {
    prepareProbes();
    prepareRays();
}

/// Inside: the middle, and for a broad line half way to its edges. Beside: just beyond the edges.
void VeinField::prepareProbes() {
    const double step = std::max(0.6, size_.pixelsPerMm / 12);
    const double beside = widest_ + 1.6;
    for (int n = 0; n < kDirections; ++n) {
        const double turn = n * std::numbers::pi / kDirections;
        const double dx = std::cos(turn);
        const double dy = std::sin(turn);
        Probe& probe = probes_[static_cast<std::size_t>(n)];
        for (const double along : {0.0, -1.5, 1.5, -3.0, 3.0}) {
            const auto at = [&](double across) {
                return offset(dx * along * step - dy * across, dy * along * step + dx * across, kSide);
            };
            probe.inner.push_back(at(0));
            if (thinnest_ >= 1.5) {
                probe.inner.push_back(at(-0.55 * thinnest_));
                probe.inner.push_back(at(0.55 * thinnest_));
            }
            probe.left.push_back(at(-beside));
            probe.right.push_back(at(beside));
        }
    }
}

void VeinField::prepareRays() {
    const double beside = widest_ + 2.2;
    // So far a line must run on where a ray meets it: one that is met aslant does not.
    const double run = std::min(17.0, dash_ ? 0.6 * *dash_ : 17.0);
    for (int n = 0; n < 2 * kFineDirections; ++n) {
        const double turn = n * std::numbers::pi / kFineDirections;
        const double dx = std::cos(turn);
        const double dy = std::sin(turn);
        Ray& ray = rays_[static_cast<std::size_t>(n)];
        const auto at = [&](double along, double across) {
            return offset(dx * along - dy * across, dy * along + dx * across, kSide);
        };
        for (double along = 1.5; along <= run; along += 1.5) {
            ray.onward.push_back(at(along, 0));
        }
        for (const int step : kSteps) {
            ray.ahead.push_back(at(step, 0));
            ray.left.push_back(at(step + run / 2, -beside));
            ray.right.push_back(at(step + run / 2, beside));
            ray.pastLeft.push_back(at(step - 6, -widest_ - 1.1));
            ray.pastRight.push_back(at(step - 6, widest_ + 1.1));
        }
    }
}

std::unique_ptr<VeinField::Tile> VeinField::load(int tileColumn, int tileRow) {
    const int left = tileColumn * kTile - kMargin;
    const int top = tileRow * kTile - kMargin;
    const auto pixels =
        picture_.read({left * reduction_, top * reduction_, kSide * reduction_, kSide * reduction_}, kSide, kSide);
    if (!pixels) {
        fault_ = pixels.error();
        return nullptr;
    }
    auto tile = std::make_unique<Tile>();
    tile->member.resize(pixels->rgb.size());
    std::transform(pixels->rgb.begin(), pixels->rgb.end(), tile->member.begin(),
                   [this](std::uint32_t rgb) { return rgb == 0 ? std::uint8_t{0} : membership_.of(rgb); });
    tile->near = mostAround(tile->member, kSide);
    tile->cost.resize(static_cast<std::size_t>(kTile) * kTile);
    return tile;
}

VeinField::Tile* VeinField::tileAt(Cell cell) {
    if (cell.column < 0 || cell.row < 0 || cell.column >= columns_ || cell.row >= rows_ || fault_) {
        return nullptr;
    }
    const int column = cell.column / kTile;
    const int row = cell.row / kTile;
    auto& tile = tiles_[static_cast<std::size_t>(row) * static_cast<std::size_t>(tilesAcross_) +
                        static_cast<std::size_t>(column)];
    if (!tile) {
        if (++loaded_ > kMostTiles) {
            fault_ = Error{kTooFar, {}};
            return nullptr;
        }
        tile = load(column, row);
    }
    return tile.get();
}

/// How well the surroundings are those of the vein in the direction that suits best, 0 to 1.
double VeinField::likeness(Place place) const {
    const std::uint8_t* at = place.member;
    const auto mean = [at](const std::vector<int>& offsets) {
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

/// The step at which a ray meets the line's end, running on in the ray's direction.
std::optional<std::size_t> VeinField::meets(Place place, const Ray& ray) const {
    const std::uint8_t* at = place.near;
    for (std::size_t n = 0; n < kSteps.size(); ++n) {
        if (at[ray.ahead[n]] >= kIsInk) {
            const std::uint8_t* met = at + ray.ahead[n];
            const bool runsOn =
                std::all_of(ray.onward.begin(), ray.onward.end(), [&](int by) { return met[by] >= kIsInk; });
            const auto isBlank = [&](int by) { return place.member[by] < kIsNoInk; };
            const bool isEnd =
                isBlank(ray.left[n]) && isBlank(ray.right[n]) && isBlank(ray.pastLeft[n]) && isBlank(ray.pastRight[n]);
            return runsOn && isEnd ? std::optional(n) : std::nullopt;
        }
    }
    return std::nullopt;
}

/// Cells of ink along a ray, without a break, as far as it is looked.
int VeinField::runOn(Place place, const Ray& ray) const {
    int run = 0;
    for (std::size_t n = 0; n < kSteps.size() && place.near[ray.ahead[n]] >= kMayBeInk; ++n) {
        run = kSteps[n];
    }
    return run;
}

bool VeinField::runsTooFar(Place at) const {
    const double most = std::min(1.5 * *dash_ + 0.6 * size_.pixelsPerMm, 1.9 * kSteps.back());
    for (std::size_t n = 0; n < kFineDirections; ++n) {
        if (runOn(at, rays_[n]) + runOn(at, rays_[n + kFineDirections]) > most) {
            return true;
        }
    }
    return false;
}

int VeinField::computed(Place at) const {
    // What differs by noise alone costs no more than the vein itself: no line is left for a clearer one.
    const double unlike = *at.member < 50 ? 1 : std::max(0.0, 1 - likeness(at) / kLikeEnough);
    const int cost = 1 + static_cast<int>(std::lround((kOff - 1) * unlike * unlike));
    const int gapCost = dash_ ? kDashGap : kGap;
    if (cost <= gapCost) {
        return dash_ && runsTooFar(at) ? kBarred : cost;
    }
    int least = cost < kOff && dash_ && runsTooFar(at) ? kOff : cost;
    for (std::size_t n = 0; n < kFineDirections && least > gapCost; ++n) {
        const auto ahead = meets(at, rays_[n]);
        if (!ahead) {
            continue;
        }
        const auto behind = meets(at, rays_[n + kFineDirections]);
        if (behind) {
            const int gap = kSteps[*ahead] + kSteps[*behind];
            least = std::min(least, gap <= kShortGap ? gapCost : gap <= kSteps.back() ? kLongGap : kOff);
        }
    }
    return least;
}

std::optional<int> VeinField::costAt(Cell cell) {
    Tile* tile = tileAt(cell);
    if (tile == nullptr) {
        return std::nullopt;
    }
    const auto column = static_cast<std::size_t>(cell.column % kTile);
    const auto row = static_cast<std::size_t>(cell.row % kTile);
    std::uint8_t& cost = tile->cost[row * kTile + column];
    if (cost == 0) {
        const std::size_t place = (row + kMargin) * kSide + column + kMargin;
        cost = static_cast<std::uint8_t>(computed({&tile->member[place], &tile->near[place]}));
    }
    return cost;
}

void VeinField::bar(const std::vector<Cell>& cells) {
    const int reach = static_cast<int>(std::ceil(widest_)) + 1;
    for (const Cell middle : cells) {
        for (int row = -reach; row <= reach; ++row) {
            for (int column = -reach; column <= reach; ++column) {
                const Cell cell{middle.column + column, middle.row + row};
                if (costAt(cell)) {
                    tileAt(cell)->cost[static_cast<std::size_t>(cell.row % kTile) * kTile +
                                       static_cast<std::size_t>(cell.column % kTile)] = kBarred;
                }
            }
        }
    }
}

double VeinField::memberAt(PicturePoint at) {
    const double column = at.column - 0.5;
    const double row = at.row - 0.5;
    const Cell cell{static_cast<int>(std::floor(column)), static_cast<int>(std::floor(row))};
    const Tile* tile = tileAt(cell);
    if (tile == nullptr) {
        return 0;
    }
    const double right = column - cell.column;
    const double down = row - cell.row;
    const std::uint8_t* corner = &tile->member[static_cast<std::size_t>(cell.row % kTile + kMargin) * kSide +
                                               static_cast<std::size_t>(cell.column % kTile + kMargin)];
    const double upper = corner[0] * (1 - right) + corner[1] * right;
    const double lower = corner[kSide] * (1 - right) + corner[kSide + 1] * right;
    return (upper * (1 - down) + lower * down) / 255;
}

}  // namespace crosstick::terrain
