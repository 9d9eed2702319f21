#include "core/plan/set_edits.h"

#include <gtest/gtest.h>

#include "core/plan/edits.h"

namespace crosstick::plan {
namespace {

geodesy::PlanePoint at(double east, double north) {
    return {Metres(650000 + east), Metres(5100000 + north)};
}

class Several : public ::testing::Test {
  protected:
    IdSource ids{8};
    FilmId film = ids.next();
    Plan plan = withFilm(Plan{}, film, "MOVE", {});
    ItemId start = put("start-point", {at(0, 0)});
    ItemId check = put("checkpoint", {at(500, 0)});
    ItemId line = put("phase-line", {at(300, -200), at(300, 200)});
    ItemId route = routed();

    ItemId put(const char* kind, std::vector<geodesy::PlanePoint> points) {
        Measure measure;
        measure.id = ids.next();
        measure.kind = kind;
        measure.points = std::move(points);
        const ItemId id = measure.id;
        plan = withMeasure(plan, std::move(measure), film);
        return id;
    }
    ItemId routed() {
        Route made;
        made.id = ids.next();
        made.name = "QUILL";
        made.vertices = {at(0, 0), at(250, 50), at(500, 0), at(900, 0)};
        made.stops = {{0, start}, {2, check}};
        plan = withRoute(plan, made, {}, film);
        return made.id;
    }
};

TEST_F(Several, ARouteAndAPointOnItAreMovedOnce) {
    const Plan next = allMovedBy(plan, {route, check, line}, Metres(10), Metres(20));
    EXPECT_EQ(next.measure(check)->points.front(), at(510, 20));
    EXPECT_EQ(next.measure(start)->points.front(), at(10, 20));
    EXPECT_EQ(next.measure(line)->points.back(), at(310, 220));
    EXPECT_EQ(next.route(route)->vertices,
              (std::vector<geodesy::PlanePoint>{at(10, 20), at(260, 70), at(510, 20), at(910, 20)}));
    EXPECT_EQ(next, allMovedBy(plan, {line, check, route}, Metres(10), Metres(20)));
    EXPECT_EQ(allMovedBy(next, {route, check, line}, Metres(-10), Metres(-20)), plan);
}

TEST_F(Several, AloneEachMovesAsItDoesByItself) {
    for (const ItemId& item : {route, check, line, start}) {
        EXPECT_EQ(allMovedBy(plan, {item}, Metres(30), Metres(-40)), movedBy(plan, item, Metres(30), Metres(-40)));
    }
}

TEST_F(Several, AllAreTakenOutAndAllGoToAnotherFilm) {
    const FilmId other = ids.next();
    plan = withFilm(plan, other, "LOOK", {});
    const Plan moved = allMovedToFilm(plan, {line, check}, film, other);
    EXPECT_EQ(moved.film(other)->shows.size(), 2U);
    EXPECT_EQ(moved.film(film)->shows.size(), 2U);
    const Plan rest = withoutAll(plan, {line, route});
    EXPECT_EQ(rest.measures().size(), 2U);
    EXPECT_TRUE(rest.routes().empty());
}

TEST_F(Several, WhatLiesOnThePaperStays) {
    const ItemId block = put("order-of-march", {at(1, 1)});
    Measure paper = *plan.measure(block);
    paper.anchor = Anchor::Paper;
    plan = std::move(PlanBuilder(plan).put(paper)).build();
    EXPECT_EQ(*allMovedBy(plan, {block}, Metres(10), Metres(10)).measure(block), paper);
}

TEST_F(Several, AThingIsShownRightAboveAnother) {
    const ItemId above = ids.next();
    Measure measure = *plan.measure(line);
    measure.id = above;
    plan = std::move(PlanBuilder(plan).put(measure)).build();
    const Plan next = shownAbove(plan, line, above);
    const auto& shows = next.film(film)->shows;
    ASSERT_EQ(shows.size(), 5U);
    EXPECT_EQ(shows[2].item, line);
    EXPECT_EQ(shows[3].item, above);
    EXPECT_EQ(shownAbove(next, line, above), next);
}

}  // namespace
}  // namespace crosstick::plan
