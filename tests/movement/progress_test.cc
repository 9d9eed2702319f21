#include "core/movement/progress.h"

#include <iostream>
#include <random>

#include <gtest/gtest.h>

namespace crosstick::movement {
namespace {

using plan::Going;

const Instant kStart = *parseIsoTime("2027-03-13T17:00:00-02:00");

Night night(int fromMinute, int untilMinute) {
    return {kStart + std::chrono::minutes(fromMinute), kStart + std::chrono::minutes(untilMinute)};
}

plan::Heading byLight(plan::TimeRule rule = plan::TimeRule::ByLight) {
    plan::Heading heading;
    heading.timing = plan::Timing{rule, Going::CrossCountry, {}};
    return heading;
}

Stretch stretch(double metres, Going going = Going::CrossCountry) {
    return {Metres(metres), going, {}, Minutes(0)};
}

// FM 21-18's rates (trade.md 5): 4.0 and 3.2 km/h on roads, 2.4 and 1.6 cross-country.
TEST(Progress, TakesTheDoctrinalRateOfGroundAndLight) {
    const plan::Heading heading = byLight();
    const auto minutes = [&](Going going, const std::vector<Night>& nights) {
        return walk({stretch(1000, going)}, heading, kStart, nights)->stretches.front().time.value();
    };
    EXPECT_NEAR(minutes(Going::Road, {}), 15.0, 1e-9);
    EXPECT_NEAR(minutes(Going::Road, {night(-60, 600)}), 18.75, 1e-9);
    EXPECT_NEAR(minutes(Going::CrossCountry, {}), 25.0, 1e-9);
    EXPECT_NEAR(minutes(Going::CrossCountry, {night(-60, 600)}), 37.5, 1e-9);
}

// 9 km cross-country by night at 1.6 km/h: 5 h 37.5 min (trade.md 5, training trace).
TEST(Progress, OfTheTrainingTraceIsAsLongAsWorked) {
    const auto walked = walk({stretch(9000)}, byLight(), kStart, {night(-60, 6000)});
    EXPECT_NEAR(walked->progress.at(Metres(9000))->value(), 337.5, 1e-9);
}

// By hand: 94 min of day carry 3760 m at 2.4 km/h, the other 240 m take 9 min at 1.6.
TEST(Progress, ChangesItsRateInTheMiddleOfAStretchWhenNightFalls) {
    const auto walked = walk({stretch(4000)}, byLight(), kStart, {night(94, 800)});
    ASSERT_TRUE(walked);
    EXPECT_NEAR(walked->stretches.front().time.value(), 94 + 9, 1e-9);
    ASSERT_EQ(walked->progress.spans.size(), 2U);
    EXPECT_EQ(walked->progress.spans[1].light, plan::Light::Night);
    EXPECT_NEAR(walked->progress.spans[1].from.value(), 3760, 1e-9);
    EXPECT_NEAR(walked->progress.spans[1].since.value(), 94, 1e-9);
    EXPECT_NEAR(walked->progress.at(Metres(3760))->value(), 94, 1e-9);
    EXPECT_NEAR(walked->progress.at(Metres(3880))->value(), 98.5, 1e-9);
}

TEST(Progress, ChangesBackAtDawn) {
    const auto walked = walk({stretch(1600), stretch(2400)}, byLight(), kStart, {night(-300, 60)});
    EXPECT_NEAR(walked->stretches[0].time.value(), 60, 1e-9);
    EXPECT_NEAR(walked->stretches[1].time.value(), 60, 1e-9);
    EXPECT_EQ(walked->progress.spans.back().light, plan::Light::Day);
}

TEST(Progress, WithoutAStartTakesTheSlowerRate) {
    EXPECT_NEAR(walk({stretch(1600)}, byLight(), std::nullopt, {})->stretches[0].time.value(), 60, 1e-9);
    plan::Heading odd = byLight();
    odd.timing->rates.crossCountryByDay = KilometresPerHour(1);
    EXPECT_NEAR(walk({stretch(1000)}, odd, std::nullopt, {})->stretches[0].time.value(), 60, 1e-9);
}

// The rates hold the hourly halts already (trade.md 5): four hours of march are four hours.
TEST(Progress, HourlyHaltsAreNotAddedToRatesThatHoldThem) {
    EXPECT_NEAR(walk({stretch(9600)}, byLight(), kStart, {})->stretches[0].time.value(), 240, 1e-9);
}

TEST(Progress, AHaltAtAPointHoldsWhatComesAfterIt) {
    std::vector<Stretch> way{stretch(2400), stretch(2400)};
    way[1].haltBefore = Minutes(20);
    const auto walked = walk(way, byLight(), kStart, {});
    EXPECT_NEAR(walked->progress.at(Metres(2400))->value(), 60, 1e-9);
    EXPECT_NEAR(walked->progress.at(Metres(2401))->value(), 80.025, 1e-9);
    EXPECT_NEAR(walked->progress.at(Metres(4800))->value(), 140, 1e-9);
    EXPECT_NEAR(walked->stretches[1].time.value(), 60, 1e-9);
}

TEST(Progress, AHikingRuleCountsOnlyWhereItIsTheSlowerOne) {
    std::vector<Stretch> way{stretch(1000), stretch(1000)};
    way[0].byRule = Minutes(12);  // level, by Naismith: quicker than 25 min at 2.4 km/h
    way[1].byRule = Minutes(42);
    const auto walked = walk(way, byLight(plan::TimeRule::Naismith), kStart, {});
    EXPECT_NEAR(walked->stretches[0].time.value(), 25, 1e-9);
    EXPECT_FALSE(walked->stretches[0].slowed);
    EXPECT_NEAR(walked->stretches[1].time.value(), 42, 1e-9);
    EXPECT_TRUE(walked->stretches[1].slowed);
}

TEST(Progress, IsUnknownOutsideTheWayAndWithoutARate) {
    const auto walked = walk({stretch(100)}, byLight(), kStart, {});
    EXPECT_FALSE(walked->progress.at(Metres(101)));
    EXPECT_FALSE(walked->progress.at(Metres(-1)));
    EXPECT_FALSE(walk({stretch(100)}, plan::Heading{}, kStart, {}));
    plan::Heading standing = byLight();
    standing.timing->rates.roadByNight = KilometresPerHour(0);
    EXPECT_FALSE(walk({stretch(100)}, standing, kStart, {}));
}

// Laws over random ways and nights: progress rises; nobody who starts later arrives earlier; no walk is longer than
// longestTime says; the stretches' times and halts are all of it.
TEST(Progress, NobodyWhoStartsLaterArrivesEarlier) {
    constexpr std::uint32_t kSeed = 20270313;
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    const auto below = [&](int limit) { return static_cast<int>(random() % static_cast<unsigned>(limit)); };
    for (int round = 0; round < 300; ++round) {
        std::vector<Stretch> way;
        Metres length{0};
        for (int n = 1 + below(12); n > 0; --n) {
            way.push_back(stretch(below(3000), below(2) == 0 ? Going::Road : Going::CrossCountry));
            way.back().haltBefore = Minutes(below(4) == 0 ? below(30) : 0);
            if (below(3) == 0) {
                way.back().byRule = Minutes(below(120));
            }
            length += way.back().ground;
        }
        std::vector<Night> nights;
        for (int at = below(200) - 100; at < 3000; at += 60 + below(900)) {
            nights.push_back(night(at, at + 30));
            at += 30;
        }
        const plan::Heading heading = byLight();
        std::optional<Instant> before;
        for (int later = 0; later < 120; later += 7) {
            const Instant start = kStart + std::chrono::minutes(later);
            const auto walked = walk(way, heading, start, nights);
            const auto& knots = walked->progress.knots;
            for (std::size_t n = 1; n < knots.size(); ++n) {
                EXPECT_GE(knots[n].ground, knots[n - 1].ground);
                EXPECT_GE(knots[n].time, knots[n - 1].time);
            }
            const Minutes whole = knots.back().time;
            Minutes sum{0};
            for (std::size_t n = 0; n < way.size(); ++n) {
                sum += walked->stretches[n].time + way[n].haltBefore;
            }
            EXPECT_NEAR(whole.value(), sum.value(), 1e-6);
            EXPECT_LE(whole.value(), longestTime(way, heading).value() + 1e-6);
            const Instant there = start + std::chrono::seconds(std::llround(whole.value() * 60));
            EXPECT_TRUE(!before || there + std::chrono::seconds(1) >= *before) << round << ' ' << later;
            before = there;
        }
    }
}

}  // namespace
}  // namespace crosstick::movement
