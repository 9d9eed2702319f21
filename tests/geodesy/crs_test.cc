#include "core/geodesy/crs.h"

#include <array>
#include <cmath>
#include <random>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "core/geodesy/faults.h"
#include "outside_program.h"

namespace crosstick::geodesy {
namespace {

PlanePoint at(double easting, double northing) {
    return {Metres(easting), Metres(northing)};
}

double apart(PlanePoint a, PlanePoint b) {
    return std::hypot((a.easting - b.easting).value(), (a.northing - b.northing).value());
}

/// A grid as sheets are printed on, and a place on it.
struct Sheet {
    const char* crs;
    const char* datum;
    const char* projection;
    double metresPerUnit;
    bool northingFirst;        ///< the order that the authority gives, which cs2cs keeps
    double easting, northing;  ///< in its own unit
    int zone;                  ///< of WGS 84 there
};

constexpr double kSurveyFoot = 1200.0 / 3937;

constexpr std::array kSheets{
    Sheet{"EPSG:23032", "ED50", "UTM zone 32 north", 1, false, 500000, 5500000, 32},
    Sheet{"EPSG:26711", "NAD27", "UTM zone 11 north", 1, false, 500000, 4100000, 11},
    Sheet{"EPSG:26705", "NAD27", "UTM zone 5 north", 1, false, 500000, 7000000, 5},
    Sheet{"EPSG:27700", "OSGB36", "Transverse Mercator", 1, false, 450000, 300000, 30},
    Sheet{"EPSG:2056", "CH1903+", "Hotine Oblique Mercator (variant B)", 1, false, 2600000, 1200000, 32},
    Sheet{"EPSG:31467", "DHDN", "Transverse Mercator", 1, true, 3500000, 5500000, 32},
    Sheet{"EPSG:2263", "NAD83", "Lambert Conic Conformal (2SP)", kSurveyFoot, false, 1000000, 200000, 18},
    Sheet{"EPSG:25832", "ETRS89", "UTM zone 32 north", 1, false, 560000, 5800000, 32},
    Sheet{"EPSG:32661", "WGS 84", "Polar Stereographic (variant A)", 1, true, 2100000, 1700000, 0},
    Sheet{"EPSG:5041", "WGS 84", "Polar Stereographic (variant A)", 1, false, 2100000, 1700000, 0},
    Sheet{"EPSG:5042", "WGS 84", "Polar Stereographic (variant A)", 1, false, 2746000, 1515000, 0},
    Sheet{"EPSG:32625", "WGS 84", "UTM zone 25 north", 1, false, 654000, 5100500, 25},
};

TEST(CrsFacts, AreThoseOfASheetsMargin) {
    for (const Sheet& sheet : kSheets) {
        SCOPED_TRACE(sheet.crs);
        const auto facts = describeCrs(sheet.crs);
        ASSERT_TRUE(facts);
        EXPECT_EQ(facts->authority, sheet.crs);
        EXPECT_EQ(facts->datum, sheet.datum);
        EXPECT_EQ(facts->projection, sheet.projection);
        EXPECT_NEAR(facts->metresPerUnit, sheet.metresPerUnit, 1e-15);
        EXPECT_EQ(facts->onWgs84, std::string_view(sheet.datum) == "WGS 84");
    }
    EXPECT_EQ(describeCrs("EPSG:23032")->ellipsoid, "International 1924");
    EXPECT_EQ(describeCrs("EPSG:32625")->utm, (Zone{25, Hemisphere::North}));
    EXPECT_EQ(describeCrs("EPSG:23032")->utm, (Zone{32, Hemisphere::North}));
    EXPECT_EQ(describeCrs("EPSG:32759")->utm, (Zone{59, Hemisphere::South}));
    EXPECT_FALSE(describeCrs("EPSG:27700")->utm);
    EXPECT_FALSE(describeCrs("EPSG:5041")->utm);
}

/// WKT 1 as older files have it, without an authority's number, on WGS 84 and with parameters for the way there.
constexpr const char* kPlainWkt =
    "PROJCS[\"WGS 84 / UTM zone 25N\",GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS "
    "84\",6378137,298.257223563]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]],PROJECTION[\"Transverse_"
    "Mercator\"],PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",-33],PARAMETER[\"scale_factor\",0."
    "9996],PARAMETER[\"false_easting\",500000],PARAMETER[\"false_northing\",0],UNIT[\"metre\",1]]";
constexpr const char* kBoundWkt =
    "PROJCS[\"unnamed\",GEOGCS[\"unnamed\",DATUM[\"European_Datum_1950\",SPHEROID[\"International "
    "1924\",6378388,297],TOWGS84[-87,-98,-121,0,0,0,0]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]],"
    "PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",9],"
    "PARAMETER["
    "\"scale_factor\",0.9996],PARAMETER[\"false_easting\",500000],PARAMETER[\"false_northing\",0],UNIT[\"metre\",1]]";
constexpr const char* kCompound = "EPSG:23032+5783";

TEST(CrsFacts, ReadWktAndTakeTheHorizontalPart) {
    const auto plain = describeCrs(kPlainWkt);
    ASSERT_TRUE(plain);
    EXPECT_TRUE(plain->onWgs84);
    EXPECT_EQ(plain->projection, "UTM zone 25 north");
    const auto bound = describeCrs(kBoundWkt);
    ASSERT_TRUE(bound);
    EXPECT_EQ(bound->datum, "ED50");
    EXPECT_EQ(bound->ellipsoid, "International 1924");
    const auto compound = describeCrs(kCompound);
    ASSERT_TRUE(compound);
    EXPECT_EQ(compound->datum, "ED50");
    EXPECT_EQ(compound->authority, "EPSG:23032");
}

TEST(CrsFacts, RefuseWhatHasNoPlane) {
    for (const char* crs : {"EPSG:4326", "EPSG:4979", "EPSG:4978", "OGC:CRS84"}) {
        const auto facts = describeCrs(crs);
        ASSERT_FALSE(facts) << crs;
        EXPECT_EQ(facts.error().fault, kCrsNotProjected) << crs;
    }
    for (const char* crs : {"", "EPSG:999999", "nonsense", "PROJCS[\"cut", "EPSG:5783x", "+proj=pipeline"}) {
        const auto facts = describeCrs(crs);
        ASSERT_FALSE(facts) << crs;
        EXPECT_EQ(facts.error().fault, kUnknownCrs) << crs;
    }
    EXPECT_FALSE(describeCrs("EPSG:5783")) << "a height system alone has no plane";
}

TEST(CrsOfZone, NamesTheZonesOfWgs84) {
    EXPECT_EQ(crsOfZone({25, Hemisphere::North}), "EPSG:32625");
    EXPECT_EQ(crsOfZone({1, Hemisphere::South}), "EPSG:32701");
    EXPECT_EQ(crsOfZone({0, Hemisphere::North}), "EPSG:5041");
    EXPECT_EQ(crsOfZone({0, Hemisphere::South}), "EPSG:5042");
    for (int number = 1; number <= 60; ++number) {
        for (const Hemisphere side : {Hemisphere::North, Hemisphere::South}) {
            EXPECT_EQ(describeCrs(crsOfZone({number, side}))->utm, (Zone{number, side}));
        }
    }
}

std::string zoneCrs(const Sheet& sheet) {
    return crsOfZone({sheet.zone, std::string_view(sheet.crs) == "EPSG:5042" ? Hemisphere::South : Hemisphere::North});
}

std::string inAuthoritysOrder(const Sheet& sheet, double easting, double northing) {
    return sheet.northingFirst ? fmt::format("{:.9f} {:.9f}", northing, easting)
                               : fmt::format("{:.9f} {:.9f}", easting, northing);
}

// The same by PROJ's own program, which keeps each authority's axes and units: to 0.1 mm over a sheet of 20 km.
TEST(PlaneLink, AgreesWithCs2csOverWholeSheets) {
    for (const Sheet& sheet : kSheets) {
        SCOPED_TRACE(sheet.crs);
        const auto link = PlaneLink::between(sheet.crs, zoneCrs(sheet));
        ASSERT_TRUE(link);
        std::vector<std::string> lines;
        std::vector<PlanePoint> ours;
        for (const double east : {-10000.0, 0.0, 10000.0}) {
            for (const double north : {-10000.0, 0.0, 10000.0}) {
                const double x = sheet.easting + east / sheet.metresPerUnit;
                const double y = sheet.northing + north / sheet.metresPerUnit;
                lines.push_back(inAuthoritysOrder(sheet, x, y));
                ours.push_back(link->forward(at(x * sheet.metresPerUnit, y * sheet.metresPerUnit)).value());
            }
        }
        const auto answers = answersOf(fmt::format("cs2cs -f %.6f {} {}", sheet.crs, zoneCrs(sheet)), lines);
        ASSERT_EQ(answers.size(), lines.size()) << answers[0];
        for (std::size_t n = 0; n < lines.size(); ++n) {
            const auto theirs = numbersIn(answers[n]);
            EXPECT_LT(apart(ours[n], at(theirs.at(0), theirs.at(1))), 1e-4) << lines[n] << " gives " << answers[n];
        }
    }
}

TEST(PlaneLink, ThereAndBackClose) {
    constexpr unsigned kSeed = 23032;
    SCOPED_TRACE(kSeed);
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> off(-15000, 15000);
    for (const Sheet& sheet : kSheets) {
        SCOPED_TRACE(sheet.crs);
        const auto link = PlaneLink::between(sheet.crs, zoneCrs(sheet)).value();
        for (int n = 0; n < 200; ++n) {
            const PlanePoint from = at(sheet.easting * sheet.metresPerUnit + off(random),
                                       sheet.northing * sheet.metresPerUnit + off(random));
            const auto there = link.forward(from);
            ASSERT_TRUE(there);
            ASSERT_LT(apart(link.inverse(*there).value(), from), 1e-6);
        }
    }
}

TEST(PlaneLink, OfAPlaneToItselfTouchesNothing) {
    for (const auto& [from, to] : {std::pair{"EPSG:23032", "EPSG:23032"}, std::pair{kPlainWkt, "EPSG:32625"}}) {
        const auto link = PlaneLink::between(from, to).value();
        EXPECT_TRUE(link.isIdentity());
        const PlanePoint any = at(654000.123456789, 5100500.987654321);
        EXPECT_EQ(link.forward(any).value(), any);
        EXPECT_EQ(link.inverse(any).value(), any);
    }
    EXPECT_FALSE(PlaneLink::between("EPSG:23032", "EPSG:32632")->isIdentity());
}

// Sheets on ED50 lie some 80 m east and 200 m north of WGS 84 in the same zone: what a user forgets who reads the wrong
// datum.
TEST(PlaneLink, ShiftsEd50ByItsKnownAmount) {
    const auto link = PlaneLink::between("EPSG:23032", "EPSG:32632").value();
    const PlanePoint shifted = link.forward(at(500000, 5500000)).value();
    EXPECT_NEAR((shifted.easting - Metres(500000)).value(), -80, 15);
    EXPECT_NEAR((shifted.northing - Metres(5500000)).value(), -205, 20);
}

TEST(PlaneLink, NamesItsOperationAndAccuracy) {
    const auto link = PlaneLink::between("EPSG:23032", "EPSG:32632").value();
    const auto used = link.operationAt(at(500000, 5500000));
    EXPECT_NE(used.name.find("ED50 to WGS 84"), std::string::npos) << used.name;
    ASSERT_TRUE(used.accuracy);
    EXPECT_LE(used.accuracy->value(), 10);
    const auto none = PlaneLink::between("EPSG:32632", "EPSG:32632").value().operationAt(at(500000, 5500000));
    EXPECT_TRUE(none.name.empty());
}

TEST(PlaneLink, SaysWhereTheProjectionDoesNotReach) {
    const auto link = PlaneLink::between("EPSG:32632", "EPSG:27700").value();
    const auto lost = link.forward(at(1e12, 1e12));
    ASSERT_FALSE(lost);
    EXPECT_EQ(lost.error().fault, kOutsidePlane);
    EXPECT_FALSE(link.forward(at(std::nan(""), 0)));
}

TEST(PlaneLink, RefusesWhatIsNoPlane) {
    EXPECT_EQ(PlaneLink::between("EPSG:4326", "EPSG:32632").error().fault, kCrsNotProjected);
    EXPECT_EQ(PlaneLink::between("EPSG:32632", "no such thing").error().fault, kUnknownCrs);
}

TEST(Plane, KnowsPlacesAndGrid) {
    for (const Sheet& sheet : kSheets) {
        SCOPED_TRACE(sheet.crs);
        const auto plane = Plane::of(sheet.crs).value();
        const PlanePoint here = at(sheet.easting * sheet.metresPerUnit, sheet.northing * sheet.metresPerUnit);
        const GeoPoint place = plane.geographic(here).value();
        EXPECT_LT(apart(plane.plane(place).value(), here), 1e-6);
        const auto answers = answersOf(fmt::format("cs2cs -f %.10f {} EPSG:4326", sheet.crs),
                                       {inAuthoritysOrder(sheet, sheet.easting, sheet.northing)});
        const auto theirs = numbersIn(answers.at(0));
        EXPECT_NEAR(place.latitude.value(), theirs.at(0), 2e-9) << answers[0];
        EXPECT_NEAR(place.longitude.value(), theirs.at(1), 2e-9 / std::cos(place.latitude.value() * M_PI / 180));
        EXPECT_EQ(plane.grid(here)->zone.number, sheet.zone);
        EXPECT_LT(apart(plane.grid(here)->at, PlaneLink::between(sheet.crs, zoneCrs(sheet))->forward(here).value()),
                  1e-3);
    }
}

// GeographicLib and PROJ's differences must tell the same for a plane that both know.
TEST(Plane, FactorsAgreeWithThoseOfTheGrid) {
    const auto byLibrary = Plane::of("EPSG:32632").value();
    const auto byDifference = Plane::of("EPSG:25832").value();  // ETRS89: the same ellipsoid to 0.1 mm
    for (const double easting : {300000.0, 500000.0, 700000.0}) {
        const PlanePoint here = at(easting, 5800000);
        const auto a = byLibrary.factors(here).value();
        const auto b = byDifference.factors(here).value();
        EXPECT_NEAR(a.convergence.value(), b.convergence.value(), 1e-6);
        EXPECT_NEAR(a.scale, b.scale, 1e-8);
    }
}

// A state plane grid in feet: its central meridian has no convergence, west of it grid north lies west of true.
TEST(Plane, FactorsAreThoseOfTheSheetsOwnGrid) {
    const auto plane = Plane::of("EPSG:2263").value();
    const auto west = plane.factors(plane.plane({Degrees(40.7), Degrees(-74.5)}).value()).value();
    const auto east = plane.factors(plane.plane({Degrees(40.7), Degrees(-73.5)}).value()).value();
    const auto middle = plane.factors(plane.plane({Degrees(40.7), Degrees(-74)}).value()).value();
    EXPECT_LT(west.convergence.value(), -0.3);
    EXPECT_GT(east.convergence.value(), 0.3);
    EXPECT_NEAR(middle.convergence.value(), 0, 1e-4);
    EXPECT_NEAR(middle.scale, 1, 1e-4);
}

TEST(Plane, RefusesWhatIsNone) {
    EXPECT_EQ(Plane::of("EPSG:4326").error().fault, kCrsNotProjected);
    EXPECT_EQ(Plane::of("nowhere").error().fault, kUnknownCrs);
}

}  // namespace
}  // namespace crosstick::geodesy
