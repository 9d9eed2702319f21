// The command draw.
#include <algorithm>
#include <filesystem>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/files/plan_file.h"
#include "tests/app/asking.h"
#include "tests/app/made_plan.h"

namespace crosstick::app {
namespace {

using ::testing::HasSubstr;

/// One feature; its geometry and properties as JSON.
std::string feature(const std::string& geometry, const std::string& properties) {
    return R"({"type":"Feature","geometry":)" + geometry + R"(,"properties":)" + properties + "}";
}
std::string collection(const std::vector<std::string>& features) {
    std::string all;
    for (const std::string& one : features) {
        all += (all.empty() ? "" : ",") + one;
    }
    return R"({"type":"FeatureCollection","features":[)" + all + "]}";
}
std::string line() {
    return R"({"type":"LineString","coordinates":[[-31.04,46.03],[-31.02,46.04]]})";
}
std::string good() {
    return feature(line(), R"({"kind":"phase-line","name":"BODKIN"})");
}

class DrawCommand : public ::testing::Test {
  protected:
    MadeFiles files_;
    std::string plan_ = files_.emptyPlan();

    [[nodiscard]] Said draw(const std::string& drawing, const std::vector<std::string>& more = {}) const {
        files_.write("drawing.geojson", drawing);
        std::vector<std::string> arguments{"draw", plan_, files_ / "drawing.geojson"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        return said(arguments);
    }
    [[nodiscard]] plan::Plan drawn() const { return files::PlanFile::open(plan_, files::Access::ReadOnly)->plan(); }
    /// One line that names the feature and the reason, and a plan without anything in it.
    void expectRefused(const std::string& drawing, const std::vector<const char*>& words) const {
        const Said answer = draw(drawing);
        EXPECT_EQ(answer.exit, Exit::CouldNot) << drawing;
        EXPECT_EQ(answer.out, "");
        EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
        for (const char* word : words) {
            EXPECT_THAT(answer.err, HasSubstr(word));
        }
        EXPECT_TRUE(drawn().measures().isEmpty());
        EXPECT_TRUE(drawn().films().empty());
    }
};

TEST_F(DrawCommand, PutsMeasuresOnAFilmAndSetsTheWindow) {
    const Said answer = draw(collection({good()}));
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_THAT(answer.out, HasSubstr("1 measures and 0 routes drawn, 1 film made"));
    const plan::Plan plan = drawn();
    ASSERT_EQ(plan.films().size(), 1U);
    EXPECT_EQ(plan.films().front()->name, "FILM 1");
    EXPECT_EQ(plan.films().front()->shows.size(), 1U);
    ASSERT_TRUE(plan.registration().has_value());
    // By GeoConvert: 46.03 N 31.04 W is UTM 25n 651684 5099248.
    plan.measures().forEach([&](const plan::MeasurePtr& measure) {
        EXPECT_EQ(measure->name, "BODKIN");
        EXPECT_NEAR(measure->points.front().easting.value(), 651684, 1);
        EXPECT_GT(measure->points.front().easting, plan.registration()->southWest.easting);
        EXPECT_LT(measure->points.back().northing, plan.registration()->northEast.northing);
    });
}

TEST_F(DrawCommand, PutsThemOnTheFilmThatIsNamed) {
    ASSERT_EQ(draw(collection({good()}), {"--film", "MOVE"}).exit, Exit::Done);
    ASSERT_EQ(drawn().films().size(), 1U);
    EXPECT_EQ(drawn().films().front()->name, "MOVE");
}

TEST_F(DrawCommand, DrawnTwiceIsThereOnce) {
    ASSERT_EQ(draw(collection({good()})).exit, Exit::Done);
    ASSERT_EQ(draw(collection({good()})).exit, Exit::Done);
    EXPECT_EQ(drawn().measures().size(), 1U);
    EXPECT_EQ(drawn().films().front()->shows.size(), 1U);
}

TEST_F(DrawCommand, NamesTheFeatureAndTheReason) {
    const std::string ring = R"({"type":"Polygon","coordinates":[[[-31.04,46.03],[-31.02,46.04],[-31.03,46.05]]]})";
    const std::string holed =
        R"({"type":"Polygon","coordinates":[[[-31,46],[-31.1,46],[-31,46.1],[-31,46]],[[-31,46],[-31.1,46],[-31,46.1],[-31,46]]]})";
    expectRefused(collection({good(), feature(ring, R"({"kind":"objective"})")}), {"Feature 2", "not closed"});
    expectRefused(collection({good(), good(), feature(holed, R"({"kind":"objective"})")}), {"Feature 3", "one ring"});
    expectRefused(collection({feature(R"({"type":"Point","coordinates":[-31,46]})", R"({"kind":"phase-line"})")}),
                  {"Feature 1", "phase-line cannot be drawn from 1 point"});
    expectRefused(collection({feature(R"({"type":"Point","coordinates":[-31,146]})", R"({"kind":"checkpoint"})")}),
                  {"Feature 1"});
    expectRefused(collection({feature(R"({"type":"Curve","coordinates":[]})", R"({"kind":"checkpoint"})")}),
                  {"Feature 1", "Curve"});
    expectRefused(collection({good(), R"({"type":"Thing"})"}), {"Feature 2", "no Feature"});
    expectRefused(collection({good(), feature(line(), R"({"name":"BODKIN"})")}), {"Feature 2", "kind"});
    expectRefused(collection({feature(line(), R"({"kind":"phase-line","name":[7]})")}), {"Feature 1", "\"name\""});
    expectRefused(collection({feature(R"({"type":"Point","coordinates":[-31,46]})", R"({"kind":"route"})")}),
                  {"Feature 1", "two points or more"});
}

TEST_F(DrawCommand, RefusesWhatIsNoGeoJson) {
    expectRefused("", {"no JSON"});
    expectRefused("{", {"no JSON"});
    expectRefused("[1, 2]", {"no GeoJSON"});
    expectRefused(R"({"type":"FeatureCollection","features":7})", {"no GeoJSON"});
    expectRefused(std::string(100000, '['), {"JSON"});
    const Said missing = said({"draw", plan_, files_ / "missing.geojson"});
    EXPECT_EQ(missing.exit, Exit::CouldNot);
    EXPECT_THAT(missing.err, HasSubstr("missing.geojson"));
    const Said folder = said({"draw", plan_, files_ / "."});
    EXPECT_EQ(folder.exit, Exit::CouldNot);
}

TEST_F(DrawCommand, RefusesWhatIsNoPlanAndLeavesItAsItIs) {
    files_.write("drawing.geojson", collection({good()}));
    files_.write("text.gpkg", "PL TRIVET runs along the road.\n");
    const std::string sheet = contents(files_.sheet());
    for (const char* name : {"text.gpkg", "sheet.tif", "missing.gpkg"}) {
        const Said answer = said({"draw", files_ / name, files_ / "drawing.geojson"});
        EXPECT_EQ(answer.exit, Exit::CouldNot) << name;
        EXPECT_THAT(answer.err, HasSubstr(name));
    }
    EXPECT_EQ(contents(files_ / "text.gpkg"), "PL TRIVET runs along the road.\n");
    EXPECT_EQ(contents(files_.sheet()), sheet);
    EXPECT_FALSE(std::filesystem::exists(files_ / "missing.gpkg"));
}

TEST_F(DrawCommand, NeedsNoSheetFile) {
    std::filesystem::remove(files_.sheet());
    const Said answer = draw(collection({good()}));
    EXPECT_EQ(answer.exit, Exit::Done) << answer.err;
}

TEST_F(DrawCommand, WindowStaysOnceSomethingIsDrawnUnlessItMustGrow) {
    ASSERT_EQ(draw(collection({good()})).exit, Exit::Done);
    const auto before = drawn().registration();
    const Said inside = draw(collection({good(), feature(R"({"type":"Point","coordinates":[-31.03,46.035]})",
                                                         R"({"kind":"checkpoint","number":"1"})")}));
    EXPECT_EQ(drawn().registration(), before);
    EXPECT_THAT(inside.out, ::testing::Not(HasSubstr("Window")));
    const Said far = draw(collection(
        {good(), good(),
         feature(R"({"type":"Point","coordinates":[-30.96,46.06]})", R"({"kind":"checkpoint","number":"2"})")}));
    EXPECT_NE(drawn().registration(), before);
    EXPECT_THAT(far.out, HasSubstr("Window and ticks were set"));
}

TEST_F(DrawCommand, WrongUseIsToldApart) {
    EXPECT_EQ(said({"draw", plan_}).exit, Exit::WrongUse);
    EXPECT_EQ(said({"draw"}).exit, Exit::WrongUse);
}

}  // namespace
}  // namespace crosstick::app
