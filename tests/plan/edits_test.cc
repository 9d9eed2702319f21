#include "core/plan/edits.h"

#include <array>

#include <gtest/gtest.h>

#include "core/plan/showings.h"

namespace crosstick::plan {
namespace {

geodesy::PlanePoint at(double east, double north) {
    return {Metres(east), Metres(north)};
}

Uuid id(std::uint8_t number) {
    return Uuid{{number}};
}

Measure point(std::uint8_t number, const char* kind, geodesy::PlanePoint place) {
    Measure measure;
    measure.id = id(number);
    measure.kind = kind;
    measure.number = std::to_string(number);
    measure.points = {place};
    return measure;
}

/// Film 100 with a route 50 from start point 1 by a bend to checkpoint 2, and film 101.
class Edits : public ::testing::Test {
  protected:
    Plan plan = [] {
        Plan bare = withFilm(withFilm(Plan{}, id(100), "MOVE", {1}), id(101), "LOOK", {2});
        Route route;
        route.id = id(50);
        route.name = "FERN";
        route.vertices = {at(0, 0), at(100, 100), at(200, 0)};
        route.stops = {{0, id(1), {}}, {2, id(2), {}}};
        return withRoute(bare, route, {point(1, "start-point", at(0, 0)), point(2, "checkpoint", at(200, 0))}, id(100));
    }();
};

TEST_F(Edits, ARouteIsShownWithTheMeasuresOnIt) {
    for (const std::uint8_t item : std::array<std::uint8_t, 3>{1, 2, 50}) {
        EXPECT_TRUE(isShownOn(*plan.film(id(100)), id(item))) << int{item};
        EXPECT_FALSE(isShownOn(*plan.film(id(101)), id(item))) << int{item};
    }
}

TEST_F(Edits, ARoutePointAndItsVertexMoveTogetherWhicheverIsTaken) {
    const Plan byMeasure = withPoint(plan, id(2), 0, at(250, 10));
    const Plan byVertex = withPoint(plan, id(50), 2, at(250, 10));
    EXPECT_TRUE(byMeasure == byVertex);
    EXPECT_EQ(byMeasure.route(id(50))->vertices[2], at(250, 10));
    EXPECT_EQ(byMeasure.measure(id(2))->points[0], at(250, 10));
    EXPECT_EQ(plan.route(id(50))->vertices[2], at(200, 0)) << "the plan before is untouched";
}

TEST_F(Edits, ABendMovesAlone) {
    const Plan moved = withPoint(plan, id(50), 1, at(90, 120));
    EXPECT_EQ(moved.route(id(50))->vertices[1], at(90, 120));
    EXPECT_EQ(&moved.measures().chunks(), &plan.measures().chunks());
}

TEST_F(Edits, AWholeRouteTakesItsPointsAlong) {
    const Plan moved = movedBy(plan, id(50), Metres(5), Metres(-7));
    EXPECT_EQ(moved.route(id(50))->vertices, (std::vector{at(5, -7), at(105, 93), at(205, -7)}));
    EXPECT_EQ(moved.measure(id(1))->points[0], at(5, -7));
    EXPECT_EQ(moved.measure(id(2))->points[0], at(205, -7));
}

TEST_F(Edits, StopsKeepTheirVertexWhenPointsComeAndGo) {
    const Plan more = withPointBefore(plan, id(50), 1, at(50, 60));
    EXPECT_EQ(more.route(id(50))->stops[1].vertex, 3U);
    EXPECT_EQ(more.route(id(50))->vertices[3], at(200, 0));
    EXPECT_TRUE(withoutPoint(more, id(50), 1) == plan);
}

TEST_F(Edits, ALineKeepsAsManyPointsAsItNeeds) {
    Measure line = point(7, "phase-line", at(0, 0));
    line.points = {at(0, 0), at(10, 0)};
    Measure area = point(8, "assembly-area", at(0, 0));
    area.points = {at(0, 0), at(10, 0), at(10, 10)};
    const Plan drawn = withMeasure(withMeasure(plan, line, id(100)), area, id(100));
    EXPECT_TRUE(withoutPoint(drawn, id(7), 0) == drawn);
    EXPECT_TRUE(withoutPoint(drawn, id(8), 0) == drawn);
    const Plan longer = withPointBefore(drawn, id(7), 1, at(5, 5));
    EXPECT_TRUE(withoutPoint(longer, id(7), 1) == drawn);
}

TEST_F(Edits, WhatIsWipedOffLeavesFilmsAndRoutes) {
    const Plan wiped = without(plan, id(2));
    EXPECT_EQ(wiped.measure(id(2)), nullptr);
    EXPECT_FALSE(isShownOn(*wiped.film(id(100)), id(2)));
    ASSERT_EQ(wiped.route(id(50))->stops.size(), 1U);
    EXPECT_EQ(wiped.route(id(50))->vertices.size(), 3U) << "the way stays";
    EXPECT_EQ(without(plan, id(50)).route(id(50)), nullptr);
}

TEST_F(Edits, OneMeasureCanBeShownOnSeveralFilms) {
    const Plan both = shownOn(plan, id(2), id(101));
    EXPECT_TRUE(isShownOn(*both.film(id(100)), id(2)));
    EXPECT_TRUE(isShownOn(*both.film(id(101)), id(2)));
    EXPECT_TRUE(notShownOn(both, id(2), id(101)) == plan);
    const Plan moved = movedToFilm(plan, id(2), id(100), id(101));
    EXPECT_FALSE(isShownOn(*moved.film(id(100)), id(2)));
    EXPECT_TRUE(isShownOn(*moved.film(id(101)), id(2)));
}

TEST_F(Edits, ASymbolSetAsideLeavesTheSpotWhereItIs) {
    const Plan aside = setAside(plan, id(2), id(100), at(300, 300));
    EXPECT_EQ(aside.measure(id(2))->points[0], at(200, 0));
    EXPECT_TRUE(setAside(aside, id(2), id(100), std::nullopt) == plan);
}

TEST_F(Edits, FilmsChangePlacesInTheStackAndStopAtItsEnds) {
    const Plan up = restacked(plan, id(100), Step::Up);
    EXPECT_EQ(up.films().back()->id, id(100));
    EXPECT_TRUE(restacked(up, id(100), Step::Up) == up);
    EXPECT_TRUE(restacked(up, id(100), Step::Down) == plan);
}

TEST_F(Edits, TheNextNumberIsTheFirstThatIsFree) {
    EXPECT_EQ(nextNumber(plan, "checkpoint"), "1");
    EXPECT_EQ(nextNumber(plan, "start-point"), "2");
    EXPECT_EQ(nextName(plan, "phase-line"), "A");
    Measure line = point(7, "phase-line", at(0, 0));
    line.name = "A";
    EXPECT_EQ(nextName(withMeasure(plan, line, id(100)), "phase-line"), "B");
}

TEST_F(Edits, WhatThePlanDoesNotHaveChangesNothing) {
    EXPECT_TRUE(withPoint(plan, id(99), 0, at(1, 1)) == plan);
    EXPECT_TRUE(withPoint(plan, id(50), 9, at(1, 1)) == plan);
    EXPECT_TRUE(movedBy(plan, id(99), Metres(1), Metres(1)) == plan);
    EXPECT_TRUE(without(plan, id(99)) == plan);
    EXPECT_TRUE(shownOn(plan, id(2), id(99)) == plan);
}

}  // namespace
}  // namespace crosstick::plan
