// What a red lamp leaves of an ink. Figures: trade.md 11 [calc], the linear red component of sRGB.
#include "ui/press/red_light.h"

#include <gtest/gtest.h>

namespace crosstick::press {
namespace {

TEST(RedLight, LeavesOfAnInkItsLinearRed) {
    EXPECT_NEAR(shareUnderRedLight(QColor(255, 0, 0)), 1.00, 0.005);
    EXPECT_NEAR(shareUnderRedLight(QColor(255, 165, 0)), 1.00, 0.005);
    EXPECT_NEAR(shareUnderRedLight(QColor(255, 0, 255)), 1.00, 0.005);
    EXPECT_NEAR(shareUnderRedLight(QColor(150, 75, 0)), 0.30, 0.005);
    EXPECT_NEAR(shareUnderRedLight(QColor(0, 128, 0)), 0.00, 0.005);
    EXPECT_NEAR(shareUnderRedLight(QColor(0, 0, 0)), 0.00, 0.005);
}

// Our own inks are chosen so that none is lost: the enemy's red is the faintest.
TEST(RedLight, LosesNoneOfOurInks) {
    for (const Inks& inks : {paperInks(), onePenInks()}) {
        for (const QColor& pen : inks.pens) {
            EXPECT_LE(shareUnderRedLight(pen), kLostUnderRedLight) << pen.name().toStdString();
        }
    }
    EXPECT_GT(shareUnderRedLight(paperInks().of(drawing::Ink::Red)), kFaintUnderRedLight);
}

TEST(RedLight, ShowsDarkInksDarkOnLitPaper) {
    const Inks seen = underRedLight(paperInks());
    EXPECT_LT(seen.of(drawing::Ink::Black).lightness(), 5);
    EXPECT_GT(seen.of(drawing::Ink::Red).red(), seen.of(drawing::Ink::Blue).red());
    EXPECT_GT(seen.paper.red(), seen.of(drawing::Ink::Red).red() + 40);
}

}  // namespace
}  // namespace crosstick::press
