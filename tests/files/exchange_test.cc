#include "core/files/exchange.h"

#include <gtest/gtest.h>

#include "core/files/faults.h"
#include "core/files/json_form.h"
#include "tests/plan/random_plans.h"

namespace crosstick::files {
namespace {

plan::Plan emptyPlan() {
    plan::Heading heading;
    heading.plane = {25, geodesy::Hemisphere::North};
    plan::PlanBuilder builder{plan::Plan{}};
    builder.id(Uuid{{1}}).heading(heading);
    return std::move(builder).build();
}

std::string collection(const std::string& features) {
    return R"({"type":"FeatureCollection","features":[)" + features + "]}";
}

std::string point(const std::string& properties, const std::string& coordinates = "[-31.0,46.0]") {
    return R"({"type":"Feature","id":"m-1","geometry":{"type":"Point","coordinates":)" + coordinates +
           R"(},"properties":)" + properties + "}";
}

// The exchange form's own example: GeoConvert gives 25TFM5506000640 for this place.
constexpr const char* kCheckpoint =
    R"({"type":"Feature","id":"m-cp3","geometry":{"type":"Point","coordinates":[-30.9959543,46.0417619]},
    "properties":{"kind":"checkpoint","name":null,"number":3,"film":"MOVE","shown_on":["MOVE"],"phases":[2],
    "anchor":"ground","state":"confirmed","route":"QUILL","grid":"25TFM55060064","tie":"weir","extension":null,
    "why":"cannot be missed in the dark","colour":"kept"}})";

TEST(GeoJson, PlacesAMeasureOnItsFilm) {
    const auto imported = readGeoJson(collection(kCheckpoint), emptyPlan(), {});
    ASSERT_TRUE(imported);
    EXPECT_EQ(imported->measures, 1U);
    EXPECT_EQ(imported->films, 1U);
    const auto film = imported->plan.filmNamed("MOVE");
    ASSERT_TRUE(film);
    EXPECT_EQ(film->phases, std::set<int>{2});
    const auto measure = imported->plan.measure(film->shows.front().item);
    EXPECT_EQ(measure->kind, "checkpoint");
    EXPECT_EQ(measure->number, "3");
    EXPECT_EQ(measure->why, "cannot be missed in the dark");
    EXPECT_NEAR(measure->points.front().easting.value(), 655060, 0.01);
    EXPECT_NEAR(measure->points.front().northing.value(), 5100640, 0.01);
    EXPECT_EQ(measure->unknown.at("colour"), "\"kept\"");
}

TEST(GeoJson, DrawnTwiceItChangesNothingTheSecondTime) {
    const auto once = readGeoJson(collection(kCheckpoint), emptyPlan(), {});
    const auto twice = readGeoJson(collection(kCheckpoint), once->plan, {});
    ASSERT_TRUE(twice);
    EXPECT_TRUE(once->plan == twice->plan);
}

TEST(GeoJson, ARouteKnowsItsPointsByTheFilesOwnNames) {
    const std::string route =
        R"({"type":"Feature","id":"r-1","geometry":{"type":"LineString","coordinates":[[-31,46],[-30.99,46.01],[-30.98,46.02]]},
        "properties":{"kind":"route","use":"alternate","name":"MITTEN","film":"MOVE","points":[{"at":0,"measure":"m-cp3"},{"at":2,"measure":"m-x"}]}})";
    const auto imported = readGeoJson(collection(std::string(kCheckpoint) + "," + route), emptyPlan(), {});
    ASSERT_TRUE(imported);
    const auto held = imported->plan.routeNamed("MITTEN");
    ASSERT_TRUE(held);
    EXPECT_EQ(held->use, plan::Use::Alternate);
    ASSERT_EQ(held->stops.size(), 2U);
    EXPECT_EQ(imported->plan.measure(held->stops[0].measure)->number, "3");
}

TEST(GeoJson, ARouteBringsWhatIsSaidAboutItsLegs) {
    const std::string route =
        R"({"type":"Feature","id":"r-1","geometry":{"type":"LineString","coordinates":[[-31,46],[-31,46.01]]},
        "properties":{"kind":"route","name":"FERN","points":[{"at":0,"measure":"m-a"},{"at":1,"measure":"m-b",
        "going":"road","halt_min":10,"catching":"stream","rally":"m-a","in_contact":"break east"}]}})";
    const auto imported = readGeoJson(collection(route), emptyPlan(), {});
    ASSERT_TRUE(imported);
    const plan::RoutePtr fern = imported->plan.routeNamed("FERN");
    const plan::LegNotes& leg = fern->stops[1].leg;
    EXPECT_EQ(leg.going, plan::Going::Road);
    EXPECT_EQ(leg.halt, Minutes(10));
    EXPECT_EQ(leg.catching, "stream");
    EXPECT_EQ(leg.rally, fern->stops[0].measure);
    EXPECT_EQ(leg.inContact, "break east");
    EXPECT_EQ(fern->stops[0].leg, plan::LegNotes{});
}

