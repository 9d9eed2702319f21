#pragma once

#include <cmath>
#include <vector>

namespace crosstick::drawing {

/// from, from + by, ... up to and including `to`; each is computed from its number, so that rounding does not add up
/// and the last one is never lost.
/// @param by  positive
[[nodiscard]] inline std::vector<double> steps(double from, double to, double by) {
    const int last = static_cast<int>(std::floor((to - from) / by + 1e-6));
    std::vector<double> values;
    values.reserve(last < 0 ? 0 : static_cast<std::size_t>(last) + 1);
    for (int n = 0; n <= last; ++n) {
        values.push_back(from + n * by);
    }
    return values;
}

}  // namespace crosstick::drawing
