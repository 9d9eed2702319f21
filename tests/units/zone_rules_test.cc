// Zones as people name them.
#include "core/units/zone_rules.h"

#include <gtest/gtest.h>

#include "core/units/faults.h"

namespace crosstick {
namespace {

using std::chrono::hours;
using std::chrono::minutes;

Instant at(const char* text) {
    return parseIsoTime(text).value();
}

minutes offsetOf(std::string_view text, const char* when = "2027-03-13T00:00:00Z") {
    return ZoneRules::parse(text, std::nullopt).value().at(at(when)).offset;
}

TEST(ZoneRules, AreALetterOrAnOffset) {
    EXPECT_EQ(offsetOf("Z"), minutes(0));
    EXPECT_EQ(offsetOf("R"), hours(-5));
    EXPECT_EQ(offsetOf("o"), hours(-2));
    EXPECT_EQ(offsetOf("+02:00"), hours(2));
    EXPECT_EQ(offsetOf("-0330"), minutes(-210));
    EXPECT_EQ(offsetOf("+14"), hours(14));
    const TimeZone odd = ZoneRules::parse("+05:45", std::nullopt).value().at(Instant{});
    EXPECT_EQ(odd.letter, 'J');
    EXPECT_EQ(ZoneRules::parse("+02:00", std::nullopt).value().at(Instant{}).letter, 'B');
}

TEST(ZoneRules, OfJAreThePlansOrNone) {
    EXPECT_EQ(ZoneRules::parse("J", TimeZone{'O', hours(-2)}).value().at(Instant{}).offset, hours(-2));
    const auto none = ZoneRules::parse("J", std::nullopt);
    ASSERT_FALSE(none);
    EXPECT_EQ(none.error().fault, kNoSuchZone);
}

// Summer time of the European Union: last Sunday of March to last Sunday of October, 0100 UTC (Directive 2000/84/EC).
TEST(ZoneRules, OfANameFollowItsSummerTime) {
    EXPECT_EQ(offsetOf("Europe/Oslo", "2027-03-28T00:59:59Z"), hours(1));
    EXPECT_EQ(offsetOf("Europe/Oslo", "2027-03-28T01:00:00Z"), hours(2));
    EXPECT_EQ(offsetOf("Asia/Kathmandu"), minutes(345));
    EXPECT_EQ(offsetOf("UTC"), minutes(0));
    const ZoneRules oslo = ZoneRules::parse("Europe/Oslo", std::nullopt).value();
    const auto date = [](const char* text) { return parseIsoDate(text).value(); };
    EXPECT_EQ(oslo.startOf(date("2027-10-31")), at("2027-10-31T00:00:00+02:00"));
    EXPECT_EQ(oslo.startOf(date("2027-11-01")), at("2027-11-01T00:00:00+01:00"));
    EXPECT_EQ(oslo.at(at("2027-06-01T00:00:00Z")).letter, 'B');
}

// Beirut's clocks skip the hour from 0000 to 0100 on the last Sunday of March (IANA database, rule Lebanon).
TEST(ZoneRules, BeginADateWithoutMidnightWhereItsClocksDo) {
    const ZoneRules beirut = ZoneRules::parse("Asia/Beirut", std::nullopt).value();
    EXPECT_EQ(beirut.startOf(parseIsoDate("2027-03-28").value()), at("2027-03-28T01:00:00+03:00"));
}

TEST(ZoneRules, AreNeverTheMachinesAndNeverGuessed) {
    for (const char* text : {"", "localtime", "right/UTC", "posix/UTC", "Factory", "Nowhere/Land", "+15:00", "+02:60",
                             "+2", "++02", "../../etc/passwd", "/etc/localtime", "zone.tab", "Europe"}) {
        const auto zone = ZoneRules::parse(text, TimeZone{});
        ASSERT_FALSE(zone) << text;
        EXPECT_EQ(zone.error().fault, kNoZoneNamed) << text;
    }
}

}  // namespace
}  // namespace crosstick
