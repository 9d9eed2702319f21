#include "symbols/arrows.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace crosstick::symbols {
namespace {

constexpr double kOpenHalf = std::numbers::pi / 6;
constexpr double kFilledLength = 2.4;
constexpr double kFilledHalfBase = 0.875;  // 2.4 tan 20
constexpr double kOuterArm = 5.0;
constexpr double kThick = 1.5;
constexpr double kLeastHead = 1.6;

/// An arm's direction back from the tip.
Vector arm(Vector u, double angle) {
    const Vector back = u * -1;
    return {back.x * std::cos(angle) - back.y * std::sin(angle), back.x * std::sin(angle) + back.y * std::cos(angle)};
}

}  // namespace

ShaftEnd openHead(Pencil& pencil, Point tip, Vector u, double arms) {
    const double back = pencil.halfInk() / std::sin(kOpenHalf);
    const Point vertex = tip - u * back;
    pencil.line({vertex + arm(u, kOpenHalf) * arms, vertex, vertex + arm(u, -kOpenHalf) * arms});
    // Both strokes of a doubled shaft end on the inner stroke of the V.
    const double half = pencil.manner().doubled ? kDoubleApart / 2 : 0;
    return {vertex - u * (half / std::sin(kOpenHalf) + half / std::tan(kOpenHalf))};
}

// Both Vs are parallel: the inner vertex lies the thickness divided by the sine of the half angle behind the outer.
ShaftEnd outlinedHead(Pencil& pencil, Point tip, Vector u, double line) {
    const double whole = kOuterArm * std::cos(kOpenHalf) + kThick * std::sin(kOpenHalf);
    const double k = std::clamp(line / 1.5 / whole, kLeastHead / whole, 1.0);
    const Point outer = tip - u * (pencil.halfPen() / std::sin(kOpenHalf));
    const Point inner = outer - u * (k * kThick / std::sin(kOpenHalf));
    const Vector left = arm(u, kOpenHalf);
    const Vector right = arm(u, -kOpenHalf);
    const double outerArm = k * kOuterArm;
    const double innerArm = k * (kOuterArm - kThick / std::tan(kOpenHalf));
    // One whole contour, whoever's it is: its arms leave no room for a second one, and dashes of two edges so near each
    // other would run into a blot. The shaft says the rest, both its strokes ending on the inner V.
    pencil.single().lines({{{outer, outer + left * outerArm, inner + left * innerArm, inner, inner + right * innerArm,
                             outer + right * outerArm},
                            true}},
                          2 * pencil.halfPen());
    return {inner - u * (pencil.toStroke() / std::tan(kOpenHalf))};
}

ShaftEnd filledHead(Pencil& pencil, Point tip, Vector u) {
    return filledHead(pencil, tip, u, 1.5 * kFilledLength);
}

ShaftEnd filledHead(Pencil& pencil, Point tip, Vector u, double line) {
    const double k = std::clamp(line / 1.5, kLeastHead, kFilledLength) / kFilledLength;
    const Vector across = drawing::leftOf(u) * (k * kFilledHalfBase);
    const Point base = tip - u * (k * kFilledLength);
    pencil.fill({tip, base + across, base - across});
    return {tip - u * (0.8 * k * kFilledLength)};
}

}  // namespace crosstick::symbols
