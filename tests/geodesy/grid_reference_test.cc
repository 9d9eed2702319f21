#include "core/geodesy/grid_reference.h"

#include <cmath>
#include <random>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "core/geodesy/faults.h"
#include "core/geodesy/geodesic.h"
#include "core/geodesy/plane_angles.h"
#include "outside_program.h"

namespace crosstick::geodesy {
namespace {

GeoPoint place(double latitude, double longitude) {
    return {Degrees(latitude), Degrees(longitude)};
}

constexpr Zone north(int number) {
    return {number, Hemisphere::North};
}
constexpr Zone south(int number) {
    return {number, Hemisphere::South};
}

GridPoint point(Zone zone, double easting, double northing) {
    return {zone, {Metres(easting), Metres(northing)}};
}

void expectAt(const Result<GridPoint>& found, Zone zone, double easting, double northing, double tolerance) {
    ASSERT_TRUE(found);
    EXPECT_EQ(found->zone, zone);
    EXPECT_NEAR(found->at.easting.value(), easting, tolerance);
    EXPECT_NEAR(found->at.northing.value(), northing, tolerance);
}

std::string metreMgrs(double latitude, double longitude) {
    return mgrs(gridPoint(place(latitude, longitude)).value(), Digits::Metre).value();
}

// PROJ documentation, page on utm.
TEST(Utm, AgreesWithProjsExamples) {
    expectAt(gridPoint(place(56, 12), north(32)), north(32), 687071.44, 6210141.33, 0.005);
    expectAt(gridPoint(place(-44, 174), south(59)), south(59), 740526.32, 5123750.87, 0.005);
    EXPECT_EQ(gridPoint(place(-44, 174))->zone, south(60));  // its natural zone is the next one
}

// Tests of GeographicLib's GeoConvert.
TEST(Ups, AgreesWithTheLibrarysCheckValue) {
    expectAt(gridPoint(place(86, 0)), north(0), 2000000, 1555731.570643, 5e-7);
}

// Common practice (zone exceptions of Norway and Svalbard), recomputed.
TEST(Zones, HaveTheirExceptions) {
    const auto zoneAt = [](double latitude, double longitude) { return gridPoint(place(latitude, longitude))->zone; };
    EXPECT_EQ(zoneAt(60, 5), north(32));
    EXPECT_EQ(zoneAt(60, 4), north(32));
    EXPECT_EQ(zoneAt(55.9, 5), north(31));
    EXPECT_EQ(zoneAt(72, 9.1), north(33));
    EXPECT_EQ(zoneAt(72, 21), north(35));
    EXPECT_EQ(zoneAt(78, 33), north(37));
    EXPECT_EQ(zoneAt(78, 5), north(31));
    EXPECT_EQ(metreMgrs(60, 5).substr(0, 3), "32V");
    EXPECT_EQ(metreMgrs(72, 9.1).substr(0, 3), "33X");
}

// FGDC-STD-011-2001 US National Grid, 5.2.2 and Table 1. Rounding would give 235 065 and 2348 0648.
TEST(Mgrs, DigitsAreTruncatedNotRounded) {
    const GridPoint fgdc = point(north(18), 323483.168, 4306479.498);
    EXPECT_EQ(mgrs(fgdc, Digits::Metre), "18SUJ2348306479");
    EXPECT_EQ(mgrs(fgdc, Digits::Ten), "18SUJ23480647");
    EXPECT_EQ(mgrs(fgdc, Digits::Hundred), "18SUJ234064");
    EXPECT_EQ(mgrs(fgdc, Digits::Kilometre), "18SUJ2306");
    EXPECT_EQ(mgrs(fgdc, Digits::TenKilometres), "18SUJ20");
    EXPECT_EQ(mgrs(fgdc, Digits::SquareOnly), "18SUJ");
    const GeoPoint corner = geographic(fgdc).value();
    EXPECT_NEAR(corner.latitude.value(), 38.889467310, 1e-9);
    EXPECT_NEAR(corner.longitude.value(), -77.035240216, 1e-9);
}

TEST(Mgrs, NearlyTheNextMetreIsStillThisOne) {
    EXPECT_EQ(mgrs(point(north(18), 323483.999999, 4306479.999999), Digits::Metre), "18SUJ2348306479");
    EXPECT_EQ(mgrs(point(north(18), 323489.999999, 4306479.999999), Digits::Ten), "18SUJ23480647");
}

// Tests of GeographicLib's GeoConvert.
TEST(Mgrs, AgreesWithTheLibrarysCheckValues) {
    EXPECT_EQ(mgrs(gridPoint(place(33.3, 44.4)).value(), Digits::Kilometre), "38SMB4484");
    EXPECT_EQ(mgrs(point(south(0), 2746000, 1515000), Digits::TenKilometres), "BKH41");
    EXPECT_EQ(mgrs(point(south(0), 2746000, 1515000), Digits::SquareOnly), "BKH");
}

// Own figures, by GeographicLib and PROJ: edges of bands, zones and hemispheres.
TEST(Mgrs, HoldsAtTheEdges) {
    EXPECT_EQ(metreMgrs(84, 0), "ZAA0000033272");
    EXPECT_EQ(metreMgrs(-80, 0), "31CDM4186716915");
    EXPECT_EQ(metreMgrs(0, 180), "01NAA6602100000");
    EXPECT_EQ(metreMgrs(-0.0001, 0), "31MAV6602199988");
    EXPECT_EQ(metreMgrs(51.5074, -0.1278), "30UXC9931610163");
    expectAt(gridPoint(place(51.5074, -0.1278)), north(30), 699316.234, 5710163.758, 5e-4);
    EXPECT_NEAR(gridPoint(place(-0.0001, 0))->at.northing.value(), 9999988.93, 0.01);
}

TEST(MgrsParts, StandApartAsPeopleReadThem) {
    const auto parts = mgrsParts(point(north(25), 654270.5, 5098060.2), Digits::Ten).value();
    EXPECT_EQ(parts.zone, "25T");
    EXPECT_EQ(parts.square + ' ' + parts.easting + ' ' + parts.northing, "FL 5427 9806");
    const auto polar = mgrsParts(gridPoint(place(84, 0)).value(), Digits::Kilometre).value();
    EXPECT_EQ(polar.zone + '|' + polar.square + '|' + polar.easting + '|' + polar.northing, "Z|AA|00|33");
}

TEST(Mgrs, IsRefusedBeyondItsLetters) {
    const auto beyond = mgrs(point(north(18), 20000, 4306479), Digits::Metre);
    ASSERT_FALSE(beyond);
    EXPECT_EQ(beyond.error().fault, kNoMgrs);
}

/// Own figures of zone 31, by GeographicLib and PROJ.
struct FactorsRow {
    double latitude, longitude, easting, northing, convergence, scale;
};

TEST(Factors, AgreeWithTheTableOfZone31) {
    for (const FactorsRow& row :
         {FactorsRow{0, 3, 500000.000, 0, 0, 0.9996}, FactorsRow{45, 3, 500000.000, 4982950.400, 0, 0.9996},
          FactorsRow{0, 6, 833978.557, 0, 0, 1.000981062},
          FactorsRow{30, 6, 789409.653, 3322575.904, 1.5010445, 1.000633517},
          FactorsRow{45, 6, 736446.026, 4987329.505, 2.1222997, 1.000287498},
          FactorsRow{60, 6, 667294.821, 6655205.484, 2.5986727, 0.999942995},
          FactorsRow{52, 0, 294071.081, 5765288.255, -2.3648575, 1.000120624},
          FactorsRow{52, 5, 637294.366, 5762926.813, 1.5762660, 0.999831407},
          FactorsRow{-33, 6, 780299.990, 6344714.146, -1.6349830, 1.000568860}}) {
        SCOPED_TRACE(fmt::format("{} {}", row.latitude, row.longitude));
        const auto found = gridPoint(place(row.latitude, row.longitude), row.latitude < 0 ? south(31) : north(31));
        expectAt(found, row.latitude < 0 ? south(31) : north(31), row.easting, row.northing, 5e-4);
        const auto at = factors(*found).value();
        EXPECT_NEAR(at.convergence.value(), row.convergence, 5e-8);
        EXPECT_NEAR(at.scale, row.scale, 5e-10);
    }
}

// FM 3-25.26 ch. 5, in figures: on the central meridian 1000 m of grid are 1000.40 m of ellipsoid, at the zone's edge
// on the equator 999.02 m.
TEST(Factors, TurnGridMetresIntoGroundMetres) {
    EXPECT_NEAR(1000 / factors(point(north(31), 500000, 0))->scale, 1000.40, 0.005);
    EXPECT_NEAR(1000 / factors(gridPoint(place(0, 6), north(31)).value())->scale, 999.02, 0.005);
}

constexpr double sexagesimal(double degrees, double minutes, double seconds) {
    return degrees + minutes / 60 + seconds / 3600;
}

// ICSM GDA Technical Manual (MGA zone 55). It prints convergence with the other sign: grid = true + its convergence.
TEST(Factors, AgreeWithFlindersPeak) {
    const GeoPoint flindersPeak = place(-sexagesimal(37, 57, 3.72030), sexagesimal(144, 25, 29.52440));
    const GeoPoint buninyong = place(-sexagesimal(37, 39, 10.15610), sexagesimal(143, 55, 35.38390));
    const auto peak = gridPoint(flindersPeak, south(55));
    expectAt(peak, south(55), 273741.297, 5796489.777, 1e-3);
    const auto atPeak = factors(*peak).value();
    EXPECT_NEAR(atPeak.scale, 1.00023056, 5e-9);
    EXPECT_NEAR(atPeak.convergence.value(), 1.584346456, 1e-8);
    EXPECT_NEAR(atPeak.convergence.value(), sexagesimal(1, 35, 3.65), 0.005 / 3600);

    const auto far = gridPoint(buninyong, south(55));
    expectAt(far, south(55), 228854.051, 5828259.038, 1e-3);
    EXPECT_NEAR(factors(*far)->scale, 1.00050567, 5e-9);
    EXPECT_NEAR(factors(*far)->convergence.value(), 1.878671808, 1e-8);
    expectAt(gridPoint(buninyong), south(54), 758173.797, 5828674.340, 1e-3);  // the zone that it lies in by itself

    EXPECT_NEAR(planeDistance(peak->at, far->at).value(), 54992.279, 1e-3);
    EXPECT_NEAR(planeAzimuth(peak->at, far->at).value(), 305.289218, 5e-7);
    // True azimuth less convergence is the manual's grid bearing, 305 17 01.72; the plane's differs by the arc's bend.
    const Geodesic line = geodesic(flindersPeak, buninyong);
    EXPECT_NEAR((line.azimuthAtStart - atPeak.convergence).value(), sexagesimal(305, 17, 1.72), 0.01 / 3600);
}

TEST(ForcedZone, KeepsItsHemisphereAcrossTheEquator) {
    expectAt(gridPoint(place(-0.001, 3), north(31)), north(31), 500000, -110.53, 0.01);
    expectAt(gridPoint(place(0.001, 3), south(31)), south(31), 500000, 10000110.53, 0.01);
}

TEST(ForcedZone, IsRefusedWhereItDoesNotReach) {
    const auto far = gridPoint(place(10, 170), north(31));
    ASSERT_FALSE(far);
    EXPECT_EQ(far.error().fault, kOutsideZone);
}

TEST(GridPoint, RefusesLatitudesThatAreNot) {
    for (const double latitude : {90.0001, -91.0, std::nan("")}) {
        const auto found = gridPoint(place(latitude, 0));
        ASSERT_FALSE(found);
        EXPECT_EQ(found.error().fault, kBadLatitude);
    }
    EXPECT_FALSE(gridPoint(place(10, std::nan(""))));
}

TEST(Geographic, RefusesWhatIsOffTheGrid) {
    const auto off = geographic(point(north(18), 4306479, 323483));
    ASSERT_FALSE(off);
    EXPECT_EQ(off.error().fault, kOffGrid);
}

std::vector<GeoPoint> placesEverywhere(unsigned seed, int count) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> height(-1, 1);
    std::uniform_real_distribution<double> longitude(-180, 180);
    std::vector<GeoPoint> places;
    places.reserve(static_cast<std::size_t>(count));
    for (int n = 0; n < count; ++n) {
        places.push_back(place(std::asin(height(random)) * 180 / M_PI, longitude(random)));
    }
    return places;
}

// To the last digit: the same text from the program that the library comes with.
TEST(Grid, AgreesWithGeoConvertToTheLastDigit) {
    constexpr unsigned kSeed = 18323483;
    SCOPED_TRACE(kSeed);
    const auto places = placesEverywhere(kSeed, 500);
    std::vector<std::string> lines;
    lines.reserve(places.size());
    for (const GeoPoint& p : places) {
        lines.push_back(fmt::format("{} {}", p.latitude.value(), p.longitude.value()));
    }
    const auto utm = answersOf("GeoConvert -u -p 6", lines);
    const auto letters = answersOf("GeoConvert -m", lines);
    const auto grid = answersOf("GeoConvert -c -p 6", lines);
    ASSERT_EQ(utm.size(), lines.size()) << utm[0];
    ASSERT_EQ(letters.size(), lines.size());
    ASSERT_EQ(grid.size(), lines.size());
    for (std::size_t n = 0; n < lines.size(); ++n) {
        const GridPoint ours = gridPoint(places[n]).value();
        const std::string zone = ours.zone.number == 0 ? std::string{} : fmt::format("{:02}", ours.zone.number);
        ASSERT_EQ(fmt::format("{}{} {:.6f} {:.6f}", zone, ours.zone.hemisphere == Hemisphere::North ? 'n' : 's',
                              ours.at.easting.value(), ours.at.northing.value()),
                  utm[n]);
        ASSERT_EQ(mgrs(ours, Digits::Metre), letters[n]) << lines[n];
        const auto at = factors(ours).value();
        ASSERT_NEAR(std::remainder(at.convergence.value() - numbersIn(grid[n]).at(0), 360), 0, 1e-9) << lines[n];
        ASSERT_NEAR(at.scale, numbersIn(grid[n]).at(1), 1e-11) << lines[n];
    }
}

// Another implementation of the projection.
TEST(Grid, AgreesWithCs2cs) {
    constexpr unsigned kSeed = 5041;
    SCOPED_TRACE(kSeed);
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> latitude(-79, 83);
    std::uniform_real_distribution<double> east(-3, 3);
    std::vector<std::string> lines;
    std::vector<GridPoint> ours;
    for (int n = 0; n < 200; ++n) {
        const GeoPoint p = place(latitude(random), 33 + east(random));
        ours.push_back(gridPoint(p, north(36)).value());
        lines.push_back(fmt::format("{} {}", p.latitude.value(), p.longitude.value()));
    }
    const auto answers = answersOf("cs2cs -f %.6f EPSG:4326 EPSG:32636", lines);
    ASSERT_EQ(answers.size(), lines.size()) << answers[0];
    for (std::size_t n = 0; n < lines.size(); ++n) {
        ASSERT_NEAR(numbersIn(answers[n]).at(0), ours[n].at.easting.value(), 1e-5) << lines[n];
        ASSERT_NEAR(numbersIn(answers[n]).at(1), ours[n].at.northing.value(), 1e-5) << lines[n];
    }
}

}  // namespace
}  // namespace crosstick::geodesy
