#pragma once

#include <functional>
#include <vector>

#include "core/sky/bodies.h"

namespace crosstick::sky {

/// An altitude over time.
using Curve = std::function<Degrees(Seconds)>;

/// Where a curve ends or turns. Between two of these it only rises or only falls.
struct Knot {
    Seconds at;
    Degrees altitude;
    bool turns = false;
};

enum class Way { Up, Down };
enum class Kind {
    Sure,
    Grazes,      ///< crosses, and turns within the tolerance of the level
    FallsShort,  ///< turns within the tolerance and does not cross
};
struct Crossing {
    Seconds at;  ///< within 0.01 s; the turn where it falls short
    Kind kind = Kind::Sure;
};

/// Ends and turning points of a smooth curve between two times, found from values every 20 minutes: of two turns that
/// lie nearer than that, both may be missed.
[[nodiscard]] std::vector<Knot> knotsOf(const Curve& curve, Seconds from, Seconds until);
/// Where the curve goes through a level one way, in order of time.
[[nodiscard]] std::vector<Crossing> crossingsOf(const Curve& curve, const std::vector<Knot>& knots, Degrees level,
                                                Way way, Degrees tolerance);

}  // namespace crosstick::sky
