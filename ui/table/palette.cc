#include "ui/table/palette.h"

#include <array>
#include <cmath>

namespace crosstick::table {
namespace {

constexpr QRgb kNightGround = 0xff0c0101;
constexpr QRgb kNightLetters = 0xffd8433a;

struct Knee {
    double tone, light;
};
// How much of the letters' red a tone gets: water tints stay near the ground, contours keep their 2 to 1.
// A contour is seldom as dark on the screen as its ink: most of a pixel is the paper beside it. So tones rise steeply
// where tints end.
constexpr std::array kKnees{Knee{0, 0},       Knee{0.1, 0.07},  Knee{0.16, 0.18}, Knee{0.22, 0.45},
                            Knee{0.35, 0.58}, Knee{0.49, 0.66}, Knee{0.9, 1},     Knee{1, 1}};

double lightOf(double tone) {
    for (std::size_t n = 1; n < kKnees.size(); ++n) {
        if (tone <= kKnees[n].tone) {
            const double share = (tone - kKnees[n - 1].tone) / (kKnees[n].tone - kKnees[n - 1].tone);
            return kKnees[n - 1].light + share * (kKnees[n].light - kKnees[n - 1].light);
        }
    }
    return 1;
}

}  // namespace

Palette palette(Theme theme) {
    if (theme == Theme::Night) {
        return {QColor(0xff050000), QColor(kNightGround), QColor(0xff170202), QColor(0xff070000), QColor(0xfff23c2e),
                QColor(0xfff23c2e), QColor(0xffb52a1e),   QColor(0xff5a120c), QColor(0xffff5a4a), press::nightInks()};
    }
    return {QColor(0xffa7b1a9), QColor(Qt::white),  QColor(0xffedf1eb), QColor(0xfffbfcfa), QColor(0xff17201c),
            QColor(0xff46534c), QColor(0xff6b7b72), QColor(0xff8a949c), QColor(0xff6a1b8c), press::dayInks()};
}

QRgb byNight(QRgb day) {
    const double luminance = (0.299 * qRed(day) + 0.587 * qGreen(day) + 0.114 * qBlue(day)) / 255;
    const double light = lightOf(1 - luminance);
    const auto mix = [&](int from, int to) { return static_cast<int>(std::lround(from + light * (to - from))); };
    return qRgb(mix(qRed(kNightGround), qRed(kNightLetters)), mix(qGreen(kNightGround), qGreen(kNightLetters)),
                mix(qBlue(kNightGround), qBlue(kNightLetters)));
}

}  // namespace crosstick::table
