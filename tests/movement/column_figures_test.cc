#include "core/movement/column_figures.h"

#include <gtest/gtest.h>

namespace crosstick::movement {
namespace {

/// One element a strength, 20 m between them, single file, 5 m apart.
plan::Force forceOf(const std::vector<int>& strengths) {
    plan::Force force;
    plan::Column column;
    std::uint8_t n = 0;
    for (const int people : strengths) {
        const Uuid id{{++n}};
        force.elements.push_back({id, "inf sqd", "", "", people});
        column.serials.push_back({id, "", std::nullopt});
    }
    force.columns.push_back(std::move(column));
    return force;
}

// Length of a column per soldier: FM 21-18, from memory (trade.md 6).
TEST(Column, TakesTheFactorsOfFootMarches) {
    plan::Column column;
    EXPECT_NEAR(perMan(column).value(), 5.4, 1e-9);
    column.apart = Metres(2);
    EXPECT_NEAR(perMan(column).value(), 2.4, 1e-9);
    column.files = 2;
    EXPECT_NEAR(perMan(column).value(), 1.2, 1e-9);
    column.apart = Metres(5);
    EXPECT_NEAR(perMan(column).value(), 2.7, 1e-9);
}

// Pass time in minutes a metre: 60 / (1000 v) (trade.md 6, recomputed).
TEST(Column, PassesAtItsRate) {
    EXPECT_NEAR(passTime(Metres(1), KilometresPerHour(4.0)).value(), 0.0150, 1e-9);
    EXPECT_NEAR(passTime(Metres(1), KilometresPerHour(3.2)).value(), 0.01875, 1e-9);
    EXPECT_NEAR(passTime(Metres(1), KilometresPerHour(2.4)).value(), 0.0250, 1e-9);
    EXPECT_NEAR(passTime(Metres(1), KilometresPerHour(1.6)).value(), 0.0375, 1e-9);
}

// A company of 125: 675 m and 10.1 min at 4 km/h in single file, 337.5 m in twos (trade.md 6, worked).
TEST(Column, OfACompanyIsAsLongAsTheWorkedExample) {
    plan::Force force = forceOf({125});
    EXPECT_NEAR(columnFigures(force, force.columns[0]).length.value(), 675, 1e-9);
    EXPECT_NEAR(passTime(Metres(675), KilometresPerHour(4)).value(), 10.125, 1e-9);
    force.columns[0].files = 2;
    EXPECT_NEAR(columnFigures(force, force.columns[0]).length.value(), 337.5, 1e-9);
}

// Exercise SLOW KETTLE, checked by hand: 316.0 m, 11.85 min at 1.6 km/h, heads at 0, 68.6, 104.8, 168.0, 236.6, 267.4.
TEST(Column, OfTheExerciseIsAsCheckedByHand) {
    const plan::Force force = forceOf({9, 3, 8, 9, 2, 9});
    const ColumnFigures figures = columnFigures(force, force.columns[0]);
    EXPECT_EQ(figures.people, 40);
    EXPECT_NEAR(figures.length.value(), 316.0, 1e-9);
    EXPECT_NEAR(passTime(figures.length, KilometresPerHour(1.6)).value(), 11.85, 1e-9);
    const std::vector<double> heads{0, 68.6, 104.8, 168.0, 236.6, 267.4};
    ASSERT_EQ(figures.elements.size(), heads.size());
    for (std::size_t n = 0; n < heads.size(); ++n) {
        EXPECT_NEAR(figures.elements[n].headBehind.value(), heads[n], 1e-9) << n;
    }
}

TEST(Column, KeepsAnIntervalOfItsOwnAndPassesOverWhomItDoesNotKnow) {
    plan::Force force = forceOf({10, 10});
    force.columns[0].serials[0].behind = Metres(50);
    force.columns[0].serials.push_back({Uuid{{99}}, "REAR", std::nullopt});
    const ColumnFigures figures = columnFigures(force, force.columns[0]);
    EXPECT_NEAR(figures.length.value(), 54 + 50 + 54 + 20, 1e-9);
    EXPECT_EQ(figures.people, 20);
    EXPECT_NEAR(figures.elements[2].length.value(), 0, 1e-12);
}

TEST(Column, IsFoundByItsNameInAnyCase) {
    plan::Force force = forceOf({1});
    force.columns[0].name = "Approach";
    EXPECT_EQ(force.columnNamed("APPROACH"), force.columns.data());
    EXPECT_EQ(force.columnNamed(""), force.columns.data());
    EXPECT_EQ(force.columnNamed("Return"), nullptr);
}

}  // namespace
}  // namespace crosstick::movement
