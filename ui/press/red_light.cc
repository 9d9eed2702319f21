#include "ui/press/red_light.h"

#include <algorithm>
#include <cmath>

namespace crosstick::press {
namespace {

constexpr QRgb kLitPaper = 0xffd8281c;

/// sRGB to linear light (IEC 61966-2-1).
double linear(double component) {
    return component <= 0.04045 ? component / 12.92 : std::pow((component + 0.055) / 1.055, 2.4);
}
double encoded(double light) {
    return light <= 0.0031308 ? light * 12.92 : 1.055 * std::pow(light, 1 / 2.4) - 0.055;
}

}  // namespace

double shareUnderRedLight(const QColor& ink) {
    return linear(static_cast<double>(ink.redF()));
}

Inks underRedLight(const Inks& inks) {
    const QColor paper = QColor::fromRgb(kLitPaper);
    Inks seen{{}, paper};
    std::transform(inks.pens.begin(), inks.pens.end(), seen.pens.begin(), [&](const QColor& ink) {
        const double share = shareUnderRedLight(ink);
        const auto dimmed = [share](float component) {
            return static_cast<float>(encoded(linear(static_cast<double>(component)) * share));
        };
        return QColor::fromRgbF(dimmed(paper.redF()), dimmed(paper.greenF()), dimmed(paper.blueF()));
    });
    return seen;
}

}  // namespace crosstick::press
