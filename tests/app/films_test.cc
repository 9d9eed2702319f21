// The command films.
#include <cmath>
#include <filesystem>
#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/app/asking.h"
#include "tests/app/made_plan.h"
#include "tests/files/run_program.h"
#include "tests/places.h"

namespace crosstick::app {
namespace {

using ::testing::HasSubstr;
using ::testing::StartsWith;
using ::testing::UnorderedElementsAre;

class FilmsCommand : public ::testing::Test {
  protected:
    MadeFiles files_;
    std::string plan_ = files_.printedPlan();

    [[nodiscard]] std::string pdf() const { return files_ / "films.pdf"; }
    [[nodiscard]] Said films(const std::vector<std::string>& more) const {
        std::vector<std::string> arguments{"films", plan_, "-o", pdf()};
        arguments.insert(arguments.end(), more.begin(), more.end());
        return said(arguments);
    }
};

std::set<std::string> keysOf(const nlohmann::json& object) {
    std::set<std::string> keys;
    for (const auto& [key, value] : object.items()) {
        keys.insert(key);
    }
    return keys;
}

TEST_F(FilmsCommand, WritesOnePdfAndSaysAPageAFilm) {
    const Said answer = films({});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_THAT(contents(pdf()), StartsWith("%PDF-"));
    for (const char* line : {"HIGHER: ", "MOVE: 297 x 420 mm, 1:25000, 4 ticks", "LOOK: ", "true size"}) {
        EXPECT_THAT(answer.out, HasSubstr(line));
    }
}

// Scenario 4: the window from E 652300 N 5096200 to E 659000 N 5104500, ticks at 653 and 658, 5097 and 5104.
TEST_F(FilmsCommand, JsonNamesEveryPagesPaperTicksAndBars) {
    const Said answer = films({"--json"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    const auto pages = answer.json();
    ASSERT_EQ(pages.size(), 3U);
    const std::vector<std::string> names{"HIGHER", "MOVE", "LOOK"};
    for (std::size_t n = 0; n < 3; ++n) {
        const auto& page = pages[n];
        EXPECT_THAT(keysOf(page),
                    UnorderedElementsAre("page", "film", "width_mm", "height_mm", "scale", "crs", "ticks", "bars"));
        EXPECT_EQ(page.at("page"), n + 1);
        EXPECT_EQ(page.at("film"), names[n]);
        EXPECT_EQ(page.at("width_mm"), 297);
        EXPECT_EQ(page.at("height_mm"), 420);
        EXPECT_EQ(page.at("scale"), 25000);
        EXPECT_EQ(page.at("crs"), "EPSG:32625");
        ASSERT_EQ(page.at("ticks").size(), 4U);
        ASSERT_EQ(page.at("bars").size(), 2U);
    }
}

TEST_F(FilmsCommand, JsonTicksLieToScaleAndBarsAreAHundredLong) {
    for (const auto& page : films({"--json"}).json()) {
        const auto& first = page.at("ticks")[0];
        EXPECT_THAT(keysOf(first), UnorderedElementsAre("grid", "easting_m", "northing_m", "x_mm", "y_mm"));
        for (const auto& tick : page.at("ticks")) {
            // 1:25,000: 25 m a millimetre, rows running down.
            const double east = (tick.at("easting_m").get<double>() - first.at("easting_m").get<double>()) / 25;
            const double south = (first.at("northing_m").get<double>() - tick.at("northing_m").get<double>()) / 25;
            EXPECT_NEAR(tick.at("x_mm").get<double>() - first.at("x_mm").get<double>(), east, 1e-3);
            EXPECT_NEAR(tick.at("y_mm").get<double>() - first.at("y_mm").get<double>(), south, 1e-3);
        }
        for (const auto& bar : page.at("bars")) {
            EXPECT_THAT(keysOf(bar), UnorderedElementsAre("x1_mm", "y1_mm", "x2_mm", "y2_mm"));
            const double x = bar.at("x2_mm").get<double>() - bar.at("x1_mm").get<double>();
            const double y = bar.at("y2_mm").get<double>() - bar.at("y1_mm").get<double>();
            EXPECT_NEAR(std::hypot(x, y), 100, 1e-6);
        }
    }
}

TEST_F(FilmsCommand, PrintsTheFilmsThatAreNamedInThatOrder) {
    const auto pages = films({"--film", "LOOK", "--film", "MOVE", "--json"}).json();
    ASSERT_EQ(pages.size(), 2U);
    EXPECT_EQ(pages[0].at("film"), "LOOK");
    EXPECT_EQ(pages[1].at("film"), "MOVE");
}

TEST_F(FilmsCommand, ScaleAndPaperAreAsAsked) {
    const auto page = films({"--film", "LOOK", "--scale", "50000", "--paper", "300x400", "--json"}).json().at(0);
    EXPECT_EQ(page.at("scale"), 50000);
    EXPECT_EQ(page.at("width_mm"), 300);
    EXPECT_EQ(page.at("height_mm"), 400);
    const double across = page.at("ticks")[1].at("x_mm").get<double>() - page.at("ticks")[0].at("x_mm").get<double>();
    EXPECT_NEAR(across, 5000.0 / 50, 1e-3);
}

TEST_F(FilmsCommand, IsTheSameFileTwice) {
    ASSERT_EQ(films({"--one-pen"}).exit, Exit::Done);
    const std::string first = contents(pdf());
    ASSERT_EQ(films({"--one-pen"}).exit, Exit::Done);
    EXPECT_EQ(contents(pdf()), first);
}

// 268 x 332 mm of window are more than an A4 sheet.
TEST_F(FilmsCommand, RefusesPapersThatAreTooSmallOrNone) {
    for (const auto& [paper, what] : {std::pair{"a4", "HIGHER does not fit on A4"}, std::pair{"12", "no paper 12"},
                                      std::pair{"12x3000000", "no paper 12x3000000"}, std::pair{"-3x40", "-3x40"}}) {
        const Said answer = films({std::string("--paper=") + paper});
        EXPECT_EQ(answer.exit, Exit::CouldNot) << paper;
        EXPECT_THAT(answer.err, HasSubstr(what));
        EXPECT_EQ(answer.out, "");
        EXPECT_FALSE(std::filesystem::exists(pdf())) << paper;
    }
}

TEST_F(FilmsCommand, RefusesAFilmThatIsNoneAndNamesThoseThereAre) {
    const Said answer = films({"--film", "NONE"});
    EXPECT_EQ(answer.exit, Exit::CouldNot);
    EXPECT_THAT(answer.err, HasSubstr("no film NONE"));
    EXPECT_THAT(answer.err, HasSubstr("HIGHER, MOVE, LOOK"));
}

TEST_F(FilmsCommand, WrongUseIsToldApartFromWhatCannotBe) {
    EXPECT_EQ(said({"films", plan_}).exit, Exit::WrongUse);
    EXPECT_EQ(films({"--scale", "0"}).exit, Exit::WrongUse);
    EXPECT_EQ(films({"--scale", "nan"}).exit, Exit::WrongUse);
    EXPECT_EQ(said({"films", plan_, "-o", files_ / "none/films.pdf"}).exit, Exit::CouldNot);
}

TEST_F(FilmsCommand, RefusesWhatIsNoPlan) {
    files_.write("text.gpkg", "PL TRIVET runs along the road.\n");
    files_.write("empty.gpkg", "");
    for (const char* name : {"text.gpkg", "empty.gpkg", "missing.gpkg", "sheet.tif"}) {
        const Said answer = said({"films", files_ / name, "-o", pdf()});
        EXPECT_EQ(answer.exit, Exit::CouldNot) << name;
        EXPECT_THAT(answer.err, HasSubstr(name));
        EXPECT_FALSE(std::filesystem::exists(pdf())) << name;
    }
}

TEST_F(FilmsCommand, LeavesTheOldFileWhereItFails) {
    files_.write("films.pdf", "old");
    EXPECT_EQ(films({"--film", "NONE"}).exit, Exit::CouldNot);
    EXPECT_EQ(contents(pdf()), "old");
}

// Films show no raster: they print as ever when the sheet has been moved away.
TEST_F(FilmsCommand, NeedsNoSheetFile) {
    ASSERT_EQ(films({}).exit, Exit::Done);
    const std::string with = contents(pdf());
    std::filesystem::remove(files_.sheet());
    EXPECT_EQ(films({}).exit, Exit::Done);
    EXPECT_EQ(contents(pdf()), with);
}

// A service or a shell script has no runtime folder; Qt would remark on that in its own words.
TEST_F(FilmsCommand, IsSilentWhereTheSystemNamesNoRuntimeFolder) {
    const auto ran =
        crosstick::testing::runProgram("env -u XDG_RUNTIME_DIR -u QT_QPA_PLATFORM " + places::program().string() +
                                       " films " + plan_ + " -o " + pdf() + " 2>&1 >/dev/null");
    EXPECT_EQ(ran.status, 0);
    EXPECT_EQ(ran.output, "");
}

// What was left out of a film is said, in the words of the remark, and the film is printed.
TEST_F(FilmsCommand, SaysWhatItCouldNotDraw) {
    files_.write("none.geojson", R"({"type":"Feature","geometry":{"type":"LineString","coordinates":)"
                                 R"([[-31.0,46.04],[-31.0,46.04]]},"properties":{"kind":"phase-line",)"
                                 R"("name":"KNOT","film":"LOOK"}})");
    const Said drawn = said({"draw", plan_, files_ / "none.geojson"});
    ASSERT_EQ(drawn.exit, Exit::Done) << drawn.err;
    const Said answer = films({"--film", "LOOK"});
    EXPECT_EQ(answer.exit, Exit::Done);
    EXPECT_THAT(answer.err, HasSubstr("note: PL KNOT has no length"));
}

TEST_F(FilmsCommand, OfAPlanWithoutFilmsIsRefused) {
    const Said answer = said({"films", files_.emptyPlan(), "-o", pdf()});
    EXPECT_EQ(answer.exit, Exit::CouldNot);
    EXPECT_FALSE(std::filesystem::exists(pdf()));
}

}  // namespace
}  // namespace crosstick::app
