// The hand check in the manual: what it says that the program gives is what the program gives, and what a hand reads
// lies as near to the exact figures as a hand reads.
#include <cmath>
#include <fstream>
#include <sstream>

#include <gtest/gtest.h>

#include "core/movement/paper_figures.h"
#include "core/units/number_text.h"
#include "sample-data/plan/demo_plan.h"
#include "tests/places.h"

namespace crosstick {
namespace {

using Cells = std::vector<std::string>;

std::vector<Cells> rowsOf(const std::string& file, std::size_t columns) {
    std::ifstream in(file);
    std::vector<Cells> rows;
    for (std::string line; std::getline(in, line);) {
        if (!line.starts_with("| ") || line.starts_with("| ---")) {
            continue;
        }
        Cells cells;
        std::istringstream parts(line.substr(2));
        for (std::string cell; std::getline(parts, cell, '|');) {
            const auto from = cell.find_first_not_of(' ');
            cells.push_back(from == std::string::npos ? "" : cell.substr(from, cell.find_last_not_of(' ') - from + 1));
        }
        if (cells.size() == columns) {
            rows.push_back(std::move(cells));
        }
    }
    return rows;
}

double number(const std::string& text) {
    return parseNumber(text).value_or(std::nan(""));
}

class HandCheckPage : public ::testing::Test {
  protected:
    std::string page_ = places::source() / "app/manual/hand-check.md";
    plan::Plan plan_;
    movement::RouteFigures figures_;
    movement::PaperRoute paper_;

    void SetUp() override {
        plan::Sheet sheet;
        sheet.crs = "EPSG:32625";
        plan_ = *demo::demoPlan(places::share() / "demo", sheet);
        const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
        figures_ = *movement::routeFigures(plan_, *plan_.routeNamed("QUILL"), &*model, nullptr);
        paper_ = *movement::paperFigures(plan_, figures_, geodesy::AngleUnit::Degrees);
    }
};

TEST_F(HandCheckPage, SaysWhatTheProgramGives) {
    const auto rows = rowsOf(page_, 11);
    std::size_t at = 1;  // after the heads
    for (const movement::PaperLeg& leg : paper_.legs) {
        std::string from = leg.fromGrid;
        for (const movement::PaperPiece& piece : leg.pieces) {
            ASSERT_LT(at, rows.size());
            const Cells& row = rows[at++];
            SCOPED_TRACE(row[0]);
            EXPECT_EQ(row[1], from);
            EXPECT_EQ(row[2], piece.toGrid);
            EXPECT_EQ(row[8], piece.magnetic);
            EXPECT_EQ(row[9], std::to_string(piece.metres));
            EXPECT_EQ(row[10], std::to_string(*piece.paces));
            from = piece.toGrid;
        }
    }
    EXPECT_EQ(at, rows.size());
}

TEST_F(HandCheckPage, TheHandReadsWhatIsThereAsNearAsAHandReads) {
    const auto rows = rowsOf(page_, 11);
    std::size_t at = 1;
    for (const movement::Leg& leg : figures_.legs) {
        for (const movement::Piece& piece : leg.pieces) {
            const Cells& row = rows.at(at++);
            SCOPED_TRACE(row[0]);
            constexpr double kMetresAMillimetre = 25;
            EXPECT_NEAR(number(row[3]), piece.mapDistance.value() / kMetresAMillimetre, 0.26);
            EXPECT_NEAR(number(row[4]), number(row[3]) * kMetresAMillimetre, 5.01);
            EXPECT_NEAR(number(row[5]), piece.gridAzimuth.value(), 0.51);
            EXPECT_EQ(number(row[6]), number(row[5]) + 11);
            EXPECT_NEAR(number(row[6]), number(row[8]), 1);
            EXPECT_NEAR(number(row[7]), number(row[4]) * 0.74, 0.51);
            EXPECT_NEAR(number(row[4]), number(row[9]), 10);
        }
    }
    EXPECT_NEAR(figures_.gm.angle.value(), -11, 0.5) << "the page adds 11";
    EXPECT_EQ(figures_.pace->doublePacesPer100, 74);
}

TEST_F(HandCheckPage, TheClockIsWithinAMinute) {
    const auto rows = rowsOf(page_, 5);
    ASSERT_EQ(rows.size(), paper_.legs.size() + 1);
    const auto minutesOfDay = [](const std::string& clock) {
        return number(clock.substr(0, 2)) * 60 + number(clock.substr(2));
    };
    for (std::size_t n = 0; n < paper_.legs.size(); ++n) {
        const Cells& row = rows[n + 1];
        SCOPED_TRACE(row[0]);
        EXPECT_EQ(row[0], paper_.legs[n].to);
        EXPECT_EQ(row[4], paper_.legs[n].arrival);
        EXPECT_NEAR(number(row[2]), number(row[1]) * 60 / 1600, 0.51);
        EXPECT_NEAR(std::remainder(minutesOfDay(row[3]) - 21 * 60 - number(row[2]), 1440), 0, 1e-9);
        EXPECT_LE(std::abs(std::remainder(minutesOfDay(row[3]) - minutesOfDay(row[4]), 1440)), 1);
    }
}

}  // namespace
}  // namespace crosstick
