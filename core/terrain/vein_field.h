#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "core/terrain/vein_cost.h"

namespace crosstick::terrain {

/// A cell of the working picture: one of its pixels.
struct Cell {
    int column = 0, row = 0;
    friend constexpr bool operator==(Cell, Cell) = default;
};

/// What it costs to go over a picture in search of one vein, as VeinCost has it. Read and computed in tiles as the
/// search comes to them. One thread at a time.
class VeinField {
  public:
    static constexpr int kTile = 256;
    static constexpr double kMostBlankMm = 5;  ///< the longest break in a line
    static constexpr int kMostTiles = 110;     ///< 7 million cells: some 95 MB with what the search notes

    /// @param reduction  pixels of the picture to a cell of the field, a power of two
    /// @param dash  cells that a dashed line's dashes are long: what runs on far beyond is another line
    VeinField(const Picture& picture, int reduction, const std::vector<Vein>& seen, PenSize size,
              std::optional<double> dash = std::nullopt);

    [[nodiscard]] int columns() const { return columns_; }
    [[nodiscard]] int rows() const { return rows_; }
    [[nodiscard]] PenSize size() const { return size_; }
    /// 1 to VeinCost::kOff; nothing outside the picture, in the midst of blank paper where no way over a break of
    /// kMostBlankMm leads, and where the picture cannot be read: then fault() is set.
    [[nodiscard]] std::optional<int> costAt(Cell cell) {
        const std::uint8_t known =
            isInside(cell) && tiles_[tileOf(cell)] ? tiles_[tileOf(cell)]->cost[inTile(cell)] : 0;
        return known != 0 ? told(known) : computedAt(cell);
    }
    /// Makes it dear to go over cells and those close by: what was found there is another line.
    void bar(const std::vector<Cell>& cells);
    /// How much the colour belongs to the vein, 0 to 1, between the cells' middles too; 0 outside.
    [[nodiscard]] double memberAt(PicturePoint at);
    [[nodiscard]] double halfWidth() const { return widest_; }
    [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }

  private:
    static constexpr std::uint8_t kNoWay = 255;
    static constexpr int kMargin = VeinCost::kMargin;
    static constexpr int kSide = kTile + 2 * kMargin;
    struct Tile {
        std::vector<std::uint8_t> member, near, away;  ///< kSide by kSide: Place's
        std::vector<std::uint8_t> cost;                ///< kTile by kTile; 0 where not computed yet
    };

    const Picture& picture_;
    int reduction_;
    int columns_, rows_, tilesAcross_;
    PenSize size_;
    Membership membership_;
    double widest_;
    std::uint8_t farthest_;  ///< cells from the line's ink to where no way leads
    VeinCost cost_;
    std::vector<std::unique_ptr<Tile>> tiles_;
    int loaded_ = 0;
    std::optional<Error> fault_;

    [[nodiscard]] bool isInside(Cell cell) const {
        return cell.column >= 0 && cell.row >= 0 && cell.column < columns_ && cell.row < rows_;
    }
    [[nodiscard]] std::size_t tileOf(Cell cell) const {
        return static_cast<std::size_t>(cell.row) / kTile * static_cast<std::size_t>(tilesAcross_) +
               static_cast<std::size_t>(cell.column) / kTile;
    }
    [[nodiscard]] static std::size_t inTile(Cell cell) {
        return static_cast<std::size_t>(cell.row) % kTile * kTile + static_cast<std::size_t>(cell.column) % kTile;
    }
    [[nodiscard]] static std::size_t inPlanes(Cell cell) {
        const int place = (cell.row % kTile + kMargin) * kSide + cell.column % kTile + kMargin;
        return static_cast<std::size_t>(place);
    }
    [[nodiscard]] static std::optional<int> told(std::uint8_t cost) {
        return cost == kNoWay ? std::nullopt : std::optional<int>(cost);
    }
    [[nodiscard]] Tile* tileAt(Cell cell);
    [[nodiscard]] std::unique_ptr<Tile> load(int tileColumn, int tileRow);
    [[nodiscard]] std::optional<int> computedAt(Cell cell);
};

}  // namespace crosstick::terrain
