// Light of a date: check values, and what does not happen.
#include "core/sky/light.h"

#include <random>

#include <gtest/gtest.h>

#include "core/sky/faults.h"

namespace crosstick::sky {
namespace {

using std::chrono::abs;
using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

CalendarDate date(const char* text) {
    return parseIsoDate(text).value();
}

Instant at(const char* text) {
    return parseIsoTime(text).value();
}

constexpr geodesy::GeoPoint kKettle{Degrees(46.040741954), Degrees(-31.009690948)};  // the exercise sheet's middle
const TimeZone kOscar{'O', hours(-2)};

struct Expected {
    const char* what;
    Event Light::*event;
    const char* time;
};

void expectTimes(const Light& light, std::string day, const std::vector<Expected>& expected) {
    for (const Expected& one : expected) {
        const Event& event = light.*one.event;
        ASSERT_TRUE(event.first) << one.what;
        EXPECT_EQ(event.first->certainty, Certainty::Sure) << one.what;
        const Instant wanted = at((day + "T" + one.time + "-02:00").c_str());
        EXPECT_LE(abs(event.first->at - wanted), seconds(2)) << one.what << " " << isoTime(event.first->at, kOscar);
        EXPECT_FALSE(event.second) << one.what;
    }
}

// The exercise's light by ephem 4.1.4 and again by ERFA (scenario.md, section 5).
TEST(Light, OfTheExerciseIsTheOneWorkedOutBeforehand) {
    const Light first = lightOn(kKettle, date("2027-03-13"), kOscar).value();
    expectTimes(first, "2027-03-13",
                {{"nautical dawn", &Light::nauticalDawn, "05:16:41"},
                 {"civil dawn", &Light::civilDawn, "05:51:22"},
                 {"sunrise", &Light::sunrise, "06:21:06"},
                 {"transit", &Light::transit, "12:13:32"},
                 {"sunset", &Light::sunset, "18:06:45"},
                 {"civil dusk", &Light::civilDusk, "18:36:34"},
                 {"nautical dusk", &Light::nauticalDusk, "19:11:21"},
                 {"moonrise", &Light::moonrise, "08:12:28"}});
    EXPECT_EQ(first.moonset, Event{});
    const Light second = lightOn(kKettle, date("2027-03-14"), kOscar).value();
    expectTimes(second, "2027-03-14",
                {{"nautical dawn", &Light::nauticalDawn, "05:14:44"},
                 {"nautical dusk", &Light::nauticalDusk, "19:12:45"},
                 {"moonrise", &Light::moonrise, "08:53:19"},
                 {"moonset", &Light::moonset, "00:36:00"}});
}

TEST(Sky, OfTheExerciseIsTheOneWorkedOutBeforehand) {
    const Sky evening = skyAt(kKettle, at("2027-03-13T21:00:00-02:00")).value();
    EXPECT_NEAR(evening.moonLit, 0.31, 0.006);
    EXPECT_NEAR(evening.moonAltitude.value(), 32, 0.6);
    EXPECT_NEAR(evening.moonAzimuth.value(), 274, 0.6);
    const Sky midnight = skyAt(kKettle, at("2027-03-14T00:00:00-02:00")).value();
    EXPECT_NEAR(midnight.moonLit, 0.33, 0.006);
    EXPECT_NEAR(midnight.moonAltitude.value(), 4, 0.6);
    EXPECT_NEAR(midnight.moonAzimuth.value(), 302, 0.6);
    EXPECT_LT(midnight.sunAltitude, Degrees(-18));
}

// NREL/TP-560-34302, reference run of 2003-10-17, UTC-7, as public test suites quote it (trade.md 8.3); its sunset is
// that of the evening before.
TEST(Light, AgreesWithThePublishedSunRun) {
    const geodesy::GeoPoint place{Degrees(39.742476), Degrees(-105.1786)};
    const TimeZone zone{'T', hours(-7)};
    const auto hoursOf = [&](const Event& event, const char* midnight) {
        return std::chrono::duration<double, std::ratio<3600>>(event.first.value().at - at(midnight)).count();
    };
    const Light light = lightOn(place, date("2003-10-17"), zone).value();
    EXPECT_NEAR(hoursOf(light.sunrise, "2003-10-17T00:00:00-07:00"), 6.212067, 1.0 / 3600);
    EXPECT_NEAR(hoursOf(light.transit, "2003-10-17T00:00:00-07:00"), 11.768045, 1.0 / 3600);
    const Light before = lightOn(place, date("2003-10-16"), zone).value();
    EXPECT_NEAR(hoursOf(before.sunset, "2003-10-16T00:00:00-07:00"), 17.338667, 1.5 / 3600);
}

TEST(Light, OfPolarNightAndPolarDayHasNoSunriseAndATransit) {
    const geodesy::GeoPoint north{Degrees(78), Degrees(15)};
    for (const char* day : {"2027-01-05", "2027-06-21"}) {
        const Light light = lightOn(north, date(day), TimeZone{'A', hours(1)}).value();
        EXPECT_EQ(light.sunrise, Event{}) << day;
        EXPECT_EQ(light.sunset, Event{}) << day;
        EXPECT_TRUE(light.transit.first) << day;
    }
}

TEST(Light, AtThePolesHasNoEventThatDailyTurningMakes) {
    for (const double latitude : {90.0, -90.0}) {
        const Light light = lightOn({Degrees(latitude), Degrees(0)}, date("2027-05-01"), TimeZone{}).value();
        EXPECT_EQ(light.sunrise, Event{});
        EXPECT_EQ(light.nauticalDusk, Event{});
        EXPECT_TRUE(light.transit.first);
    }
}

// The latitude at which the sun just fails to set is found by halving; a hundredth of a degree round it is uncertain.
TEST(Light, ThatGrazesTheHorizonIsUncertain) {
    const auto lightAt = [](double latitude) {
        return lightOn({Degrees(latitude), Degrees(0)}, date("2027-06-10"), TimeZone{'M', hours(12)}).value();
    };
    double sets = 60;
    double stays = 70;
    while (stays - sets > 1e-6) {
        const double middle = (sets + stays) / 2;
        const auto& sunset = lightAt(middle).sunset.first;
        (sunset && sunset->certainty != Certainty::NotQuite ? sets : stays) = middle;
    }
    EXPECT_EQ(lightAt(sets - 0.01).sunset.first.value().certainty, Certainty::Uncertain);
    EXPECT_EQ(lightAt(sets - 0.01).sunrise.first.value().certainty, Certainty::Uncertain);
    EXPECT_EQ(lightAt(stays + 0.01).sunset.first.value().certainty, Certainty::NotQuite);
    EXPECT_EQ(lightAt(stays + 0.01).sunrise.first.value().certainty, Certainty::NotQuite);
    EXPECT_EQ(lightAt(sets - 0.05).sunset.first.value().certainty, Certainty::Sure);
    EXPECT_EQ(lightAt(stays + 0.05).sunset, Event{});
}

// In summer's second half the sun sets earlier from day to day: once just after midnight and again before the next.
TEST(Light, HasTwoSunsetsWhereMidnightLiesBetweenThem) {
    int twice = 0;
    for (int day = 0; day < 60; ++day) {
        const auto when = CalendarDate(std::chrono::sys_days(date("2027-07-15")) + std::chrono::days(day));
        const Light light = lightOn({Degrees(69), Degrees(-10)}, when, TimeZone{'Z', hours(0)}).value();
        if (light.sunset.second) {
            ++twice;
            EXPECT_LT(light.sunset.first->at, light.sunset.second->at);
            EXPECT_LT(light.sunset.first->at - light.from, hours(1));
            EXPECT_LT(light.until - light.sunset.second->at, hours(1));
        }
    }
    EXPECT_EQ(twice, 1);
}

// A law of any place and date: what is told lies in the date, and the next date begins where this one ends.
TEST(Light, OfNeighbouringDatesSharesNoEventAndLeavesNoneOut) {
    std::mt19937_64 random(7);
    SCOPED_TRACE("seed 7");
    std::uniform_real_distribution<double> north(-65, 65);
    std::uniform_real_distribution<double> east(-180, 180);
    std::uniform_int_distribution<int> day(0, 10000);
    std::uniform_int_distribution<int> offset(-12 * 60, 14 * 60);
    for (int n = 0; n < 100; ++n) {
        const geodesy::GeoPoint place{Degrees(north(random)), Degrees(east(random))};
        const auto first = std::chrono::sys_days(date("2020-01-01")) + std::chrono::days(day(random));
        const TimeZone zone{'J', minutes(offset(random))};
        std::optional<Instant> before;
        for (int d = 0; d < 4; ++d) {
            const Light light = lightOn(place, CalendarDate(first + std::chrono::days(d)), zone).value();
            for (const auto& moment : {light.transit.first, light.transit.second}) {
                if (moment) {
                    EXPECT_GE(moment->at, light.from);
                    EXPECT_LT(moment->at, light.until);
                    EXPECT_TRUE(!before || abs(moment->at - *before - hours(24)) < minutes(1)) << n;
                    before = moment->at;
                }
            }
        }
    }
}

TEST(Light, OfALongAndAShortDateIsThatOfItsMidnights) {
    const geodesy::GeoPoint berth{Degrees(52), Degrees(13)};
    const Light lengthened =
        lightBetween(berth, at("2027-10-31T00:00:00+02:00"), at("2027-11-01T00:00:00+01:00")).value();
    EXPECT_EQ(lengthened.until - lengthened.from, hours(25));
    const Light plain = lightOn(berth, date("2027-10-31"), TimeZone{'A', hours(1)}).value();
    EXPECT_LE(abs(lengthened.sunset.first.value().at - plain.sunset.first.value().at), seconds(1));
}

TEST(Light, IsRefusedWhereTheClockOfTheSkyIsNotKnown) {
    for (const char* day : {"1969-12-30", "2051-03-01", "0001-01-01", "9999-12-31"}) {
        const auto light = lightOn(kKettle, date(day), TimeZone{});
        ASSERT_FALSE(light) << day;
        EXPECT_EQ(light.error().fault, kDateOutside) << day;
    }
    EXPECT_FALSE(lightOn(kKettle, CalendarDate{}, TimeZone{}));
    EXPECT_TRUE(lightOn(kKettle, date("1970-01-01"), TimeZone{}));
    EXPECT_TRUE(lightOn(kKettle, date("2050-12-31"), TimeZone{}));
}

}  // namespace
}  // namespace crosstick::sky
