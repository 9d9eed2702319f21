#include "symbols/unit_frame.h"

#include <cmath>
#include <numbers>

namespace crosstick::symbols {
namespace {

using measures::Affiliation;

constexpr double kHostile = 0.72;
constexpr double kNeutral = 0.55;
constexpr double kLobe = 0.36;

/// A square of side 0.72 with a half circle on each side, outer arcs only, clockwise from the upper left notch.
Points quatrefoil() {
    constexpr int kSteps = 16;
    Points outline;
    for (int side = 0; side < 4; ++side) {
        const double facing = -std::numbers::pi / 2 + side * std::numbers::pi / 2;  // up, right, down, left
        const Point middle{kLobe * std::cos(facing), kLobe * std::sin(facing)};
        for (int n = 0; n < kSteps; ++n) {
            const double turn = facing - std::numbers::pi / 2 + std::numbers::pi * n / kSteps;
            outline.push_back(middle + Vector{std::cos(turn), std::sin(turn)} * kLobe);
        }
    }
    return outline;
}

}  // namespace

double UnitFrame::halfWidth(double y) const {
    const double up = std::abs(y);
    switch (affiliation) {
        case Affiliation::Friend:
            return 0.75;
        case Affiliation::Hostile:
            return kHostile - up;
        case Affiliation::Neutral:
            return kNeutral;
        case Affiliation::Unknown:
            break;
    }
    return up <= kLobe ? kLobe + std::sqrt(kLobe * kLobe - up * up)
                       : std::sqrt(std::max(0.0, kLobe * kLobe - (up - kLobe) * (up - kLobe)));
}

UnitFrame unitFrame(Affiliation affiliation) {
    switch (affiliation) {
        case Affiliation::Friend:
            break;
        case Affiliation::Hostile:
            return {
                affiliation, {{0, -kHostile}, {kHostile, 0}, {0, kHostile}, {-kHostile, 0}}, kLobe, kLobe, kHostile};
        case Affiliation::Neutral:
            return {affiliation,
                    {{-kNeutral, -kNeutral}, {kNeutral, -kNeutral}, {kNeutral, kNeutral}, {-kNeutral, kNeutral}},
                    kNeutral,
                    kNeutral,
                    kNeutral};
        case Affiliation::Unknown:
            return {affiliation, quatrefoil(), kLobe, kLobe, 2 * kLobe};
    }
    return {Affiliation::Friend, {{-0.75, -0.5}, {0.75, -0.5}, {0.75, 0.5}, {-0.75, 0.5}}, 0.75, 0.5, 0.5};
}

}  // namespace crosstick::symbols
