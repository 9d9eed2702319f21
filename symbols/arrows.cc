#include "symbols/arrows.h"

#include <cmath>
#include <numbers>

namespace crosstick::symbols {
namespace {

constexpr double kOpenHalf = std::numbers::pi / 6;
constexpr double kFilledLength = 2.4;
constexpr double kFilledHalfBase = 0.875;  // 2.4 tan 20
constexpr double kOuterArm = 5.0;
constexpr double kThick = 1.5;

/// An arm's direction back from the tip.
Vector arm(Vector u, double angle) {
    const Vector back = u * -1;
    return {back.x * std::cos(angle) - back.y * std::sin(angle), back.x * std::sin(angle) + back.y * std::cos(angle)};
}

}  // namespace

ShaftEnd openHead(Pencil& pencil, Point tip, Vector u, double arms) {
    const double back = pencil.gauge().pen / 2 / std::sin(kOpenHalf);
    const Point vertex = tip - u * back;
    pencil.line({vertex + arm(u, kOpenHalf) * arms, vertex, vertex + arm(u, -kOpenHalf) * arms});
    return {vertex};
}

// Both Vs are parallel: the inner vertex lies the thickness divided by the sine of the half angle behind the outer.
ShaftEnd outlinedHead(Pencil& pencil, Point tip, Vector u) {
    const double half = pencil.gauge().pen / 2;
    const Point outer = tip - u * (half / std::sin(kOpenHalf));
    const Point inner = outer - u * (kThick / std::sin(kOpenHalf));
    const Vector left = arm(u, kOpenHalf);
    const Vector right = arm(u, -kOpenHalf);
    const double innerArm = kOuterArm - kThick / std::tan(kOpenHalf);
    pencil.lines({{{outer, outer + left * kOuterArm, inner + left * innerArm, inner, inner + right * innerArm,
                    outer + right * kOuterArm},
                   true}},
                 pencil.gauge().pen);
    return {inner};
}

ShaftEnd filledHead(Pencil& pencil, Point tip, Vector u) {
    const Vector across = drawing::leftOf(u) * kFilledHalfBase;
    const Point base = tip - u * kFilledLength;
    pencil.fill({tip, base + across, base - across});
    return {tip - u * (0.8 * kFilledLength)};
}

}  // namespace crosstick::symbols
