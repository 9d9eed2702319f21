#include <algorithm>
#include <cmath>

#include "core/terrain/vein.h"

namespace crosstick::terrain {
namespace {

constexpr double kThin = 1.75;  // half-width in pixels: a thinner line is nowhere its pure ink

constexpr double kThickest = 1.5;  // shares of the ink as it was seen: so much stronger the same ink may be elsewhere

double ramp(double x, double from, double to) {
    return std::clamp((x - from) / (to - from), 0.0, 1.0);
}

/// A thin line is ink laid more or less thickly over what lies beside it: its colours lie on the way from there to the
/// ink and a little beyond, whatever ground it passes over. Far beyond lies black: to a pale brown it is twice as
/// brown.
double asThinInk(const Colour& colour, const Colour& ink, const Colour& ground) {
    double along = 0;
    double axis = 0;
    double square = 0;
    for (std::size_t n = 0; n < 3; ++n) {
        const double a = ink[n] - ground[n];
        const double c = colour[n] - ground[n];
        along += c * a;
        axis += a * a;
        square += c * c;
    }
    if (axis <= 0 || along <= 0) {
        return 0;
    }
    const double share = along / axis;
    const double off = std::sqrt(std::max(0.0, square - along * share)) / (share * std::sqrt(axis));
    return ramp(share, 0.35, 0.8) * (1 - ramp(off, 0.1, 0.3)) * (1 - ramp(share, kThickest, kThickest + 0.3));
}

double belonging(const Colour& colour, const Vein& vein) {
    if (vein.halfWidth < kThin) {
        return std::max(asThinInk(colour, vein.ink, vein.left), asThinInk(colour, vein.ink, vein.right));
    }
    return 1 - ramp(colourDistance(colour, vein.ink) / vein.likeNothing, 0.3, 0.65);
}

}  // namespace

double colourDistance(const Colour& a, const Colour& b) {
    double square = 0;
    for (std::size_t n = 0; n < 3; ++n) {
        square += (a[n] - b[n]) * (a[n] - b[n]);
    }
    return std::sqrt(square);  // std::hypot guards against overflow that colours never reach, at thrice the time
}

Colour colourOf(std::uint32_t rgb) {
    return {static_cast<double>((rgb >> 16U) & 255U), static_cast<double>((rgb >> 8U) & 255U),
            static_cast<double>(rgb & 255U)};
}

Membership::Membership(const std::vector<Vein>& seen) : table_(std::size_t{1} << 15U) {
    for (std::size_t n = 0; n < table_.size(); ++n) {
        const auto step = [n](unsigned shift) { return static_cast<double>((n >> shift) & 31U) * 8 + 4; };
        const Colour colour{step(10), step(5), step(0)};
        double most = 0;
        for (const Vein& vein : seen) {
            most = std::max(most, belonging(colour, vein));
        }
        table_[n] = static_cast<std::uint8_t>(std::lround(most * 255));
    }
}

}  // namespace crosstick::terrain
