#include "core/terrain/vein_field.h"

#include <algorithm>
#include <cmath>

#include "core/terrain/faults.h"

namespace crosstick::terrain {
namespace {

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

/// Cells to the nearest ink, over the eight neighbours, no more than `most`.
std::vector<std::uint8_t> awayFromInk(const std::vector<std::uint8_t>& near, std::size_t side, std::uint8_t most) {
    std::vector<std::uint8_t> away(near.size());
    std::transform(near.begin(), near.end(), away.begin(),
                   [most](std::uint8_t member) { return member >= VeinCost::kIsInk ? std::uint8_t{0} : most; });
    const auto orBeside = [&](std::size_t n, std::size_t a, std::size_t b, std::size_t c, std::size_t d) {
        const std::uint8_t least = std::min(std::min(away[a], away[b]), std::min(away[c], away[d]));
        away[n] = std::min(away[n], static_cast<std::uint8_t>(least + 1));
    };
    for (std::size_t n = side + 1; n < away.size(); ++n) {
        orBeside(n, n - side - 1, n - side, n - side + 1, n - 1);
    }
    for (std::size_t n = away.size() - side - 1; n-- > 0;) {
        orBeside(n, n + side + 1, n + side, n + side - 1, n + 1);
    }
    return away;
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
      widest_(widestOf(seen)),
      farthest_(static_cast<std::uint8_t>(std::min<double>(kMargin, kMostBlankMm / 2 * size.pixelsPerMm))),
      cost_(seen, size, dash, kSide),
      tiles_(static_cast<std::size_t>(tilesAcross_) * static_cast<std::size_t>(roundedUp(rows_, kTile))) {}

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
    tile->away = awayFromInk(tile->near, kSide, farthest_);
    tile->cost.resize(static_cast<std::size_t>(kTile) * kTile);
    return tile;
}

VeinField::Tile* VeinField::tileAt(Cell cell) {
    if (!isInside(cell) || fault_) {
        return nullptr;
    }
    auto& tile = tiles_[tileOf(cell)];
    if (!tile) {
        if (++loaded_ > kMostTiles) {
            fault_ = Error{kTooFar, {}};
            return nullptr;
        }
        tile = load(cell.column / kTile, cell.row / kTile);
    }
    return tile.get();
}

std::optional<int> VeinField::computedAt(Cell cell) {
    Tile* tile = tileAt(cell);
    if (tile == nullptr) {
        return std::nullopt;
    }
    const std::size_t at = inPlanes(cell);
    std::uint8_t& cost = tile->cost[inTile(cell)];
    cost = tile->away[at] >= farthest_
               ? kNoWay
               : static_cast<std::uint8_t>(cost_.of({&tile->member[at], &tile->near[at], &tile->away[at]}));
    return told(cost);
}

void VeinField::bar(const std::vector<Cell>& cells) {
    const int reach = static_cast<int>(std::ceil(widest_)) + 1;
    for (const Cell middle : cells) {
        for (int row = -reach; row <= reach; ++row) {
            for (int column = -reach; column <= reach; ++column) {
                const Cell cell{middle.column + column, middle.row + row};
                if (const auto cost = costAt(cell)) {
                    tileAt(cell)->cost[inTile(cell)] =
                        static_cast<std::uint8_t>(std::max<int>(*cost, VeinCost::kBarred));
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
    const std::uint8_t* corner = &tile->member[inPlanes(cell)];
    const double upper = corner[0] * (1 - right) + corner[1] * right;
    const double lower = corner[kSide] * (1 - right) + corner[kSide + 1] * right;
    return (upper * (1 - down) + lower * down) / 255;
}

}  // namespace crosstick::terrain
