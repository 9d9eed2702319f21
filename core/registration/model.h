#pragma once

#include <array>
#include <cstdint>
#include <optional>

#include "core/plan/sheet.h"
#include "core/registration/mark.h"

namespace crosstick::registration {

/// How a picture may lie on the grid, simplest first.
enum class Kind : std::uint8_t {
    Similarity,  ///< turned and scaled: 4 parameters. A scan of sound paper
    Affine,      ///< stretched differently along two axes: 6. A scan of paper that has worked
    Projective,  ///< seen aslant: 8. A photo
    Quadratic    ///< bent, by polynomials of the second degree: 12. Paper that did not lie flat
};
inline constexpr std::array kKinds{Kind::Similarity, Kind::Affine, Kind::Projective, Kind::Quadratic};

[[nodiscard]] int parametersOf(Kind kind);
[[nodiscard]] int fewestMarks(Kind kind);  ///< that determine it: half its parameters

/// What one pixel's step is on the ground near a place, in metres.
struct PixelStep {
    double eastPerColumn = 0, eastPerRow = 0, northPerColumn = 0, northPerRow = 0;
    /// The pixels that make this step on the ground. The step must have an area.
    [[nodiscard]] PixelPoint pixels(Metres east, Metres north) const;
    [[nodiscard]] double metres() const;  ///< the side of a square of the same area
};

/// Numbers brought near to 1, or the squares of metres of northing would eat the digits.
struct Norm {
    PixelPoint middle;
    double pixels = 1;  ///< that count as 1
    geodesy::PlanePoint place;
    double metres = 1;
};

/// From a picture's pixels to the sheet's grid.
class Model {
  public:
    /// @param numbers  of the normed model; those over parametersOf(kind) are not looked at
    Model(Kind kind, const Norm& norm, const std::array<double, 12>& numbers);

    [[nodiscard]] Kind kind() const { return kind_; }
    /// Nothing beyond the horizon of a projective model.
    [[nodiscard]] std::optional<geodesy::PlanePoint> place(PixelPoint at) const;
    /// The pixel of a place. Exact but for the quadratic model, where steps by its slope end within 1e-9 of the marks'
    /// extent; nothing where it has none (beyond a horizon, or past a fold).
    [[nodiscard]] std::optional<PixelPoint> pixel(geodesy::PlanePoint place) const;
    [[nodiscard]] PixelStep stepAt(PixelPoint at) const;
    /// As six numbers, where six tell it all: similarity and affine.
    [[nodiscard]] std::optional<plan::Placement> placement() const;
    [[nodiscard]] const Norm& norm() const { return norm_; }
    [[nodiscard]] const std::array<double, 12>& numbers() const { return numbers_; }

  private:
    Kind kind_;
    Norm norm_;
    std::array<double, 12> numbers_;
};

/// A normed model's value and slopes at a normed pixel.
struct Normed {
    double east = 0, north = 0;
    double eastX = 0, eastY = 0, northX = 0, northY = 0;  ///< by x and y
    double depth = 1;                                     ///< of a projective model: not above 0 beyond its horizon
};
[[nodiscard]] Normed normedAt(Kind kind, const std::array<double, 12>& numbers, double x, double y);

}  // namespace crosstick::registration
