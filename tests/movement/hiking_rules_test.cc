#include "core/movement/hiking_rules.h"

#include <gtest/gtest.h>

namespace crosstick::movement {
namespace {

// trade.md 6: 1 h per 5 km and 1 h per 600 m of ascent.
TEST(Naismith, TakesAnHourForFiveKilometresAndAnHourForSixHundredMetres) {
    EXPECT_NEAR(naismith(Metres(5000), Metres(0)).value(), 60, 1e-9);
    EXPECT_NEAR(naismith(Metres(5000), Metres(600)).value(), 120, 1e-9);
    // 20 km and 1 km of climb, not rounded: 5 h 40
    EXPECT_NEAR(naismith(Metres(20000), Metres(1000)).value(), 340, 1e-9);
}

// trade.md 6, worked: 10 km, +600 m, -300 m between 5 and 12 degrees, -300 m steeper = 180 min.
TEST(Naismith, WithBothOfLangmuirsCorrectionsIsTheWorkedExample) {
    const Minutes up = naismith(Metres(4000), Metres(600));
    const Minutes gentle = naismith(Metres(2000), Metres(-300));  // 8.5 degrees
    const Minutes steep = naismith(Metres(1000), Metres(-300));   // 16.7 degrees
    const Minutes level = naismith(Metres(3000), Metres(0));
    EXPECT_NEAR((up + gentle + steep + level).value(), 180, 1e-9);
    EXPECT_NEAR(gentle.value(), 24 - 10, 1e-9);
    EXPECT_NEAR(steep.value(), 12 + 10, 1e-9);
}

TEST(Naismith, LeavesAGentlerDescentAlone) {
    EXPECT_NEAR(naismith(Metres(5000), Metres(-300)).value(), 60, 1e-9);  // 3.4 degrees
}

// trade.md 6, computed from the formula.
TEST(Tobler, GivesTheListedRates) {
    const std::vector<std::pair<double, double>> rows{{-0.30, 2.501}, {-0.20, 3.549}, {-0.10, 5.037}, {-0.05, 6.000},
                                                      {0, 5.037},     {0.05, 4.228},  {0.10, 3.549},  {0.20, 2.501},
                                                      {0.30, 1.763},  {0.50, 0.875}};
    for (const auto& [slope, rate] : rows) {
        EXPECT_NEAR(toblerRate(slope).value(), rate, 5e-4) << slope;
    }
    const std::vector<std::pair<double, double>> degrees{{-12, 3.397}, {-10, 3.856}, {-5, 5.262},
                                                         {5, 3.708},   {10, 2.717},  {12, 2.394}};
    for (const auto& [angle, rate] : degrees) {
        EXPECT_NEAR(toblerRate(std::tan(radians(Degrees(angle)).value())).value(), rate, 5e-4) << angle;
    }
}

TEST(Tobler, TimeIsWayOverRate) {
    EXPECT_NEAR(tobler(Metres(1000), Metres(100)).value(), 60 / 3.549, 5e-3);
    EXPECT_EQ(tobler(Metres(0), Metres(0)).value(), 0);
}

}  // namespace
}  // namespace crosstick::movement
