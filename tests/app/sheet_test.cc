// The commands sheet and carry.
#include <filesystem>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/app/asking.h"
#include "tests/app/made_plan.h"

namespace crosstick::app {
namespace {

using ::testing::HasSubstr;

TEST(SheetCommand, TellsWhatItMakesOfASheet) {
    const MadeFiles files;
    const auto json = said({"sheet", files.sheet(), "--scale", "25000", "--json"}).json();
    ASSERT_EQ(json.size(), 1U);
    const auto& sheet = json[0];
    EXPECT_EQ(sheet["driver"], "GTiff");
    EXPECT_EQ(sheet["columns"], 100);
    EXPECT_EQ(sheet["crs"], "EPSG:32625");
    EXPECT_EQ(sheet["crs_name"], "WGS 84 / UTM zone 25N");
    EXPECT_EQ(sheet["projection"], "UTM zone 25 north");
    EXPECT_TRUE(sheet["datum_shift"].is_null());
    EXPECT_EQ(sheet["scale"], 25000);
    // 10 km in 100 pixels are 100 m each; 25,000 * 0.0254 / 100 dots to the inch.
    EXPECT_NEAR(sheet["metres_per_pixel"].get<double>(), 100, 1e-9);
    EXPECT_NEAR(sheet["dots_per_inch_at_scale"].get<double>(), 6.35, 1e-9);
    EXPECT_EQ(sheet["corners"].size(), 4U);
    EXPECT_EQ(sheet["copy"]["tile_pixels"], 512);
    EXPECT_EQ(sheet["copy"]["levels"], 1);
    EXPECT_FALSE(sheet.contains("no_sheet_because"));
    const Said words = said({"sheet", files.sheet(), "--scale", "25000"});
    EXPECT_EQ(words.exit, Exit::Done);
    EXPECT_THAT(words.out, HasSubstr("none needed: the sheet lies on WGS 84"));
}

// NAD27 in Alaska: PROJ's best way without the grids of NADCON is good to some metres, with them to less (EPSG 15864,
// 1243 and neighbours); Debian ships none.
TEST(SheetCommand, WarnsWhereABetterGridIsMissing) {
    const MadeFiles files;
    crosstick::testing::makeSheet(files / "alaska.tif",
                                  {.crs = "EPSG:26705", .placement = {500000, 100, 0, 7200000, 0, -100}});
    const auto json = said({"sheet", files / "alaska.tif", "--scale", "250000", "--json"}).json();
    ASSERT_EQ(json.size(), 1U);
    EXPECT_EQ(json[0]["datum"], "NAD27");
    EXPECT_THAT(json[0]["datum_shift"].get<std::string>(), HasSubstr("NAD27"));
    EXPECT_GT(json[0]["datum_shift_accuracy_m"].get<double>(), 1);
    EXPECT_THAT(json[0]["better_grid"].get<std::string>(), HasSubstr("alaska"));
    EXPECT_LT(json[0]["better_grid_accuracy_m"].get<double>(), json[0]["datum_shift_accuracy_m"].get<double>());
    EXPECT_THAT(said({"sheet", files / "alaska.tif", "--scale", "250000"}).out, HasSubstr("WARNING"));
}

TEST(LayCommand, LaysASheetBesideTheOthersAndTellsHowTheyMeet) {
    const MadeFiles files;
    const std::string plan = files.emptyPlan();
    // The first sheet is 10 km wide; this one begins 30 m beyond it.
    const auto shown = said({"sheet", files.sheet(), "--scale", "25000", "--json"}).json();
    const double east = shown[0]["corners"][1]["easting_m"].get<double>();
    const double north = shown[0]["corners"][1]["northing_m"].get<double>();
    crosstick::testing::makeSheet(files / "east.tif",
                                  {.columns = 100, .rows = 100, .placement = {east + 30, 100, 0, north, 0, -100}});
    const Said laid = said({"lay", plan, files / "east.tif", "--scale", "25000", "--whole"});
    EXPECT_EQ(laid.exit, Exit::Done) << laid.err;
    EXPECT_THAT(laid.out, HasSubstr("2 sheets."));
    EXPECT_THAT(laid.out, HasSubstr("30.0 m are missing between them"));
    EXPECT_THAT(said({"show", plan}).out, HasSubstr("east.tif"));
}

TEST(SheetCommand, SaysWhyAFileIsNoSheetYet) {
    const MadeFiles files;
    crosstick::testing::makeSheet(files / "bare.tif", {.crs = "", .placement = {}});
    const auto json = said({"sheet", files / "bare.tif", "--json"}).json();
    ASSERT_EQ(json.size(), 1U);
    EXPECT_EQ(json[0]["placed"], false);
    EXPECT_THAT(json[0]["no_sheet_because"].get<std::string>(), HasSubstr("bare.tif"));
}

TEST(SheetCommand, RefusesWhatIsNoPictureInOneLine) {
    const MadeFiles files;
    files.write("text.tif", "PL TRIVET runs along the road.\n");
    for (const char* name : {"text.tif", "missing.tif"}) {
        const Said answer = said({"sheet", files / name});
        EXPECT_EQ(answer.exit, Exit::CouldNot);
        EXPECT_THAT(answer.err, HasSubstr(name));
        EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
    }
}

TEST(CarryCommand, APlanHandedOnAloneStillShowsItsSheet) {
    const MadeFiles files;
    const std::string plan = files.emptyPlan();
    const Said carried = said({"carry", plan});
    ASSERT_EQ(carried.exit, Exit::Done) << carried.err;
    std::filesystem::create_directory(files / "elsewhere");
    std::filesystem::copy_file(plan, files / "elsewhere/plan.gpkg");
    const Said drawn = said({"picture", files / "elsewhere/plan.gpkg", "-o", files / "out.png"});
    EXPECT_EQ(drawn.exit, Exit::Done) << drawn.err;
    ASSERT_EQ(said({"carry", files / "elsewhere/plan.gpkg", "--drop"}).exit, Exit::Done);
    EXPECT_EQ(said({"picture", files / "elsewhere/plan.gpkg", "-o", files / "out.png"}).exit, Exit::CouldNot);
}

}  // namespace
}  // namespace crosstick::app
