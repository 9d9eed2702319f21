#pragma once

#include <array>

#include "core/terrain/follow.h"
#include "tests/terrain/printed_paper.h"

namespace crosstick::testing {

/// A stretch of a known line, and clicks at its ends by an unsteady hand.
struct Walk {
    const KnownLine* known = nullptr;
    PaperLine truth;
    std::array<terrain::PicturePoint, 3> clicks;  ///< start, half way, end
    PaperPoint slip;                              ///< of the hand at the click between
};

/// Random walks over a made sheet: along any of its lines, of which most are contours.
class Walks {
  public:
    Walks(const MadeSheet& sheet, std::uint32_t seed);
    /// One that keeps away from the sheet's edge: 10 mm to 120 mm (3 km at 1:25,000), on a ring less than a third of
    /// it.
    Walk next();

  private:
    const MadeSheet& sheet_;
    std::mt19937 random_;
    std::vector<std::string> styles_;

    double any(double from, double to);
    terrain::PicturePoint clicked(PaperPoint at);
};

/// How a found line lies to the true one.
struct Grade {
    double meanMm = 0;
    bool isRight = false;  ///< nine tenths of the one lie on the other
};
[[nodiscard]] Grade gradeOf(const std::vector<terrain::PicturePoint>& found, const Walk& walk, double pixelsPerMm);

/// The clicks of a walk: its two ends, or one more between: blindly half way, or where a person puts it who looks at
/// what the two found: on the true line, in the middle of the longest stretch that was missed (half way where nothing
/// was found, or nothing missed).
enum class Clicks { Two, HalfWay, WhereItStrays };
/// What is found from click to click, as the tool for following looks for it: what was found and strays is pulled over,
/// so that both halves are like it; where nothing was found, the nearer half is clicked first. Nothing where one
/// segment fails.
[[nodiscard]] std::vector<terrain::PicturePoint> foundAlong(const terrain::Picture& picture, terrain::PenSize size,
                                                            const Walk& walk, Clicks clicks);

}  // namespace crosstick::testing
