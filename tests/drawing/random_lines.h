#pragma once

#include <cstdint>
#include <random>

#include "core/drawing/path.h"

namespace crosstick::drawing::testing {

/// Seeds that every law is tried with; a failing one is printed by SCOPED_TRACE.
inline constexpr std::uint64_t kSeeds = 200;

/// Lines and numbers drawn at random; the same seed gives the same ones.
class RandomLines {
  public:
    explicit RandomLines(std::uint64_t seed) : chance_(seed) {}

    [[nodiscard]] double between(double low, double high);
    [[nodiscard]] int below(int limit);  ///< 0 to limit - 1
    [[nodiscard]] Point point(double size);
    /// Two to nine points, steps of 1 to 25 mm in any direction, inside nothing in particular.
    [[nodiscard]] Points line();
    /// The same, but every turn stays within an angle (radians).
    [[nodiscard]] Points bending(double mostTurn);
    /// A star-shaped ring of 3 to 10 points round a middle: it never crosses itself.
    [[nodiscard]] Points ring();

  private:
    std::mt19937_64 chance_;
};

/// How far a point lies from a line, by trying every segment.
[[nodiscard]] double distance(Point p, const Points& line);

}  // namespace crosstick::drawing::testing
