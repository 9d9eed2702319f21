// Where a curve crosses a level, and where it nearly does.
#include "core/sky/crossings.h"

#include <cmath>
#include <random>

#include <gtest/gtest.h>

namespace crosstick::sky {
namespace {

constexpr Degrees kTolerance{0.02};
constexpr double kDay = 86400;

/// A day's wave, highest at noon.
Curve wave(double middle, double swing) {
    return [=](Seconds at) { return Degrees(middle - swing * std::cos(2 * std::numbers::pi * at.count() / kDay)); };
}

std::vector<Crossing> day(const Curve& curve, Degrees level, Way way) {
    return crossingsOf(curve, knotsOf(curve, Seconds(-7200), Seconds(kDay + 7200)), level, way, kTolerance);
}

TEST(Crossings, AreFoundWhereTheWaveGoesThrough) {
    const Curve curve = wave(0, 40);
    const auto up = day(curve, Degrees(0), Way::Up);
    const auto down = day(curve, Degrees(0), Way::Down);
    ASSERT_EQ(up.size(), 1U);
    ASSERT_EQ(down.size(), 1U);
    EXPECT_NEAR(up[0].at.count(), kDay / 4, 0.01);
    EXPECT_NEAR(down[0].at.count(), kDay * 3 / 4, 0.01);
    EXPECT_EQ(up[0].kind, Kind::Sure);
}

TEST(Crossings, AreNoneWhereTheWaveStaysAboveOrBelow) {
    for (const double middle : {41.0, -41.0}) {
        EXPECT_TRUE(day(wave(middle, 40), Degrees(0), Way::Up).empty());
        EXPECT_TRUE(day(wave(middle, 40), Degrees(0), Way::Down).empty());
    }
}

TEST(Crossings, GrazeWhereTheWaveTurnsCloseToTheLevel) {
    const auto up = day(wave(-39.985, 40), Degrees(0), Way::Up);
    ASSERT_EQ(up.size(), 1U);
    EXPECT_EQ(up[0].kind, Kind::Grazes);
    EXPECT_LT(up[0].at.count(), kDay / 2);
    EXPECT_EQ(day(wave(-39.97, 40), Degrees(0), Way::Up).at(0).kind, Kind::Sure);
}

TEST(Crossings, FallShortAtTheTurnItself) {
    for (const Way way : {Way::Up, Way::Down}) {
        const auto near = day(wave(-40.015, 40), Degrees(0), way);
        ASSERT_EQ(near.size(), 1U);
        EXPECT_EQ(near[0].kind, Kind::FallsShort);
        EXPECT_NEAR(near[0].at.count(), kDay / 2, 60);
        EXPECT_TRUE(day(wave(-40.03, 40), Degrees(0), way).empty());
    }
}

TEST(Crossings, LieOnTheLevelAndTakeTurnsOnRandomCurves) {
    std::mt19937_64 random(20270313);
    SCOPED_TRACE("seed 20270313");
    std::uniform_real_distribution<double> any(-1, 1);
    for (int n = 0; n < 200; ++n) {
        const double a = any(random) * 30;
        const double b = any(random) * 10;
        const double phase = any(random) * 3;
        const Degrees level(any(random) * 40);
        const Curve curve = [=](Seconds at) {
            const double x = 2 * std::numbers::pi * at.count() / kDay;
            return Degrees(a * std::cos(x + phase) + b * std::cos(2 * x));
        };
        const auto up = day(curve, level, Way::Up);
        const auto down = day(curve, level, Way::Down);
        const auto sure = [](const auto& list) {
            return std::count_if(list.begin(), list.end(), [](const auto& c) { return c.kind != Kind::FallsShort; });
        };
        EXPECT_LE(std::abs(sure(up) - sure(down)), 1) << n;
        for (const auto& list : {up, down}) {
            for (const Crossing& crossing : list) {
                EXPECT_LT(abs(curve(crossing.at) - level), kTolerance) << n;
            }
        }
    }
}

}  // namespace
}  // namespace crosstick::sky
