#pragma once

#include <cmath>
#include <compare>
#include <numbers>

namespace crosstick {

/// A number with a unit that the compiler knows. Quantities of one unit add and compare; a number scales them; two of
/// one unit divide to a plain ratio. Nothing converts by itself: conversions are the named functions below.
template <class Tag>
class Quantity {
  public:
    constexpr Quantity() = default;
    explicit constexpr Quantity(double value) : value_(value) {}
    [[nodiscard]] constexpr double value() const { return value_; }

    constexpr Quantity& operator+=(Quantity other) {
        value_ += other.value_;
        return *this;
    }
    constexpr Quantity& operator-=(Quantity other) {
        value_ -= other.value_;
        return *this;
    }
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value_ + b.value_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value_ - b.value_); }
    friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.value_); }
    friend constexpr Quantity operator*(Quantity a, double k) { return Quantity(a.value_ * k); }
    friend constexpr Quantity operator*(double k, Quantity a) { return Quantity(a.value_ * k); }
    friend constexpr Quantity operator/(Quantity a, double k) { return Quantity(a.value_ / k); }
    friend constexpr double operator/(Quantity a, Quantity b) { return a.value_ / b.value_; }
    friend constexpr auto operator<=>(Quantity, Quantity) = default;  // NOLINT(modernize-use-nullptr): none here

  private:
    double value_ = 0;
};

using Metres = Quantity<struct MetresTag>;
using Degrees = Quantity<struct DegreesTag>;  ///< 360 to the circle
using Radians = Quantity<struct RadiansTag>;
using Mils = Quantity<struct MilsTag>;        ///< 6400 to the circle
using PaperMm = Quantity<struct PaperMmTag>;  ///< millimetres on paper or film
using Minutes = Quantity<struct MinutesTag>;  ///< time on the move
using KilometresPerHour = Quantity<struct KmhTag>;
using Nanotesla = Quantity<struct NanoteslaTag>;

template <class Tag>
[[nodiscard]] constexpr Quantity<Tag> abs(Quantity<Tag> q) {
    return q.value() < 0 ? -q : q;
}
template <class Tag>
[[nodiscard]] inline bool isFinite(Quantity<Tag> q) {
    return std::isfinite(q.value());
}

[[nodiscard]] constexpr Radians radians(Degrees a) {
    return Radians(a.value() * std::numbers::pi / 180);
}
[[nodiscard]] constexpr Degrees degrees(Radians a) {
    return Degrees(a.value() * 180 / std::numbers::pi);
}
/// Exact factor 160/9 (17.78 and 17.7 of older texts are roundings).
[[nodiscard]] constexpr Mils mils(Degrees a) {
    return Mils(a.value() * 160 / 9);
}
[[nodiscard]] constexpr Degrees degrees(Mils a) {
    return Degrees(a.value() * 9 / 160);
}

/// The same direction in [0, 360); never -0. Not finite stays as it is.
[[nodiscard]] inline Degrees fullCircle(Degrees a) {
    double turned = std::fmod(a.value(), 360.0);
    if (turned < 0) {
        turned += 360.0;
    }
    return Degrees(turned >= 360.0 || turned == 0 ? 0.0 : turned);
}

/// A map's scale, as the number under the 1: 25000 for 1:25,000. Positive.
struct Scale {
    double denominator = 25000;
    friend constexpr auto operator<=>(Scale, Scale) = default;
};
[[nodiscard]] constexpr PaperMm onPaper(Metres ground, Scale scale) {
    return PaperMm(ground.value() * 1000 / scale.denominator);
}
[[nodiscard]] constexpr Metres onGround(PaperMm paper, Scale scale) {
    return Metres(paper.value() * scale.denominator / 1000);
}

}  // namespace crosstick
