#include "core/geodesy/declination.h"

#include <array>
#include <cmath>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "core/geodesy/faults.h"
#include "core/geodesy/grid_reference.h"
#include "core/geodesy/plane_angles.h"
#include "outside_program.h"
#include "tests/places.h"

namespace crosstick::geodesy {
namespace {

const MagneticModel& model() {
    static const MagneticModel kModel = MagneticModel::open(places::share() / "magnetic").value();
    return kModel;
}

CalendarDate date(const char* text) {
    return parseIsoDate(text).value();
}

GeoPoint place(double latitude, double longitude) {
    return {Degrees(latitude), Degrees(longitude > 180 ? longitude - 360 : longitude)};
}

/// A row of the WMM2025 report's tables of test values (NOAA/NCEI and BGS), with the horizontal field as an independent
/// evaluation of the coefficients gives it.
struct Row {
    const char* date;
    double kilometres, latitude, longitude, declination, horizontal;
};

// 2027.5 is no whole day: 2 July 2027 is 2027.4986, and the declination moves by at most 0.53 degree a year here, so by
// 0.0007 degree; the tolerance of 0.01 holds it.
constexpr std::array kPublished{
    Row{"2025-01-01", 0, 80, 0, 1.28, 6523.2},       Row{"2025-01-01", 0, 0, 120, -0.16, 39677.9},
    Row{"2025-01-01", 0, -80, 240, 68.78, 16898.1},  Row{"2025-01-01", 100, 80, 0, 0.85, 6216.7},
    Row{"2025-01-01", 100, 0, 120, -0.15, 37688.7},  Row{"2025-01-01", 100, -80, 240, 68.21, 15917.2},
    Row{"2027-07-02", 0, 80, 0, 2.59, 6507.5},       Row{"2027-07-02", 0, 0, 120, -0.24, 39702.0},
    Row{"2027-07-02", 0, -80, 240, 68.49, 16908.3},  Row{"2027-07-02", 100, 80, 0, 2.16, 6201.1},
    Row{"2027-07-02", 100, 0, 120, -0.23, 37711.8},  Row{"2027-07-02", 100, -80, 240, 67.93, 15927.0},
    Row{"2025-01-01", 48, 80, -96, -29.91, 2164.3},  Row{"2025-01-01", 18, 0, 21, 1.29, 29282.2},
    Row{"2025-07-02", 6, -36, -137, 20.28, 25353.2},
};

TEST(Declination, AgreesWithThePublishedRowsAtTheirOwnHeights) {
    for (const Row& row : kPublished) {
        SCOPED_TRACE(fmt::format("{} {} km {} {}", row.date, row.kilometres, row.latitude, row.longitude));
        const auto found =
            model().at(place(row.latitude, row.longitude), date(row.date), Metres(row.kilometres * 1000));
        ASSERT_TRUE(found);
        EXPECT_NEAR(found->declination.value(), row.declination, 0.01);
        EXPECT_NEAR(found->horizontal.value(), row.horizontal, 0.1 + 0.05);
    }
}

// The report's row at 89 N 121 W, 28 km has 1504 nT, less than a compass can use: its -99.77 degrees are withheld.
TEST(Declination, IsRefusedWhereTheHorizontalFieldIsUnder2000Nanotesla) {
    const auto found = model().at(place(89, -121), date("2025-01-01"), Metres(28000));
    ASSERT_FALSE(found);
    EXPECT_EQ(found.error().fault, kWeakField);
}

// NOAA/NCEI's calculator for 4 July 2026 at sea level, to its five decimals. Its places are given to four.
TEST(Declination, AgreesWithNoaasCalculator) {
    const auto at = [](double latitude, double longitude) {
        return model().at(place(latitude, longitude), date("2026-07-04"), Metres(0)).value().declination.value();
    };
    EXPECT_NEAR(at(-33.8688, 151.2093), 12.82083, 0.005);
    EXPECT_NEAR(at(51.5074, -0.1278), 1.16280, 0.005);
    EXPECT_NEAR(at(64.1466, -21.9426), -11.13349, 0.005);
}

// WMM2025 report: one sigma = sqrt(0.26^2 + (5417 nT / H)^2); 0.29 degree at 41,875 nT.
TEST(Declination, BearsItsSigma) {
    const auto found = model().at(place(0, 120), date("2025-01-01"), Metres(0)).value();
    EXPECT_NEAR(found.sigma.value(), std::hypot(0.26, 5417 / found.horizontal.value()), 1e-12);
    EXPECT_NEAR(std::hypot(0.26, 5417.0 / 41875), 0.2904, 5e-5);
    const auto polar = model().at(place(80, -96), date("2025-01-01"), Metres(48000)).value();
    EXPECT_NEAR(polar.sigma.value(), std::hypot(0.26, 5417 / 2164.3), 1e-3);
}

TEST(Declination, HoldsFrom2025To2030OnlyAndSaysSoOutside) {
    const GeoPoint here = place(46, -31);
    for (const char* inside : {"2025-01-01", "2029-12-31", "2030-01-01"}) {
        EXPECT_TRUE(model().at(here, date(inside), Metres(0))) << inside;
    }
    for (const char* outside : {"2024-12-31", "2030-01-02", "2031-06-01", "1999-01-01"}) {
        const auto found = model().at(here, date(outside), Metres(0));
        ASSERT_FALSE(found) << outside;
        EXPECT_EQ(found.error().fault, kDateOutsideModel);
    }
}

TEST(Declination, IsRefusedOutsideTheModelsHeights) {
    const GeoPoint here = place(46, -31);
    EXPECT_TRUE(model().at(here, date("2027-03-13"), Metres(-1000)));
    EXPECT_TRUE(model().at(here, date("2027-03-13"), Metres(850000)));
    for (const double height : {-1001.0, 850001.0, std::nan("")}) {
        const auto found = model().at(here, date("2027-03-13"), Metres(height));
        ASSERT_FALSE(found) << height;
        EXPECT_EQ(found.error().fault, kHeightOutsideModel);
    }
}

// The hand check of the demo's sheet centre and corners (MagneticField and an independent evaluation agree).
TEST(Declination, AgreesWithTheHandCheckOfTheDemosSheet) {
    struct Check {
        double easting, northing;
        const char* date;
        double declination;
    };
    for (const Check& check :
         {Check{654000, 5100500, "2027-03-13", -9.461137}, Check{655022.018, 5100534.110, "2027-03-13", -9.456198},
          Check{656020.220, 5099993.990, "2027-03-13", -9.450534}, Check{649000, 5096000, "2027-03-13", -9.47893},
          Check{659000, 5105000, "2027-03-13", -9.44330}, Check{654000, 5100500, "2025-01-01", -9.90526},
          Check{654000, 5100500, "2028-01-01", -9.29881}}) {
        const GridPoint point{{25, Hemisphere::North}, {Metres(check.easting), Metres(check.northing)}};
        const auto found = model().at(geographic(point).value(), date(check.date), Metres(0)).value();
        EXPECT_NEAR(found.declination.value(), check.declination, 1e-5) << check.easting << ' ' << check.date;
    }
}

// London on 4 July 2026: declination is east, the G-M angle west, because convergence is the greater.
TEST(Declination, GivesAWesterlyGmAngleInLondon) {
    const GeoPoint london = place(51.5074, -0.1278);
    const auto found = model().at(london, date("2026-07-04"), Metres(0)).value();
    const auto grid = factors(gridPoint(london).value()).value();
    EXPECT_NEAR(gmAngle(found.declination, grid.convergence).value(), -1.086, 1e-3);
}

TEST(MagneticModel, SaysWhereItIsMissing) {
    const auto missing = MagneticModel::open(testing::TempDir() + "no-such-folder");
    ASSERT_FALSE(missing);
    EXPECT_EQ(missing.error().fault, kNoMagneticModel);
}

// The same files by the library's own program.
TEST(Declination, AgreesWithMagneticField) {
    const std::vector<std::string> lines{"2027-03-13 46.040741953599 -31.009690947763 0", "2025-07-02 -36 -137 6000"};
    const auto answers =
        answersOf("MagneticField -n wmm2025 -d " + (places::share() / "magnetic").string() + " -p 6", lines);
    ASSERT_EQ(answers.size(), 2U) << answers[0];
    EXPECT_NEAR(numbersIn(answers[0]).at(0), -9.461137, 5e-6);
    const auto ours = model().at(place(-36, -137), date("2025-07-02"), Metres(6000)).value();
    EXPECT_NEAR(numbersIn(answers[1]).at(0), ours.declination.value(), 1e-5);
}

}  // namespace
}  // namespace crosstick::geodesy
