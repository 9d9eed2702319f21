#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/terrain/vein.h"

namespace crosstick::terrain {

/// A place in the planes in which a picture's tile lies, all with the same stride.
struct Place {
    const std::uint8_t* member;  ///< how much the cell belongs to the vein, 0 to 255
    const std::uint8_t* near;    ///< the most of a cell and its eight neighbours
    const std::uint8_t* away;    ///< cells to the nearest ink in `near`, along a row, a column or aslant
};

/// What it costs to go over a cell in search of a vein: 1 along its middle, up to kOff beside it. Where the line is
/// broken (dashes, letters, a line across) the way straight on from end to end costs kDashGap, kGap, or kLongGap.
class VeinCost {
  public:
    static constexpr int kOff = 40, kDashGap = 2, kGap = 5, kLongGap = 9, kBarred = 15;
    static constexpr int kMargin = 54;           ///< how far round a cell it looks
    static constexpr std::uint8_t kIsInk = 180;  ///< a member in `near` from which on `away` is counted

    /// @param stride  of the planes  @param dash  cells that a dashed line's dashes are long: what runs on far beyond
    /// is another line
    VeinCost(const std::vector<Vein>& seen, PenSize size, std::optional<double> dash, int stride);
    /// 1 to kOff.
    [[nodiscard]] int of(Place at) const;

  private:
    static constexpr std::size_t kDirections = 8, kFineDirections = 24, kBends = 3;
    static constexpr int kLongestGap = 35;  ///< cells
    static constexpr int kFlankStep = 3;    ///< cells from one look beside a gap to the next
    using Offsets = std::vector<int>;
    /// Offsets in a plane for one direction of the line.
    struct Probe {
        Offsets inner, left, right;
    };
    struct Ray {
        std::array<int, kLongestGap + 1> along;                    ///< cell by cell
        std::array<Offsets, kLongestGap / kFlankStep + 1> flanks;  ///< beside it
        std::array<Offsets, kBends> onward;  ///< from where a line is met as far as it must run, straight or in a bend
        int left = 0, right = 0;             ///< from there to what must be blank beside that line
    };

    std::optional<double> dash_;
    double longestRun_ = 0;  ///< cells that a dashed line's ink runs on at most
    int stride_;
    std::array<Probe, kDirections> probes_;
    std::array<Ray, 2 * kFineDirections> rays_;
    std::array<PicturePoint, 2 * kFineDirections> strides_;  ///< of kStride cells in a ray's direction

    void prepareProbes(double thinnest, double widest, PenSize size);
    void prepareRays(double widest);
    [[nodiscard]] double likeness(Place at) const;
    [[nodiscard]] int acrossGap(Place at, int gapCost) const;
    [[nodiscard]] bool runsTooFar(Place at) const;
    [[nodiscard]] int runOn(Place at, std::size_t direction) const;
    [[nodiscard]] std::optional<int> meets(Place at, const Ray& ray, int farthest) const;
    [[nodiscard]] bool isClear(Place at, const Ray& ray, int length) const;
};

}  // namespace crosstick::terrain
