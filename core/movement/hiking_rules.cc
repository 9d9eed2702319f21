#include "core/movement/hiking_rules.h"

#include <cmath>

namespace crosstick::movement {

Minutes naismith(Metres ground, Metres rise) {
    constexpr double kLevel = 60.0 / 5000;  // minutes a metre
    constexpr double kClimb = 60.0 / 600;
    constexpr double kDescent = 10.0 / 300;
    constexpr Degrees kGentle{5};
    constexpr Degrees kSteep{12};
    const double level = ground.value() * kLevel;
    if (rise.value() >= 0) {
        return Minutes(level + rise.value() * kClimb);
    }
    const Metres down = -rise;
    const Degrees angle = degrees(Radians(std::atan2(down.value(), ground.value())));
    const double correction = angle < kGentle ? 0 : angle <= kSteep ? -kDescent : kDescent;
    return Minutes(level + down.value() * correction);
}

KilometresPerHour toblerRate(double slope) {
    return KilometresPerHour(6 * std::exp(-3.5 * std::abs(slope + 0.05)));
}

Minutes tobler(Metres ground, Metres rise) {
    constexpr double kMetresAMinute = 1000.0 / 60;
    return ground.value() > 0 ? Minutes(ground.value() / (toblerRate(rise / ground).value() * kMetresAMinute))
                              : Minutes(0);
}

}  // namespace crosstick::movement
