#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "core/sheets/pixels.h"
#include "core/terrain/picture.h"

namespace crosstick::terrain {

/// Red, green, blue, each 0 to 255.
using Colour = std::array<double, 3>;
[[nodiscard]] double colourDistance(const Colour& a, const Colour& b);
[[nodiscard]] Colour colourOf(std::uint32_t rgb);

/// A vein: a printed line as the eye follows it, a band of one colour with other colours on both sides. A road with a
/// casing is the vein of its fill; one with a white fill is a white vein between two black ones.
struct Vein {
    PicturePoint centre;      ///< on its middle, beside the place that was looked at
    double turn = 0;          ///< its direction: radians from the columns towards the rows
    Colour ink{};             ///< in its middle
    Colour left{}, right{};   ///< on both sides
    double halfWidth = 1;     ///< pixels
    double likeNothing = 60;  ///< colours farther from the ink than this are something else
    double doubt = 0;         ///< 0 for what is meant without doubt; more where it is farther off, or pale, or uneven
};

/// A patch of a picture round a place.
struct Patch {
    sheets::Pixels pixels;
    int column = 0, row = 0;  ///< of its upper left pixel in the picture
};

/// A hand and an eye are this sure of a place on paper.
inline constexpr PaperMm kSure{0.6};

/// How large things are in a picture's pixels.
struct PenSize {
    double pixelsPerMm = 12;  ///< of paper
    PaperMm hand = kSure;     ///< so far off a line a click may lie where none is nearer
};

/// Veins that pass within a reach of a place, of different colours and widths, the least doubted first; at most six.
/// @param patch  reaches at least kPatchMm beyond the place on all sides, or to the picture's edge
/// @param reach  2.4 mm at most
[[nodiscard]] std::vector<Vein> veinsAt(const Patch& patch, PicturePoint place, PenSize size, PaperMm reach = kSure);
inline constexpr double kPatchMm = 3;

/// How much a colour belongs to a vein, 0 to 255, for every colour in steps of 8.
class Membership {
  public:
    /// @param seen  the same vein as it looks at different places
    explicit Membership(const std::vector<Vein>& seen);
    [[nodiscard]] std::uint8_t of(std::uint32_t rgb) const {
        return table_[((rgb >> 9U) & 0x7c00U) | ((rgb >> 6U) & 0x3e0U) | ((rgb >> 3U) & 0x1fU)];
    }

  private:
    std::vector<std::uint8_t> table_;
};

}  // namespace crosstick::terrain
