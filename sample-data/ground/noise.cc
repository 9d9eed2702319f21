#include "sample-data/ground/noise.h"

#include <array>
#include <numbers>

namespace crosstick::demo {
namespace {

/// The finisher of SplitMix64 (Steele, Lea, Flood 2014).
std::uint64_t mixed(std::uint64_t x) {
    x += 0x9E3779B97F4A7C15U;
    x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9U;
    x = (x ^ (x >> 27)) * 0x94D049BB133111EBU;
    return x ^ (x >> 31);
}

double eased(double t) {
    return t * t * t * (t * (t * 6 - 15) + 10);
}

/// Gradient noise, about -0.7 to 0.7.
double wave(std::uint64_t seed, double x, double y) {
    const double left = std::floor(x);
    const double below = std::floor(y);
    const double u = x - left;
    const double v = y - below;
    const auto corner = [&](int dx, int dy) {
        const double turn = chance(seed, static_cast<std::int64_t>(left) + dx, static_cast<std::int64_t>(below) + dy);
        const double angle = 2 * std::numbers::pi * turn;
        return std::cos(angle) * (u - dx) + std::sin(angle) * (v - dy);
    };
    const double low = corner(0, 0) + (corner(1, 0) - corner(0, 0)) * eased(u);
    const double high = corner(0, 1) + (corner(1, 1) - corner(0, 1)) * eased(u);
    return low + (high - low) * eased(v);
}

}  // namespace

double chance(std::uint64_t seed, std::int64_t a, std::int64_t b) {
    const std::uint64_t bits =
        mixed(mixed(seed ^ mixed(static_cast<std::uint64_t>(a))) ^ static_cast<std::uint64_t>(b));
    return static_cast<double>(bits >> 11) * 0x1.0p-53;
}

double roughness(std::uint64_t seed, Spot at) {
    struct Size {
        double wavelength, height;
    };
    constexpr std::array kSizes{Size{700, 9}, Size{350, 5}, Size{175, 2.5}};
    double sum = 0;
    for (std::size_t i = 0; i < kSizes.size(); ++i) {
        const double scale = kSizes[i].wavelength / 2;  // two lattice steps make one wave
        sum += kSizes[i].height / 0.7 * wave(seed + i, at.east / scale, at.north / scale);
    }
    return sum;
}

}  // namespace crosstick::demo
