// The command new.
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
using ::testing::StartsWith;

class NewCommand : public ::testing::Test {
  protected:
    MadeFiles files_;

    [[nodiscard]] std::string plan() const { return files_ / "plan.gpkg"; }
    [[nodiscard]] Said makeOn(const char* sheet, const std::vector<std::string>& more) const {
        std::vector<std::string> arguments{"new", plan(), "--sheet", files_ / sheet, "--scale", "25000"};
        arguments.insert(arguments.end(), more.begin(), more.end());
        return said(arguments);
    }
    [[nodiscard]] plan::Plan made() const {
        const auto file = files::PlanFile::open(plan(), files::Access::ReadOnly);
        return file ? file->plan() : plan::Plan{};
    }
    void expectRefused(const Said& answer, const char* what) const {
        EXPECT_EQ(answer.exit, Exit::CouldNot);
        EXPECT_THAT(answer.err, HasSubstr(what));
        EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
        EXPECT_EQ(answer.out, "");
        EXPECT_FALSE(std::filesystem::exists(plan()));
    }
};

TEST_F(NewCommand, KeepsWhatItWasTold) {
    const Said answer = makeOn(
        "sheet.tif", {"--name",         "SLOW KETTLE", "--zone",          "o",        "--date",       "2027-03-13",
                      "--marking",      "EXERCISE",    "--author",        "Lt Arden", "--unit",       "2/C",
                      "--distribution", "6 copies",    "--declination",   "sheet",    "--pace",       "74",
                      "--rate",         "1.6",         "--series",        "ZT25",     "--number",     "4271",
                      "--sheet-name",   "Ulmeray",     "--edition",       "2",        "--printed-gm", "11.5W",
                      "--printed-date", "2025-01-01",  "--yearly-change", "0.2"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_THAT(answer.out, HasSubstr("a new plan on sheet Ulmeray, 1:25000"));
    const plan::Heading heading = made().heading();
    EXPECT_EQ(heading.name, "SLOW KETTLE");
    EXPECT_EQ(heading.marking, "EXERCISE");
    EXPECT_EQ(heading.zone, *timeZone('O'));
    EXPECT_EQ(isoDate(heading.date), "2027-03-13");
    EXPECT_EQ(heading.declination, plan::DeclinationSource::Sheet);
    EXPECT_EQ(heading.pace->doublePacesPer100, 74);
    EXPECT_EQ(heading.rate->rate.value(), 1.6);
    EXPECT_EQ(heading.plane, (geodesy::Zone{25, geodesy::Hemisphere::North}));
    const plan::SheetPtr held = made().sheets().front();
    const plan::Sheet& sheet = *held;
    EXPECT_EQ(sheet.series + sheet.number + sheet.name + sheet.edition, "ZT254271Ulmeray2");
    ASSERT_TRUE(sheet.declination.has_value());
    EXPECT_EQ(sheet.declination->gmAngle.value(), -11.5);
    EXPECT_EQ(sheet.declination->yearlyChange.value(), 0.2);
}

TEST_F(NewCommand, FillsInTheFilesNameTodayAndAWindowOnTheSheet) {
    ASSERT_EQ(makeOn("sheet.tif", {}).exit, Exit::Done);
    const plan::Plan plan = made();
    EXPECT_EQ(plan.heading().name, "plan");
    EXPECT_EQ(isoDate(plan.heading().date), "2026-11-25");  // the day the test's clock stands at
    EXPECT_EQ(plan.sheets().front()->path, "sheet.tif");    // relative: both can be moved together
    ASSERT_TRUE(plan.registration().has_value());
    EXPECT_GE(plan.registration()->ticks.size(), 3U);
    EXPECT_GE(plan.registration()->southWest.easting.value(), 650000);
    EXPECT_LE(plan.registration()->northEast.northing.value(), 5106000);
}

TEST_F(NewCommand, NeverOverwrites) {
    files_.write("plan.gpkg", "mine");
    const Said answer = makeOn("sheet.tif", {});
    EXPECT_EQ(answer.exit, Exit::CouldNot);
    EXPECT_THAT(answer.err, HasSubstr("exists already"));
    EXPECT_EQ(contents(plan()), "mine");
}

TEST_F(NewCommand, RefusesWhatIsNoSheet) {
    files_.write("text.tif", "PL TRIVET runs along the road.\n");
    files_.write("nothing.tif", "");
    expectRefused(makeOn("text.tif", {}), "text.tif cannot be read");
    expectRefused(makeOn("nothing.tif", {}), "nothing.tif cannot be read");
    expectRefused(makeOn("missing.tif", {}), "missing.tif is not there");
}

TEST_F(NewCommand, RefusesASheetThatBrokeOff) {
    std::filesystem::resize_file(files_.sheet(), std::filesystem::file_size(files_.sheet()) / 2);
    expectRefused(makeOn("sheet.tif", {}), "sheet.tif is damaged");
}

TEST_F(NewCommand, RefusesASheetInDegreesWithoutGridOrScale) {
    crosstick::testing::makeSheet(files_ / "degrees.tif",
                                  {.crs = "EPSG:4326", .placement = {-31, 0.001, 0, 46, 0, -0.001}});
    crosstick::testing::makeSheet(files_ / "nocrs.tif", {.crs = ""});
    expectRefused(makeOn("degrees.tif", {}), "degrees.tif lies in degrees");
    expectRefused(makeOn("nocrs.tif", {}), "nocrs.tif does not say in which grid");
    const Said answer = said({"new", plan(), "--sheet", files_.sheet()});
    expectRefused(answer, "--scale");
}

TEST_F(NewCommand, RefusesFactsThatAreNone) {
    expectRefused(makeOn("sheet.tif", {"--zone", "J"}), "\"J\" is no time zone");
    expectRefused(makeOn("sheet.tif", {"--date", "2027-02-30"}), "2027-02-30");
    expectRefused(makeOn("sheet.tif", {"--printed-gm", "11W"}), "--printed-date");
    expectRefused(makeOn("sheet.tif", {"--printed-gm", "11X", "--printed-date", "2025-01-01"}), "11X");
    expectRefused(makeOn("sheet.tif", {"--printed-gm", "200W", "--printed-date", "2025-01-01"}), "200W");
}

TEST_F(NewCommand, WrongUseIsToldApartFromWhatCannotBe) {
    EXPECT_EQ(said({"new"}).exit, Exit::WrongUse);
    EXPECT_EQ(said({"new", plan()}).exit, Exit::WrongUse);
    for (const auto& [option, value] :
         {std::pair{"--zone", "ZZ"}, std::pair{"--zone", ""}, std::pair{"--declination", "both"},
          std::pair{"--pace", "9"}, std::pair{"--rate", "nan"}, std::pair{"--pace", "nan"},
          std::pair{"--yearly-change", "nan"}, std::pair{"--scale", "inf"}, std::pair{"--scale", "-5"}}) {
        EXPECT_EQ(said({"new", plan(), "--sheet", files_.sheet(), std::string(option) + "=" + value}).exit,
                  Exit::WrongUse)
            << option << ' ' << value;
    }
    EXPECT_FALSE(std::filesystem::exists(plan()));
}

TEST_F(NewCommand, NamesAFolderThatIsNotThere) {
    const Said answer = said({"new", files_ / "none/plan.gpkg", "--sheet", files_.sheet(), "--scale", "25000"});
    EXPECT_EQ(answer.exit, Exit::CouldNot);
    EXPECT_THAT(answer.err, HasSubstr("none"));
}

}  // namespace
}  // namespace crosstick::app
