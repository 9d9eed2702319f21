#include "core/drafting/snap.h"

#include <gtest/gtest.h>

#include "core/geodesy/plane_angles.h"
#include "core/plan/edits.h"
#include "tests/drafting/made_lines.h"

namespace crosstick::drafting {
namespace {

using geodesy::Ends;

class SnapTable : public ::testing::Test {
  protected:
    IdSource ids{5};
    plan::FilmId film = ids.next();
    plan::Plan plan = plan::withFilm(plan::Plan{}, film, "MOVE", {});
    SnapWish wish;
    std::optional<InHand> inHand;
    std::vector<geodesy::PlanePoint> ticks;

    plan::ItemId put(const char* kind, Line points) {
        plan::Measure measure;
        measure.id = ids.next();
        measure.kind = kind;
        measure.points = std::move(points);
        const plan::ItemId id = measure.id;
        plan = plan::withMeasure(plan, std::move(measure), film);
        return id;
    }
    [[nodiscard]] std::optional<Snap> snap(geodesy::PlanePoint place, double reach = 20) {
        const SnapGround ground{
            plan, plan.films(), ticks,
            wish, inHand,       [reach](geodesy::PlanePoint p) { return onGridLines(p, Metres(100), Metres(reach)); }};
        return snapTo(ground, place, Metres(reach));
    }
};

TEST_F(SnapTable, DrawsToTheNearestPointWithinReach) {
    const auto line = put("phase-line", {at(0, 0), at(500, 0)});
    put("checkpoint", {at(500, 30)});
    const auto found = snap(at(505, 5));
    ASSERT_TRUE(found);
    EXPECT_EQ(found->at, at(500, 0));
    EXPECT_EQ(found->item, line);
    EXPECT_FALSE(snap(at(250, 5))) << "lines only on request";
    EXPECT_FALSE(snap(at(530, 60)));
}

TEST_F(SnapTable, TicksDrawAndLinesAndGridOnRequest) {
    put("phase-line", {at(0, 10), at(500, 10)});
    ticks = {at(1000, 1000)};
    EXPECT_EQ(snap(at(1010, 1010))->what, Snap::What::Tick);
    EXPECT_FALSE(snap(at(250, 15)));
    wish.lines = SnapWish::Lines::Yes;
    EXPECT_EQ(snap(at(250, 15))->at, at(250, 10));
    EXPECT_FALSE(snap(at(705, 5)));
    wish.grid = SnapWish::Grid::Yes;
    EXPECT_EQ(snap(at(705, 5))->at, at(700, 0));
    EXPECT_EQ(snap(at(705, 45))->at, at(700, 45));
    EXPECT_EQ(snap(at(250, 15))->what, Snap::What::Edge) << "a line before the grid";
}

TEST_F(SnapTable, NothingIsDrawnToWhatTheHandHolds) {
    const auto point = put("checkpoint", {at(0, 0)});
    plan::Route route;
    route.id = ids.next();
    route.vertices = {at(0, 0), at(800, 0)};
    route.stops = {{0, point}};
    plan = plan::withRoute(plan, route, {}, film);
    inHand = InHand{point, 0};
    EXPECT_FALSE(snap(at(3, 3)));
    EXPECT_TRUE(snap(at(795, 3)));
    inHand = InHand{route.id, 0};
    EXPECT_FALSE(snap(at(3, 3))) << "the point on that vertex goes with it";
    inHand = InHand{route.id, 1};
    EXPECT_TRUE(snap(at(3, 3)));
}

TEST_F(SnapTable, WhatIsFoundIsWithinReachAndOnWhatItNames) {
    MadeLines made(51);
    wish.lines = SnapWish::Lines::Yes;
    for (int n = 0; n < 20; ++n) {
        put("phase-line", made.line(4));
        put("assembly-area", made.ring(5));
    }
    for (int round = 0; round < 300; ++round) {
        const geodesy::PlanePoint place = made.place();
        if (const auto found = snap(place, 25)) {
            EXPECT_LE(geodesy::planeDistance(found->at, place), Metres(25));
            const auto measure = plan.measure(found->item);
            const Ends ends = measure->kind == "assembly-area" ? Ends::Closed : Ends::Open;
            EXPECT_LT(nearestOn(measure->points, ends, found->at)->away, Metres(1e-6));
        }
    }
}

}  // namespace
}  // namespace crosstick::drafting
