// How things lie on one film: rows that share an extension line, symbols and labels placed by hand.
#include "core/plan/showings.h"

#include <gtest/gtest.h>

#include "core/plan/edits.h"

namespace crosstick::plan {
namespace {

geodesy::PlanePoint at(double east, double north) {
    return {Metres(east), Metres(north)};
}

Uuid id(std::uint8_t number) {
    return Uuid{{number}};
}

/// Units 1 to 4 on film 100.
class Rows : public ::testing::Test {
  protected:
    Plan plan = [] {
        Plan made = withFilm(Plan{}, id(100), "MOVE", {1});
        for (std::uint8_t n = 1; n <= 4; ++n) {
            Measure unit;
            unit.id = id(n);
            unit.kind = "unit";
            unit.points = {at(100.0 * n, 0)};
            made = withMeasure(made, unit, id(100));
        }
        return made;
    }();
    [[nodiscard]] static std::vector<std::optional<ItemId>> rows(const Plan& plan) {
        std::vector<std::optional<ItemId>> all;
        for (const Showing& showing : plan.film(id(100))->shows) {
            all.push_back(showing.standsWith);
        }
        return all;
    }
};

TEST_F(Rows, AUnitPutBesideAFollowerStandsWithTheLeader) {
    Plan row = standingWith(plan, id(2), id(100), id(1));
    row = standingWith(row, id(3), id(100), id(2));
    EXPECT_EQ(rows(row), (std::vector<std::optional<ItemId>>{{}, id(1), id(1), {}}));
    EXPECT_EQ(leaderOf(*row.film(id(100)), id(3)), id(1));
}

TEST_F(Rows, UnitsOfARowAreWhereTheirLeaderIs) {
    const Plan row = standingWith(plan, id(2), id(100), id(1));
    EXPECT_EQ(row.measure(id(2))->points, plan.measure(id(1))->points);
    EXPECT_EQ(row.measure(id(1))->points, plan.measure(id(1))->points);
}

TEST_F(Rows, ALeaderTakesItsRowAlong) {
    Plan row = standingWith(plan, id(2), id(100), id(1));
    row = standingWith(row, id(1), id(100), id(4));
    EXPECT_EQ(rows(row), (std::vector<std::optional<ItemId>>{id(4), id(4), {}, {}}));
}

TEST_F(Rows, NoUnitStandsWithItselfOrItsOwnFollower) {
    const Plan row = standingWith(plan, id(2), id(100), id(1));
    EXPECT_TRUE(standingWith(row, id(1), id(100), id(2)) == row);
    EXPECT_TRUE(standingWith(row, id(3), id(100), id(3)) == row);
    EXPECT_TRUE(standingWith(row, id(3), id(100), id(77)) == row) << "with what the film does not show";
}

TEST_F(Rows, OutOfTheRowAUnitStandsByItself) {
    const Plan row = standingWith(plan, id(2), id(100), id(1));
    const Plan out = standingWith(row, id(2), id(100), std::nullopt);
    EXPECT_EQ(rows(out), (std::vector<std::optional<ItemId>>{{}, {}, {}, {}}));
    EXPECT_EQ(out.measure(id(2))->points, row.measure(id(1))->points) << "it stays where its row was";
    EXPECT_TRUE(standingWith(row, id(1), id(100), std::nullopt) == row) << "a leader is in nobody's row";
}

TEST_F(Rows, WhereTheLeaderGoesTheNextLeadsFromItsPlace) {
    Plan row = standingWith(standingWith(plan, id(2), id(100), id(1)), id(3), id(100), id(1));
    row = pointingTo(setAside(row, id(3), id(100), at(50, 60)), id(2), id(100), id(4));
    const Showing& led = row.film(id(100))->shows.front();
    EXPECT_EQ(led.symbolAt, at(50, 60)) << "setting a follower aside moves the row";
    EXPECT_EQ(led.pointsTo, id(4));
    for (const Plan& without1 : {without(row, id(1)), notShownOn(row, id(1), id(100))}) {
        const auto& shows = without1.film(id(100))->shows;
        ASSERT_EQ(shows.size(), 3U);
        EXPECT_EQ(shows[0].standsWith, std::nullopt);
        EXPECT_EQ(shows[0].symbolAt, at(50, 60));
        EXPECT_EQ(shows[0].pointsTo, id(4));
        EXPECT_EQ(shows[1].standsWith, id(2));
    }
}

TEST_F(Rows, ALabelIsPlacedOnOneFilmAndGivenBack) {
    const Plan placed = labelPlaced(plan, id(2), id(100), at(9, 9));
    EXPECT_EQ(placed.film(id(100))->shows[1].labelAt, at(9, 9));
    EXPECT_TRUE(labelPlaced(placed, id(2), id(100), std::nullopt) == plan);
    EXPECT_TRUE(labelPlaced(plan, id(2), id(101), at(9, 9)) == plan) << "on a film that there is not";
}

TEST_F(Rows, FiguresArePlacedLegByLegAndGivenBackWithTheName) {
    const LegPiece first{id(1), id(2)};
    const LegPiece bent{id(2), id(3), 1, 2};
    Plan placed = figuresPlaced(plan, id(4), id(100), first, at(1, 1));
    placed = figuresPlaced(placed, id(4), id(100), bent, at(2, 2));
    placed = figuresPlaced(placed, id(4), id(100), first, at(3, 3));
    EXPECT_EQ(placed.film(id(100))->shows[3].figures, (std::vector<FiguresAt>{{first, at(3, 3)}, {bent, at(2, 2)}}));
    EXPECT_TRUE(labelPlaced(placed, id(4), id(100), std::nullopt) == plan);
    EXPECT_EQ(labelPlaced(placed, id(4), id(100), at(9, 9)).film(id(100))->shows[3].figures.size(), 2U);
    EXPECT_TRUE(figuresPlaced(plan, id(4), id(101), first, at(1, 1)) == plan) << "on a film that there is not";
}

}  // namespace
}  // namespace crosstick::plan
