#include "core/units/quantity.h"

#include <limits>
#include <random>

#include <gtest/gtest.h>

namespace crosstick {
namespace {

// FM 21-26 ch. 6 Direction: 6400 mils to the circle. The factor is 160/9 exactly; with its 17.78 the circle would have
// 6400.8.
TEST(Mils, SixtyFourHundredMakeTheCircle) {
    EXPECT_EQ(mils(Degrees(360)).value(), 6400);
    EXPECT_EQ(mils(Degrees(45)).value(), 800);
    EXPECT_EQ(degrees(Mils(3200)).value(), 180);
}

TEST(FullCircle, LiesInZeroTo360AndIsNeverMinusZero) {
    EXPECT_EQ(fullCircle(Degrees(360)).value(), 0);
    EXPECT_EQ(fullCircle(Degrees(-90)).value(), 270);
    EXPECT_EQ(fullCircle(Degrees(725)).value(), 5);
    EXPECT_FALSE(std::signbit(fullCircle(Degrees(-0.0)).value()));
    EXPECT_FALSE(std::signbit(fullCircle(Degrees(-360)).value()));
    EXPECT_EQ(fullCircle(Degrees(-1e-20)).value(), 0);  // 360 - 1e-20 is 360 in a double
    EXPECT_FALSE(isFinite(fullCircle(Degrees(std::numeric_limits<double>::quiet_NaN()))));
}

TEST(FullCircle, LeavesWhatIsInTheCircleAsItIs) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> any(0, 360);
    for (int n = 0; n < 1000; ++n) {
        const Degrees angle(any(random));
        ASSERT_EQ(fullCircle(angle), angle);
    }
}

// FM 3-25.26 ch. 5 Scale and Distance, and common practice: 1 mm is 25 m at 1:25,000 and 50 m at 1:50,000; a square of
// 1 km is 40, 20 and 10 mm.
TEST(PaperScale, OneMillimetreIsTheScaleInMetres) {
    EXPECT_EQ(onGround(PaperMm(1), Scale{25000}).value(), 25);
    EXPECT_EQ(onGround(PaperMm(1), Scale{50000}).value(), 50);
    EXPECT_EQ(onPaper(Metres(1000), Scale{25000}).value(), 40);
    EXPECT_EQ(onPaper(Metres(1000), Scale{50000}).value(), 20);
    EXPECT_EQ(onPaper(Metres(1000), Scale{100000}).value(), 10);
    EXPECT_NEAR(onPaper(Metres(1000), Scale{24000}).value(), 41.667, 5e-4);
}

}  // namespace
}  // namespace crosstick
