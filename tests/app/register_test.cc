// The command register.
#include <cmath>
#include <filesystem>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/app/asking.h"
#include "tests/app/made_plan.h"

namespace crosstick::app {
namespace {

using ::testing::HasSubstr;

/// A picture of 400 by 300 pixels, 300 dots to the inch, and marks on it: 25 m a pixel, turned by nothing.
class Register : public ::testing::Test {
  protected:
    MadeFiles files;
    std::string picture = files / "scan.tif";

    void SetUp() override {
        crosstick::testing::makeSheet(picture, {.columns = 400,
                                                .rows = 300,
                                                .bands = 3,
                                                .crs = "",
                                                .placement = {},
                                                .options = {"PHOTOMETRIC=RGB"},
                                                .value = [](int column, int, int) { return column % 200; }});
        files.write("marks.csv",
                    "x,y,easting,northing\n40,260,650000,5100000\n360,260,658000,5100000\n360,60,658000,5105000\n"
                    "40,60,650000,5105000\n200,160,654000,5102500\n");
        files.write("points.csv", "x,y\n0,0\n200,300\n");
    }
    [[nodiscard]] Said ask(std::vector<std::string> more) const {
        std::vector<std::string> all{"register", picture, "--marks", files / "marks.csv", "--crs", "EPSG:32625"};
        all.insert(all.end(), more.begin(), more.end());
        return said(std::move(all));
    }
};

TEST_F(Register, AnswersInOneObjectWithAllItsFigures) {
    const Said answer = ask({"--at", files / "points.csv", "--scale", "25000", "--json"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    const auto json = nlohmann::json::parse(answer.out, nullptr, false);
    ASSERT_TRUE(json.is_object());
    EXPECT_EQ(json["model"], "similarity");
    for (const char* key : {"rms_px", "rms_m", "rms_mm", "leave_one_out_rms_m", "stretch_x_percent",
                            "stretch_y_percent", "rotation_deg", "skew_deg"}) {
        EXPECT_NEAR(json[key].get<double>(), 0, 1e-6) << key;
    }
    ASSERT_EQ(json["marks"].size(), 5U);
    EXPECT_EQ(json["marks"][2]["x"], 360);
    EXPECT_EQ(json["marks"][2]["northing_m"], 5105000);
    EXPECT_EQ(json["marks"][2]["blunder"], false);
    for (const char* key : {"residual_px", "residual_m", "residual_mm"}) {
        EXPECT_NEAR(json["marks"][2][key].get<double>(), 0, 1e-6) << key;
    }
    EXPECT_TRUE(json["crossings"].empty());
    // 40 pixels of 25 m west of 650000; 260 north of 5100000.
    ASSERT_EQ(json["at"].size(), 2U);
    EXPECT_NEAR(json["at"][0]["easting_m"].get<double>(), 649000, 1e-6);
    EXPECT_NEAR(json["at"][0]["northing_m"].get<double>(), 5106500, 1e-6);
    EXPECT_NEAR(json["at"][1]["easting_m"].get<double>(), 654000, 1e-6);
    ASSERT_GE(json["models"].size(), 2U);
    EXPECT_EQ(json["models"][0]["model"], "similarity");
    EXPECT_TRUE(json["models"][0]["bic"].is_number());
}

TEST_F(Register, FindsTheOtherCrossings) {
    // Kilometres every 80 pixels from 39.5, 59.5; the picture ends before the lines do.
    crosstick::testing::makeSheet(
        picture, {.columns = 800,
                  .rows = 640,
                  .bands = 3,
                  .crs = "",
                  .placement = {},
                  .options = {"PHOTOMETRIC=RGB"},
                  .value = [](int column, int row, int) { return column % 80 == 39 || row % 80 == 59 ? 40 : 240; }});
    files.write("marks.csv", "39.5,539.5,650000,5100000\n199.5,539.5,652000,5100000\n39.5,379.5,650000,5102000\n");
    const Said answer = ask({"--find", "--json"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    const auto json = nlohmann::json::parse(answer.out, nullptr, false);
    EXPECT_EQ(json["marks"].size(), 3U);
    int sure = 0;
    for (const auto& crossing : json["crossings"]) {
        if (crossing["confidence"].get<double>() >= 0.5) {
            ++sure;
            EXPECT_NEAR(crossing["x"].get<double>(), 39.5 + (crossing["easting_m"].get<double>() - 650000) / 12.5, 0.2);
            EXPECT_NEAR(crossing["y"].get<double>(), 539.5 - (crossing["northing_m"].get<double>() - 5100000) / 12.5,
                        0.2);
        }
    }
    EXPECT_GE(sure, 60);  // of 10 by 8
    EXPECT_LT(json["rms_px"].get<double>(), 0.2);
}

TEST_F(Register, SaysItsProofFirst) {
    files.write("marks.csv",
                "40,260,650000,5100000\n360,260,658000,5100000\n360,60,658020,5105000\n"
                "40,60,650000,5105000\n");
    const Said answer = ask({"--scale", "25000", "--model", "similarity"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_EQ(answer.out.find("Worst mark 0."), 0U) << answer.out;
    EXPECT_THAT(answer.out, HasSubstr("on the ground"));
}

TEST_F(Register, TwoMarksCannotBeChecked) {
    files.write("marks.csv", "x,y,grid\n40,260,25T FL 50 00\n360,260,51 00\n");
    const Said answer = said({"register", picture, "--marks", files / "marks.csv"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_EQ(answer.out.find("Two marks cannot be checked: add a third."), 0U) << answer.out;
    EXPECT_THAT(answer.out, HasSubstr("EPSG:32625"));
}

TEST_F(Register, NamesEachBadRow) {
    files.write("marks.csv", "x,y,easting,northing\n40,260,650000,5100000\n360,here,658000,5100000\n360,60\n");
    const Said answer = ask({});
    EXPECT_EQ(answer.exit, Exit::CouldNot);
    EXPECT_THAT(answer.err, HasSubstr("marks.csv line 3: \"here\""));
    EXPECT_THAT(answer.err, HasSubstr("marks.csv line 4: "));
    EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 2) << answer.err;
    EXPECT_TRUE(answer.out.empty());
}

TEST_F(Register, WritesASheetThatTheProgramReadsInItsPlace) {
    const Said answer = ask({"--scale", "25000", "-o", files / "sheet.out.tif"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    const auto json = said({"sheet", files / "sheet.out.tif", "--json"}).json();
    ASSERT_EQ(json.size(), 1U);
    EXPECT_EQ(json[0]["crs"], "EPSG:32625");
    EXPECT_EQ(json[0]["scale"], 25000);
    EXPECT_NEAR(json[0]["corners"][0]["easting_m"].get<double>(), 649000, 1e-4);
    EXPECT_NEAR(json[0]["corners"][0]["northing_m"].get<double>(), 5106500, 1e-4);
}

TEST_F(Register, NeverWritesOverThePicture) {
    const auto before = contents(picture);
    const Said answer = ask({"-o", picture});
    EXPECT_EQ(answer.exit, Exit::CouldNot);
    EXPECT_EQ(contents(picture), before);
}

TEST_F(Register, BeginsAPlanOnThePictureItself) {
    const Said answer = ask({"--scale", "25000", "-o", files / "plan.gpkg"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_EQ(said({"picture", files / "plan.gpkg", "-o", files / "out.png"}).exit, Exit::Done);
    EXPECT_EQ(ask({"--scale", "25000", "-o", files / "plan.gpkg"}).exit, Exit::CouldNot) << "never written over";
    const Said without = ask({"-o", files / "other.gpkg"});
    EXPECT_EQ(without.exit, Exit::CouldNot) << "no scale is known";
    EXPECT_THAT(without.err, HasSubstr("--scale"));
}

TEST_F(Register, BeginsAPlanOnNewPixelsWhereThePictureIsAslant) {
    const Said answer = ask({"--scale", "25000", "--model", "projective", "-o", files / "plan.gpkg"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_TRUE(std::filesystem::exists(files / "plan.tif"));
    EXPECT_EQ(said({"picture", files / "plan.gpkg", "-o", files / "out.png"}).exit, Exit::Done);
}

TEST_F(Register, RefusesWhatItCannotUseInOneLine) {
    for (const auto& more : {std::vector<std::string>{"--model", "quadratic"}, {"--at", "nowhere.csv"}}) {
        const Said answer = ask(more);
        EXPECT_EQ(answer.exit, Exit::CouldNot);
        EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
    }
    EXPECT_EQ(ask({"--model", "spline"}).exit, Exit::WrongUse);
    EXPECT_EQ(said({"register", picture}).exit, Exit::WrongUse);
    EXPECT_EQ(said({"register", picture, "--marks", files / "marks.csv"}).exit, Exit::CouldNot) << "no grid is known";
}

}  // namespace
}  // namespace crosstick::app