TEST(GeoJson, GoesOnTheFilmAskedForWhereAFeatureNamesNone) {
    const auto imported = readGeoJson(collection(point(R"({"kind":"checkpoint"})")), emptyPlan(), {"SKETCH"});
    ASSERT_TRUE(imported);
    EXPECT_TRUE(imported->plan.filmNamed("SKETCH"));
}

// Reading back what was written gives the same plan, coordinates within 0.1 mm.
TEST(GeoJson, WrittenAndReadBackIsTheSamePlan) {
    const auto imported = readGeoJson(collection(kCheckpoint), emptyPlan(), {});
    const auto again = readGeoJson(writeGeoJson(imported->plan), imported->plan, {});
    ASSERT_TRUE(again);
    const auto before = imported->plan.measures().chunks().front()->front();
    const auto after = again->plan.measure(before->id);
    EXPECT_NEAR(after->points.front().easting.value(), before->points.front().easting.value(), 1e-4);
    plan::Measure same = *after;
    same.points = before->points;
    EXPECT_EQ(same, *before);
    EXPECT_EQ(again->plan.films().front()->shows, imported->plan.films().front()->shows);
}

struct Bad {
    const char* name;
    std::string text;
    FaultId fault;
};

class BadGeoJson : public ::testing::TestWithParam<Bad> {};

TEST_P(BadGeoJson, IsRefusedAndNothingIsDrawn) {
    const plan::Plan plan = emptyPlan();
    const auto imported = readGeoJson(GetParam().text, plan, {});
    ASSERT_FALSE(imported);
    EXPECT_EQ(imported.error().fault, GetParam().fault);
}

INSTANTIATE_TEST_SUITE_P(
    Cases, BadGeoJson,
    ::testing::Values(
        Bad{"NoJson", "hello", kNotJson}, Bad{"CutOff", R"({"type":"FeatureCollection","features":[)", kNotJson},
        Bad{"NoCollection", R"({"type":"Topology"})", kNotGeoJson}, Bad{"AList", "[1,2,3]", kNotGeoJson},
        Bad{"FeaturesIsNoList", R"({"type":"FeatureCollection","features":{}})", kNotGeoJson},
        Bad{"NoKind", collection(point("{}")), kNoKind}, Bad{"PropertiesNull", collection(point("null")), kNoKind},
        Bad{"OffTheGlobe", collection(point(R"({"kind":"checkpoint"})", "[46.0,-131.0]")), kBadFeature},
        Bad{"TextForANumber", collection(point(R"({"kind":"checkpoint"})", R"(["a",1])")), kBadFeature},
        Bad{"FarZone", collection(point(R"({"kind":"checkpoint"})", "[120.0,46.0]")), kBadFeature},
        Bad{"WrongGeometry", collection(point(R"({"kind":"phase-line"})")), kBadFeature},
        Bad{"BadState", collection(point(R"({"kind":"checkpoint","state":"sunny"})")), kBadFeature},
        Bad{"OpenRing",
            collection(
                R"({"type":"Feature","geometry":{"type":"Polygon","coordinates":[[[-31,46],[-30.9,46],[-30.9,46.1],[-31,46.1]]]},"properties":{"kind":"objective"}})"),
            kBadFeature},
        Bad{"ManyGeometries",
            collection(
                R"({"type":"Feature","geometry":{"type":"GeometryCollection","geometries":[]},"properties":{"kind":"objective"}})"),
            kBadFeature},
        Bad{"RoutePointBeyondTheLine",
            collection(
                R"({"type":"Feature","geometry":{"type":"LineString","coordinates":[[-31,46],[-30.9,46]]},"properties":{"kind":"route","points":[{"at":7,"measure":"m"}]}})"),
            kBadFeature}),
    [](const auto& chosen) { return std::string(chosen.param.name); });

TEST(GeoJson, AMeasureWithoutGeometryIsStillToPlace) {
    const auto imported = readGeoJson(
        collection(R"({"type":"Feature","id":"m","geometry":null,"properties":{"kind":"objective","name":"COBNUT"}})"),
        emptyPlan(), {});
    ASSERT_TRUE(imported);
    EXPECT_EQ(imported->plan.measures().chunks().front()->front()->state, plan::PlaceState::Unplaced);
}

}  // namespace
}  // namespace crosstick::files
