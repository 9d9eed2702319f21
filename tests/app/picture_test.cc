// The command picture, through the door that the program itself uses.
#include <fstream>
#include <iterator>
#include <sstream>

#include <gtest/gtest.h>

#include <QImage>

#include "app/program.h"
#include "core/files/plan_file.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"
#include "tests/sheets/made_sheets.h"
#include "tests/sheets/our_reader.h"

namespace crosstick::app {
namespace {

struct Answer {
    Exit exit;
    std::string out, err;
};

Answer ask(std::vector<std::string> arguments) {
    std::istringstream in;
    std::ostringstream out;
    std::ostringstream err;
    const Surroundings surroundings{in, out, err, places::share(), testing::reader(), Instant{}, 1};
    const Exit exit = run(std::move(arguments), surroundings);
    return {exit, out.str(), err.str()};
}

class Picture : public ::testing::Test {
  protected:
    testing::Folder folder_;

    /// The hand-checked plan on a green sheet of 10 by 10 km.
    void SetUp() override {
        testing::makeSheet(folder_ / "sheet.tif", {.columns = 1000,
                                                   .rows = 1000,
                                                   .bands = 3,
                                                   .placement = {650000, 10, 0, 5105000, 0, -10},
                                                   .options = {"PHOTOMETRIC=RGB"},
                                                   .value = [](int, int, int band) { return band == 2 ? 200 : 100; }});
        const plan::Plan kettle = movement::kettlePlan();
        plan::Sheet sheet = *kettle.sheets().front();
        sheet.path = "sheet.tif";
        sheet.columns = sheet.rows = 1000;
        sheet.placement = {movement::at(650000, 5105000), 10, 0, 0, -10};
        plan::PlanBuilder builder(kettle);
        builder.put(sheet).registration(
            plan::Registration{movement::at(652300, 5096200), movement::at(659000, 5104500), {}});
        ASSERT_TRUE(files::PlanFile::create(plan(), std::move(builder).build(), Instant{}).has_value());
    }
    [[nodiscard]] std::string plan() const { return (folder_ / "plan.gpkg").string(); }
    [[nodiscard]] std::string png() const { return (folder_ / "table.png").string(); }
    [[nodiscard]] QImage made() const { return QImage(QString::fromStdString(png())); }
};

TEST_F(Picture, IsWrittenInTheSizeThatWasAsked) {
    const Answer answer = ask({"picture", plan(), "-o", png(), "--size", "800x600"});
    EXPECT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_EQ(answer.err, "");
    EXPECT_EQ(made().size(), QSize(800, 600));
}

TEST_F(Picture, LooksWhereItIsToldTo) {
    const Answer answer =
        ask({"picture", plan(), "-o", png(), "--at", "25T FL 5050 9550", "--seen", "5000", "--film", "MOVE"});
    EXPECT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_EQ(made().pixel(700, 300), qRgb(100, 200, 100));  // a corner of the sheet where nothing is drawn
}

TEST_F(Picture, WrongUseAndWhatCannotBeAreToldApart) {
    EXPECT_EQ(ask({"picture", plan()}).exit, Exit::WrongUse);
    EXPECT_EQ(ask({"picture", plan(), "-o", png(), "--size", "12x3000000"}).exit, Exit::WrongUse);
    const Answer film = ask({"picture", plan(), "-o", png(), "--film", "NONE"});
    EXPECT_EQ(film.exit, Exit::CouldNot);
    EXPECT_NE(film.err.find("NONE"), std::string::npos);
    const Answer missing = ask({"picture", (folder_ / "none.gpkg").string(), "-o", png()});
    EXPECT_EQ(missing.exit, Exit::CouldNot);
    EXPECT_FALSE(std::filesystem::exists(png()));
}

TEST_F(Picture, AMovedSheetIsOneClearErrorAndLeavesTheOldPicture) {
    testing::writeText(png(), "old");
    std::filesystem::remove(folder_ / "sheet.tif");
    const Answer answer = ask({"picture", plan(), "-o", png()});
    EXPECT_EQ(answer.exit, Exit::CouldNot);
    EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1);
    EXPECT_NE(answer.err.find("sheet.tif"), std::string::npos);
    std::ifstream in(png());
    EXPECT_EQ(std::string(std::istreambuf_iterator<char>(in), {}), "old");
}

}  // namespace
}  // namespace crosstick::app
