#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "core/terrain/vein.h"

namespace crosstick::terrain {

/// A cell of the working picture: one of its pixels.
struct Cell {
    int column = 0, row = 0;
    friend constexpr bool operator==(Cell, Cell) = default;
};

/// What it costs to go over a picture in search of one vein: 1 along its middle, up to kOff beside it. Where the line
/// is broken (dashes, letters, a line across) the way straight on from end to end costs kDashGap, kGap, or kLongGap.
/// Read and computed in tiles as the search comes to them. One thread at a time.
class VeinField {
  public:
    static constexpr int kOff = 40, kDashGap = 2, kGap = 5, kLongGap = 9;
    static constexpr int kTile = 256;
    static constexpr int kMostTiles = 110;  ///< 7 million cells: some 80 MB with what the search notes

    /// @param reduction  pixels of the picture to a cell of the field, a power of two
    /// @param dash  cells that a dashed line's dashes are long: what runs on far beyond is another line
    VeinField(const Picture& picture, int reduction, const std::vector<Vein>& seen, PenSize size,
              std::optional<double> dash = std::nullopt);

    [[nodiscard]] int columns() const { return columns_; }
    [[nodiscard]] int rows() const { return rows_; }
    [[nodiscard]] PenSize size() const { return size_; }
    /// 1 to kOff; nothing outside the picture, and where it cannot be read: then fault() is set.
    [[nodiscard]] std::optional<int> costAt(Cell cell);
    /// Makes it dear to go over cells and those close by: what was found there is another line.
    void bar(const std::vector<Cell>& cells);
    /// How much the colour belongs to the vein, 0 to 1, between the cells' middles too; 0 outside.
    [[nodiscard]] double memberAt(PicturePoint at);
    [[nodiscard]] double halfWidth() const { return widest_; }
    [[nodiscard]] const std::optional<Error>& fault() const { return fault_; }

  private:
    static constexpr int kMargin = 54;  // how far round a cell its cost looks
    static constexpr int kSide = kTile + 2 * kMargin;
    static constexpr int kDirections = 8, kFineDirections = 24;
    /// A place in a tile's planes.
    struct Place {
        const std::uint8_t* member;
        const std::uint8_t* near;
    };
    struct Tile {
        std::vector<std::uint8_t> member;  ///< kSide by kSide
        std::vector<std::uint8_t> near;    ///< the most of a cell and its eight neighbours
        std::vector<std::uint8_t> cost;    ///< kTile by kTile; 0 where not computed yet
    };
    /// Offsets in a tile's member plane for one direction of the line.
    struct Probe {
        std::vector<int> inner, left, right;
    };
    struct Ray {
        std::vector<int> ahead;                ///< at the steps of kSteps
        std::vector<int> onward;               ///< from such a step on, cell by cell, as far as the line must run
        std::vector<int> left, right;          ///< beside the line that is met
        std::vector<int> pastLeft, pastRight;  ///< where that line would be if it came past
    };

    const Picture& picture_;
    int reduction_;
    int columns_, rows_, tilesAcross_;
    PenSize size_;
    Membership membership_;
    double thinnest_, widest_;
    std::optional<double> dash_;
    std::array<Probe, kDirections> probes_;
    std::array<Ray, 2 * kFineDirections> rays_;
    std::vector<std::unique_ptr<Tile>> tiles_;
    int loaded_ = 0;
    std::optional<Error> fault_;

    [[nodiscard]] Tile* tileAt(Cell cell);
    [[nodiscard]] std::unique_ptr<Tile> load(int tileColumn, int tileRow);
    void prepareProbes();
    void prepareRays();
    [[nodiscard]] int computed(Place at) const;
    [[nodiscard]] double likeness(Place at) const;
    [[nodiscard]] bool runsTooFar(Place at) const;
    [[nodiscard]] int runOn(Place at, const Ray& ray) const;
    [[nodiscard]] std::optional<std::size_t> meets(Place at, const Ray& ray) const;
};

}  // namespace crosstick::terrain
