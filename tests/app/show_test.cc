// The command show.
#include <algorithm>
#include <filesystem>
#include <map>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/app/asking.h"
#include "tests/app/made_plan.h"

namespace crosstick::app {
namespace {

using ::testing::ContainsRegex;
using ::testing::HasSubstr;

TEST(ShowCommand, ListsSheetFilmsRoutesAndMeasures) {
    const MadeFiles files;
    const Said answer = said({"show", files.printedPlan()});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_THAT(answer.out, ::testing::StartsWith("SLOW KETTLE  EXERCISE\n"));
    EXPECT_THAT(answer.out, HasSubstr("ZT25 4271 Ulmeray, edition 2, 1:25000, WGS 84"));
    EXPECT_THAT(answer.out, ContainsRegex("MOVE +phases 1, 2 +shows [0-9]+"));
    EXPECT_THAT(answer.out, ContainsRegex("HIGHER +phases - +shows 7"));
    EXPECT_THAT(answer.out, ContainsRegex("QUILL +primary +7 points on it"));
    EXPECT_THAT(answer.out, ContainsRegex("MITTEN +alternate +7 points on it"));
    EXPECT_THAT(answer.out, ContainsRegex("checkpoint +CP 3 +FM 5506 0064 +weir with footbridge"));
    EXPECT_THAT(answer.out, ContainsRegex("objective-rally-point +ORP SORREL +FM 5670 0268 +assumed"));
}

TEST(ShowCommand, JsonHasFilmsThenRoutesThenMeasures) {
    const MadeFiles files;
    const Said answer = said({"show", files.printedPlan(), "--json"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    const auto list = answer.json();
    ASSERT_TRUE(list.is_array());
    std::map<std::string, int> count;
    std::string last;
    for (const auto& one : list) {
        const auto type = one.at("type").get<std::string>();
        EXPECT_TRUE(type == last || count[type] == 0) << "each type is one run";
        ++count[type];
        last = type;
    }
    EXPECT_EQ(count["film"], 3);
    EXPECT_EQ(count["route"], 2);
    EXPECT_EQ(count["measure"], 20);
    EXPECT_EQ(list[0].at("name"), "HIGHER");
    EXPECT_EQ(list[0].at("shows"), 7);
    EXPECT_EQ(list[1].at("phases"), nlohmann::json({1, 2}));
}

// Sheet centre of the exercise, by MagneticField and GeoConvert: -10.894. The sheet's printed
// angle, made up for tests, is within half a degree.
TEST(ShowCommand, TellsModelAndSheetSideBySideAndTheRuleInWords) {
    const MadeFiles files;
    const Said answer = said({"show", files.printedPlan()});
    EXPECT_THAT(answer.out, HasSubstr("G-M angle 11° W; grid to magnetic: add 11\n"));
    EXPECT_THAT(answer.out, HasSubstr("beside it"));
    EXPECT_THAT(answer.out, ContainsRegex("the sheet prints -[0-9.]+° for 20[0-9-]+, changing"));
    EXPECT_THAT(answer.out, ::testing::Not(HasSubstr("Caution")));
}

TEST(ShowCommand, JsonOfAMeasureHasItsLabelAndItsPlace) {
    const MadeFiles files;
    bool found = false;
    for (const auto& one : said({"show", files.printedPlan(), "--json"}).json()) {
        if (one.value("label", "") == "CP 3") {
            found = true;
            EXPECT_EQ(one.at("kind"), "checkpoint");
            EXPECT_EQ(one.at("number"), "3");
            EXPECT_EQ(one.at("points").at(0), nlohmann::json({655060.0, 5100640.0}));
        }
    }
    EXPECT_TRUE(found);
}

TEST(ShowCommand, OfAnEmptyPlanIsEmptyLists) {
    const MadeFiles files;
    const std::string plan = files.emptyPlan();
    EXPECT_EQ(said({"show", plan, "--json"}).json(), nlohmann::json::array());
    EXPECT_EQ(said({"show", plan}).exit, Exit::Done);
}

TEST(ShowCommand, NeedsNoSheetFile) {
    const MadeFiles files;
    const std::string plan = files.printedPlan();
    const std::string with = said({"show", plan}).out;
    std::filesystem::remove(files.sheet());
    EXPECT_EQ(said({"show", plan}).out, with);
}

TEST(ShowCommand, ChangesNothing) {
    const MadeFiles files;
    const std::string plan = files.printedPlan();
    const std::string before = contents(plan);
    EXPECT_EQ(said({"show", plan}).exit, Exit::Done);
    EXPECT_EQ(contents(plan), before);
}

TEST(ShowCommand, RefusesWhatIsNoPlan) {
    const MadeFiles files;
    files.write("text.gpkg", "PL TRIVET runs along the road.\n");
    files.write("nothing.gpkg", "");
    const std::string plan = files.printedPlan();
    std::filesystem::copy_file(plan, files / "cut.gpkg");
    std::filesystem::resize_file(files / "cut.gpkg", std::filesystem::file_size(plan) / 3);
    for (const char* name : {"text.gpkg", "nothing.gpkg", "missing.gpkg", "cut.gpkg", "sheet.tif", "."}) {
        const Said answer = said({"show", files / name});
        EXPECT_EQ(answer.exit, Exit::CouldNot) << name;
        EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
        EXPECT_THAT(answer.err, HasSubstr(name));
        EXPECT_EQ(answer.out, "");
    }
    EXPECT_EQ(said({"show"}).exit, Exit::WrongUse);
}

// A GeoPackage of somebody else's: a map, not a plan.
TEST(ShowCommand, RefusesAGeoPackageThatIsNoPlan) {
    const MadeFiles files;
    makeForeignGeoPackage(files / "roads.gpkg");
    for (const std::string command : {"show", "films", "draw"}) {
        std::vector<std::string> arguments{command, files / "roads.gpkg"};
        if (command == "films") {
            arguments.insert(arguments.end(), {"-o", files / "a.pdf"});
        } else if (command == "draw") {
            files.write("a.geojson", R"({"type":"FeatureCollection","features":[]})");
            arguments.push_back(files / "a.geojson");
        }
        const Said answer = said(arguments);
        EXPECT_EQ(answer.exit, Exit::CouldNot) << command;
        EXPECT_THAT(answer.err, HasSubstr("roads.gpkg is a database without a plan of ours in it")) << command;
    }
}

}  // namespace
}  // namespace crosstick::app
