#include <gtest/gtest.h>

#include "core/geodesy/faults.h"
#include "core/geodesy/grid_reference.h"

namespace crosstick::geodesy {
namespace {

constexpr double sexagesimal(double degrees, double minutes, double seconds) {
    return degrees + minutes / 60 + seconds / 3600;
}

void expectGrid(const char* text, Zone zone, double easting, double northing, std::optional<Metres> square,
                double tolerance = 1e-9) {
    SCOPED_TRACE(text);
    const auto read = parsePoint(text);
    ASSERT_TRUE(read) << read.error().fault.name;
    EXPECT_EQ(read->southWest.zone, zone);
    EXPECT_NEAR(read->southWest.at.easting.value(), easting, tolerance);
    EXPECT_NEAR(read->southWest.at.northing.value(), northing, tolerance);
    EXPECT_EQ(read->square, square);
}

void expectPlace(const char* text, double latitude, double longitude) {
    SCOPED_TRACE(text);
    const auto read = parsePoint(text);
    ASSERT_TRUE(read) << read.error().fault.name;
    EXPECT_FALSE(read->square);
    const auto place = geographic(read->southWest).value();
    EXPECT_NEAR(place.latitude.value(), latitude, 1e-9);
    EXPECT_NEAR(place.longitude.value(), longitude, 1e-9);
}

constexpr Zone kZone18{18, Hemisphere::North};

// FGDC-STD-011-2001: a reference names a square, its point is the south-west corner; 2 digits are 10 km, 10 are 1 m.
TEST(ParsePoint, ReadsMgrsOfAnyPrecision) {
    expectGrid("18SUJ", kZone18, 300000, 4300000, Metres(100000));
    expectGrid("18SUJ20", kZone18, 320000, 4300000, Metres(10000));
    expectGrid("18SUJ2306", kZone18, 323000, 4306000, Metres(1000));
    expectGrid("18SUJ234064", kZone18, 323400, 4306400, Metres(100));
    expectGrid("18SUJ23480647", kZone18, 323480, 4306470, Metres(10));
    expectGrid("18SUJ2348306479", kZone18, 323483, 4306479, Metres(1));
}

// Tests of GeographicLib's GeoConvert: millimetres.
TEST(ParsePoint, ReadsMgrsFinerThanAMetre) {
    expectGrid("38SMB4414060084706300", {38, Hemisphere::North}, 444140.6, 3684706.3, Metres(0.001), 1e-6);
    const auto equator = parsePoint("38n 500000 0.063811").value();
    EXPECT_NEAR(equator.southWest.at.northing.value(), 0.063811, 1e-12);
    expectGrid("38NNF0000000000063811", {38, Hemisphere::North}, 500000, 63.811, Metres(0.000001 * 1000), 1e-6);
}

TEST(ParsePoint, TakesMgrsInAnyCaseAndParted) {
    for (const char* text : {"18S UJ 2348 0647", "18SUJ 2348 0647", "18s uj 23480647", " 18 S U J 23 48 06 47 ",
                             "MGRS 18SUJ23480647", "\t18S\tUJ\t2348\t0647\r\n", "18S\u00a0UJ 2348\u202f0647"}) {
        expectGrid(text, kZone18, 323480, 4306470, Metres(10));
    }
}

// FM 21-26 ch. 4, Hawaii: zones of one figure.
TEST(ParsePoint, ReadsZonesOfOneFigure) {
    expectGrid("4QFJ15", {4, Hemisphere::North}, 610000, 2350000, Metres(10000));
    expectGrid("4QFJ12345678", {4, Hemisphere::North}, 612340, 2356780, Metres(10));
    expectGrid("04QFJ12345678", {4, Hemisphere::North}, 612340, 2356780, Metres(10));
}

// FM 21-26 ch. 4: "right, then up"; the point lies 2/10 right and 7/10 up in square 1484, and is 142847.
TEST(ParsePoint, ReadsEastingBeforeNorthing) {
    expectGrid("18SUJ142847", kZone18, 314200, 4384700, Metres(100));
    expectGrid("18SUJ1484", kZone18, 314000, 4384000, Metres(1000));
    expectGrid("18SUJ1584", kZone18, 315000, 4384000, Metres(1000));
    expectGrid("18SUJ1485", kZone18, 314000, 4385000, Metres(1000));
}

TEST(ParsePoint, ReadsPolarMgrs) {
    expectGrid("ZAA0000033272", {0, Hemisphere::North}, 2000000, 1333272, Metres(1));
    expectGrid("z aa 00000 33272", {0, Hemisphere::North}, 2000000, 1333272, Metres(1));
    expectGrid("BKH41", {0, Hemisphere::South}, 2740000, 1510000, Metres(10000));
    expectGrid("BKH", {0, Hemisphere::South}, 2700000, 1500000, Metres(100000));
}

// Tests of GeographicLib's GeoConvert: "38smb" is the square whose centre is 32 59 14.1 N, 44 27 53.4 E.
TEST(ParsePoint, GivesTheCornerNotTheCentre) {
    const auto read = parsePoint("38smb").value();
    const PlanePoint corner = read.southWest.at;
    const auto centre =
        geographic({read.southWest.zone, {corner.easting + Metres(50000), corner.northing + Metres(50000)}});
    EXPECT_NEAR(centre->latitude.value(), sexagesimal(32, 59, 14.1), 0.05 / 3600);
    EXPECT_NEAR(centre->longitude.value(), sexagesimal(44, 27, 53.4), 0.05 / 3600);
}

TEST(ParsePoint, ReadsUtmInItsUsualWritings) {
    for (const char* text :
         {"18N 323483 4306479", "18n 323483 4306479", "18 N 323483 4306479", "18N 323483, 4306479",
          "18 north 323483 4306479", "18north 323483.0 4306479.0", "UTM 18N 323483 4306479", "323483 4306479 18N",
          "18N 323483mE 4306479mN", "18N 323483 mE 4306479 mN", "18N 323483E 4306479N", "18N 323483m 4306479m"}) {
        expectGrid(text, kZone18, 323483, 4306479, std::nullopt);
    }
    expectGrid("18N 323483.168 4306479.498", kZone18, 323483.168, 4306479.498, std::nullopt);
    expectGrid("56s 334873 6252266", {56, Hemisphere::South}, 334873, 6252266, std::nullopt);
}

TEST(ParsePoint, ReadsUps) {
    expectGrid("n 2000000 1555731.570643", {0, Hemisphere::North}, 2000000, 1555731.570643, std::nullopt);
    expectGrid("s 2746000 1515000", {0, Hemisphere::South}, 2746000, 1515000, std::nullopt);
    expectGrid("UPS south 2746000 1515000", {0, Hemisphere::South}, 2746000, 1515000, std::nullopt);
    expectGrid("Z 2000000 1555731", {0, Hemisphere::North}, 2000000, 1555731, std::nullopt);
    expectGrid("B 2746000 1515000", {0, Hemisphere::South}, 2746000, 1515000, std::nullopt);
}

TEST(ParsePoint, TakesABandForTheHemisphereWhereTheNumbersAgree) {
    expectGrid("30U 699316 5710163", {30, Hemisphere::North}, 699316, 5710163, std::nullopt);
    expectGrid("56H 334873 6252266", {56, Hemisphere::South}, 334873, 6252266, std::nullopt);
}

/// S is the southern hemisphere, and the band from 32 to 40 north: only where the north is impossible is it taken.
TEST(ParsePoint, TakesSForTheSouthWhereBandSIsImpossible) {
    expectGrid("18S 323483 8306479", {18, Hemisphere::South}, 323483, 8306479, std::nullopt);
    expectGrid("18 south 323483 4306479", {18, Hemisphere::South}, 323483, 4306479, std::nullopt);
    EXPECT_EQ(parsePoint("18S 323483 4306479").error().fault, kAmbiguousLetter);
    EXPECT_EQ(parsePoint("18s 323483 4306479").error().fault, kAmbiguousLetter);
}

TEST(ParsePoint, ReadsDecimalDegreesInTheirUsualWritings) {
    for (const char* text :
         {"38.889467 -77.035240",         "38.889467, -77.035240",          "38.889467,-77.035240",
          "38.889467;-77.035240",         "+38.889467 -77.035240",          "38.889467N 77.035240W",
          "38.889467 N 77.035240 W",      "N38.889467 W77.035240",          "N 38.889467, W 77.035240",
          "77.035240W 38.889467N",        "W77.035240 N38.889467",          "38.889467° -77.035240°",
          "38.889467°N, 77.035240°W",     "38.889467n 77.035240w",          "38,889467 -77,035240",
          "38,889467; -77,035240",        "38.889467 \u221277.035240",      "+38.889467-077.035240/",
          "lat 38.889467 lon -77.035240", "lon: -77.035240 lat: 38.889467", "Latitude=38.889467, Longitude=-77.035240",
          "\ufeff38.889467 -77.035240"}) {
        expectPlace(text, 38.889467, -77.035240);
    }
    expectPlace("-36 -137", -36, -137);
    expectPlace("0 0", 0, 0);
    expectPlace("46,31", 46, 31);
    expectPlace("10 180", 10, -180);
}

TEST(ParsePoint, ReadsDegreesAndMinutes) {
    for (const char* text : {"38 53.36802 -77 2.1144", "38 53.36802N 77 2.1144W", "38°53.36802'N 77°2.1144'W",
                             "38° 53.36802′ N, 77° 2.1144′ W", "N38 53.36802 W077 02.1144", "38:53.36802 -77:02.1144",
                             "3853.36802N 07702.1144W", "38 deg 53.36802 min N 77 deg 2.1144 min W"}) {
        expectPlace(text, 38 + 53.36802 / 60, -(77 + 2.1144 / 60));
    }
}

TEST(ParsePoint, ReadsDegreesMinutesAndSeconds) {
    for (const char* text :
         {"38 53 22.08N 77 02 06.86W", "38 53 22.08 -77 02 06.86", "38°53'22.08\"N 77°02'06.86\"W",
          "38° 53′ 22.08″ N, 77° 02′ 06.86″ W", "38:53:22.08N 77:02:06.86W", "N 38 53 22.08 W 77 02 06.86",
          "38d53'22.08\"N 77d02'06.86\"W", "385322.08N 0770206.86W", "77 02 06.86W 38 53 22.08N",
          "38°53’22.08”N 77°02’06.86”W", "38 deg 53 min 22.08 sec N, 77 deg 2 min 6.86 sec W"}) {
        expectPlace(text, sexagesimal(38, 53, 22.08), -sexagesimal(77, 2, 6.86));
    }
}

TEST(ParsePoint, KeepsTheSignOfNoughtDegrees) {
    expectPlace("51 30 26 -0 7 40", sexagesimal(51, 30, 26), -sexagesimal(0, 7, 40));
    expectPlace("-0 30, 10 0", -0.5, 10);
}

TEST(ParsePoint, ReadsAnglesOfUnequalLengthWhereSomethingPartsThem) {
    expectPlace("38 53.5, -77", 38 + 53.5 / 60, -77);
    expectPlace("38N 77 30W", 38, -77.5);
}

}  // namespace
}  // namespace crosstick::geodesy
