#include "core/units/time.h"

#include <random>

#include <gtest/gtest.h>

#include "core/units/faults.h"

namespace crosstick {
namespace {

using namespace std::chrono_literals;
using std::chrono::sys_days;

Instant at(int year, unsigned month, unsigned day, int hour, int minute, int second = 0) {
    return Instant(sys_days(std::chrono::year(year) / std::chrono::month(month) / std::chrono::day(day))) +
           std::chrono::hours(hour) + std::chrono::minutes(minute) + std::chrono::seconds(second);
}

TimeZone zone(char letter) {
    return timeZone(letter).value();
}

// Zone letters of military time, common practice (ACP 121 family): A is +1, M +12, N -1, Y -12, Z 0; J is local.
TEST(TimeZoneLetters, HaveTheirOffsets) {
    EXPECT_EQ(zone('Z').offset, 0h);
    EXPECT_EQ(zone('A').offset, 1h);
    EXPECT_EQ(zone('I').offset, 9h);
    EXPECT_EQ(zone('K').offset, 10h);
    EXPECT_EQ(zone('M').offset, 12h);
    EXPECT_EQ(zone('N').offset, -1h);
    EXPECT_EQ(zone('O').offset, -2h);
    EXPECT_EQ(zone('Y').offset, -12h);
    EXPECT_EQ(zone('z').letter, 'Z');
}

TEST(TimeZoneLetters, RefuseLocalTimeAndWhatIsNoLetter) {
    for (const char bad : {'J', 'j', '1', ' ', '-'}) {
        const auto zone = timeZone(bad);
        ASSERT_FALSE(zone) << bad;
        EXPECT_EQ(zone.error().fault, kNoSuchZone);
    }
}

TEST(DateTimeGroup, IsDayTimeZoneMonthYear) {
    // 251430ZNOV26 is the form that FM 6-99 and common practice give.
    EXPECT_EQ(dateTimeGroup(at(2026, 11, 25, 14, 30), zone('Z')), "251430ZNOV26");
    EXPECT_EQ(dateTimeGroup(at(2027, 3, 13, 14, 0), zone('O')), "131200OMAR27");
    EXPECT_EQ(parseDateTimeGroup("131200OMAR27"), at(2027, 3, 13, 14, 0));
    EXPECT_EQ(parseDateTimeGroup("131200o mar 27"), at(2027, 3, 13, 14, 0));
}

TEST(DateTimeGroup, ChangesTheDateWithTheZone) {
    EXPECT_EQ(dateTimeGroup(at(2027, 3, 14, 2, 0), zone('O')), "140000OMAR27");
    EXPECT_EQ(dateTimeGroup(at(2027, 3, 14, 1, 59), zone('O')), "132359OMAR27");
    EXPECT_EQ(dateTimeGroup(at(2027, 12, 31, 12, 0), zone('M')), "010000MJAN28");
}

TEST(DateTimeGroup, RefusesDaysAndHoursThatAreNot) {
    for (const char* bad : {"", "131200OMAR2", "131200OMAR277", "321200OMAR27", "302400ZMAR27", "131260ZMAR27",
                            "301200ZFEB27", "131200OXXX27", "1312000MAR27", "AB1200OMAR27", "131200OMARXX"}) {
        const auto read = parseDateTimeGroup(bad);
        ASSERT_FALSE(read) << bad;
    }
    EXPECT_EQ(parseDateTimeGroup("131200JMAR27").error().fault, kNoSuchZone);
    EXPECT_EQ(parseDateTimeGroup("131200OXXX27").error().fault, kBadDateTimeGroup);
}

TEST(IsoTime, ReadsOffsetsAndLeavesSecondsFree) {
    EXPECT_EQ(parseIsoTime("2027-03-13T15:00:00-02:00"), at(2027, 3, 13, 17, 0));
    EXPECT_EQ(parseIsoTime("2027-03-13T15:00Z"), at(2027, 3, 13, 15, 0));
    EXPECT_EQ(parseIsoTime("2027-03-13T00:30:15+0545"), at(2027, 3, 12, 18, 45, 15));
    EXPECT_EQ(isoTime(at(2027, 3, 13, 17, 0), zone('O')), "2027-03-13T15:00:00-02:00");
    EXPECT_EQ(isoTime(at(2027, 3, 13, 17, 0), zone('Z')), "2027-03-13T17:00:00Z");
}

TEST(IsoTime, RefusesAllElse) {
    for (const char* bad : {"", "2027-03-13", "2027-03-13T15:00:00", "2027-03-13 15:00Z", "2027-02-30T15:00Z",
                            "2027-03-13T24:00Z", "2027-03-13T15:60Z", "2027-03-13T15:00:60Z", "2027-03-13T15:00Zx",
                            "2027-03-13T15:00+15:00", "2027-03-13T15:00:00.5Z"}) {
        const auto read = parseIsoTime(bad);
        ASSERT_FALSE(read) << bad;
        EXPECT_EQ(read.error().fault, kBadTime);
    }
}

TEST(Times, PrintedAndReadAreTheSame) {
    constexpr unsigned kSeed = 131200;
    SCOPED_TRACE(kSeed);
    std::mt19937_64 random(kSeed);
    const auto from = at(2000, 1, 1, 12, 0).time_since_epoch().count();
    const auto to = at(2099, 12, 30, 12, 0).time_since_epoch().count();
    std::uniform_int_distribution<long> any(from, to);
    const std::string letters = "ABCDEFGHIKLMNOPQRSTUVWXYZ";
    for (int n = 0; n < 20000; ++n) {
        const Instant when{std::chrono::seconds(any(random))};
        const TimeZone in = zone(letters[static_cast<std::size_t>(n) % letters.size()]);
        ASSERT_EQ(parseIsoTime(isoTime(when, in)), when);
        const Instant minute = std::chrono::floor<std::chrono::minutes>(when);
        ASSERT_EQ(parseDateTimeGroup(dateTimeGroup(minute, in)), minute) << dateTimeGroup(minute, in);
    }
}

TEST(Dates, ReadAndWrite) {
    const auto date = parseIsoDate("2028-02-29");
    ASSERT_TRUE(date);
    EXPECT_EQ(isoDate(*date), "2028-02-29");
    for (const char* bad : {"", "2027-02-29", "2027-13-01", "2027-00-10", "2027-3-13", "27-03-13", "2027-03-13 ",
                            "2027/03/13", "2027-03-32"}) {
        const auto read = parseIsoDate(bad);
        ASSERT_FALSE(read) << bad;
        EXPECT_EQ(read.error().fault, kBadDate);
    }
}

TEST(Dates, LocalDateIsTheZonesOwn) {
    EXPECT_EQ(isoDate(localDate(at(2027, 3, 14, 1, 59, 59), zone('O'))), "2027-03-13");
    EXPECT_EQ(isoDate(localDate(at(2027, 3, 14, 2, 0), zone('O'))), "2027-03-14");
}

// The demo's march: 180.04 minutes after 2100 local is two seconds past midnight.
TEST(ClockTime, RoundsToTheNearestMinuteAndTurnsTheDay) {
    const Instant start = at(2027, 3, 13, 23, 0);
    EXPECT_EQ(clockTime(start, zone('O')), "2100");
    EXPECT_EQ(clockTime(start + 40min + 30s, zone('O')), "2141");
    EXPECT_EQ(clockTime(start + 40min + 29s, zone('O')), "2140");
    EXPECT_EQ(clockTime(start + 180min + 2s, zone('O')), "0000");
}

// NOAA/NCEI's convention: year + (day of year - 1) / days in the year; 2026-07-04 is 2026.50411.
TEST(DecimalYear, CountsDaysFromNewYear) {
    const auto year = [](const char* date) { return decimalYear(parseIsoDate(date).value()); };
    EXPECT_NEAR(year("2026-07-04"), 2026.50411, 5e-6);
    EXPECT_EQ(year("2025-01-01"), 2025.0);
    EXPECT_EQ(year("2030-01-01"), 2030.0);
    EXPECT_NEAR(year("2028-12-31"), 2028 + 365.0 / 366, 1e-12);
}

}  // namespace
}  // namespace crosstick
