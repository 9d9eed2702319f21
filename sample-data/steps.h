#pragma once

#include <cmath>
#include <vector>

namespace crosstick::demo {

/// from, from + step, ... as far as `to`, which counts where a step meets it within a millionth of a step.
/// @param step  positive
[[nodiscard]] inline std::vector<double> evenSteps(double from, double to, double step) {
    std::vector<double> values;
    const int last = static_cast<int>(std::floor((to - from) / step + 1e-6));
    for (int n = 0; n <= last; ++n) {
        values.push_back(from + n * step);
    }
    return values;
}

}  // namespace crosstick::demo
