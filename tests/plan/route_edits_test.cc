#include "core/plan/route_edits.h"

#include <algorithm>
#include <iostream>

#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "core/plan/showings.h"
#include "tests/plan/random_plans.h"

namespace crosstick::plan {
namespace {

geodesy::PlanePoint at(double easting, double northing) {
    return {Metres(easting), Metres(northing)};
}

Uuid id(std::uint8_t n) {
    return Uuid{{n}};
}

/// Four vertices, stops on the first, the third and the last; a film shows it.
Plan planWithRoute() {
    Route route;
    route.id = id(1);
    route.name = "FERN";
    route.vertices = {at(0, 0), at(100, 0), at(200, 0), at(300, 50)};
    route.stops = {{0, id(10)}, {2, id(11)}, {3, id(12)}};
    route.stops[1].leg.going = Going::Road;
    route.stops[1].leg.halt = Minutes(10);
    route.stops[1].leg.catching = "road beyond the weir";
    route.stops[2].leg.remark = "keep to the wall";
    route.onwardTo = id(20);
    route.start = Instant(std::chrono::seconds(1800000000));
    route.ifNotFound = "the lake lies on the left hand";
    return withRoute(withFilm(Plan{}, id(30), "MOVE", {2}), route, {}, id(30));
}

TEST(RouteEdits, TheWayBackHasItsPointsInTheOtherOrder) {
    const Plan plan = reversed(planWithRoute(), id(1));
    const Route& route = *plan.route(id(1));
    EXPECT_EQ(route.vertices.front(), at(300, 50));
    ASSERT_EQ(route.stops.size(), 3U);
    EXPECT_EQ(route.stops[0].vertex, 0U);
    EXPECT_EQ(route.stops[0].measure, id(12));
    EXPECT_EQ(route.stops[1].vertex, 1U);
    EXPECT_EQ(route.stops[1].measure, id(11));
    EXPECT_EQ(route.stops[2].vertex, 3U);
}

TEST(RouteEdits, TheWayBackKeepsGroundHaltAndRemarkWhereTheyBelong) {
    const Route route = *reversed(planWithRoute(), id(1)).route(id(1));
    EXPECT_EQ(route.stops[1].leg.remark, "keep to the wall");  // of the leg between the last two points
    EXPECT_EQ(route.stops[2].leg.going, Going::Road);          // of the leg between the first two
    EXPECT_EQ(route.stops[1].leg.halt, Minutes(10));           // of the place
    EXPECT_FALSE(route.stops[1].leg.going);
}

TEST(RouteEdits, TheWayBackForgetsWhatWasSaidForTheOtherDirection) {
    const Route route = *reversed(planWithRoute(), id(1)).route(id(1));
    EXPECT_FALSE(route.onwardTo);
    EXPECT_EQ(route.ifNotFound, "");
    EXPECT_EQ(route.stops[2].leg.catching, "");
}

// On the paper a leg lies where it lay, whichever way it is walked and whatever route it belongs to.
TEST(RouteEdits, FiguresThatAHandPlacedStayWithTheirLeg) {
    const LegPiece bent{id(10), id(11), 0, 1};
    const LegPiece straight{id(11), id(12)};
    Plan plan = figuresPlaced(planWithRoute(), id(1), id(30), bent, at(50, 40));
    plan = figuresPlaced(plan, id(1), id(30), straight, at(250, 90));
    const auto figures = [](const Plan& of, std::uint8_t route) {
        for (const Showing& showing : of.film(id(30))->shows) {
            if (showing.item == id(route)) {
                return showing.figures;
            }
        }
        return std::vector<FiguresAt>{};
    };
    const Plan back = reversed(plan, id(1));
    EXPECT_EQ(figures(back, 1),
              (std::vector<FiguresAt>{{{id(11), id(10), 1, 1}, at(50, 40)}, {{id(12), id(11)}, at(250, 90)}}));
    EXPECT_EQ(figures(reversed(back, id(1)), 1), figures(plan, 1));
    const Plan split = splitAt(plan, id(1), 2, id(2), "GORSE");
    EXPECT_EQ(figures(split, 2).back().leg, straight);
    const auto all = figures(joined(split, id(1), id(2)), 1);
    for (const FiguresAt& one : figures(plan, 1)) {
        EXPECT_NE(std::find(all.begin(), all.end(), one), all.end());
    }
}

TEST(RouteEdits, SplittingSharesTheVertexAndItsRoutePoint) {
    const Plan plan = splitAt(planWithRoute(), id(1), 2, id(2), "GORSE");
    const Route& front = *plan.route(id(1));
    const Route& back = *plan.route(id(2));
    EXPECT_EQ(front.vertices.size(), 3U);
    EXPECT_EQ(back.vertices.size(), 2U);
    EXPECT_EQ(front.vertices.back(), back.vertices.front());
    EXPECT_EQ(front.stops.back().measure, id(11));
    EXPECT_EQ(back.stops.front().measure, id(11));
    EXPECT_EQ(back.stops.back().vertex, 1U);
    EXPECT_FALSE(front.onwardTo);
    EXPECT_EQ(back.onwardTo, id(20));
    EXPECT_FALSE(back.start);
    EXPECT_TRUE(isShownOn(*plan.film(id(30)), id(2)));
}

TEST(RouteEdits, SplittingAtAnEndOrBeyondChangesNothing) {
    const Plan plan = planWithRoute();
    for (const std::size_t vertex : {0U, 3U, 4U, 99U}) {
        EXPECT_EQ(splitAt(plan, id(1), vertex, id(2), "GORSE"), plan);
    }
    EXPECT_EQ(splitAt(plan, id(7), 1, id(2), "GORSE"), plan);
}

TEST(RouteEdits, JoiningWhatWasSplitGivesTheRouteBack) {
    const Plan plan = planWithRoute();
    for (const std::size_t vertex : {1U, 2U}) {
        const Plan again = joined(splitAt(plan, id(1), vertex, id(2), "GORSE"), id(1), id(2));
        EXPECT_EQ(*again.route(id(1)), *plan.route(id(1))) << vertex;
        EXPECT_FALSE(again.route(id(2)));
        EXPECT_FALSE(isShownOn(*again.film(id(30)), id(2)));
    }
}

TEST(RouteEdits, JoiningWhatLiesApartGoesStraight) {
    Route other;
    other.id = id(2);
    other.vertices = {at(500, 0), at(600, 0)};
    other.stops = {{0, id(13)}, {1, id(14)}};
    const Plan plan = joined(std::move(PlanBuilder(planWithRoute()).put(other)).build(), id(1), id(2));
    const Route& route = *plan.route(id(1));
    EXPECT_EQ(route.vertices.size(), 6U);
    EXPECT_EQ(route.stops.back().vertex, 5U);
    EXPECT_EQ(route.stops[3].vertex, 4U);
    EXPECT_FALSE(route.onwardTo);
}

TEST(RouteEdits, PrimaryAndAlternateChangePlaces) {
    Route other;
    other.id = id(2);
    other.use = Use::Alternate;
    const Plan before = std::move(PlanBuilder(planWithRoute()).put(other)).build();
    const Plan after = swappedUse(before, id(1), id(2));
    EXPECT_EQ(after.route(id(1))->use, Use::Alternate);
    EXPECT_EQ(after.route(id(2))->use, Use::Primary);
    EXPECT_EQ(swappedUse(after, id(1), id(2)), before);
    EXPECT_EQ(swappedUse(before, id(1), id(9)), before);
}

TEST(RouteEdits, WhatIsSaidOfALegStandsAtItsEndAlone) {
    LegNotes notes;
    notes.catching = "the lake's shore";
    notes.rally = id(11);
    const Plan plan = withLegNotes(planWithRoute(), id(1), id(12), notes);
    EXPECT_EQ(plan.route(id(1))->stops[2].leg, notes);
    EXPECT_EQ(plan.route(id(1))->stops[1].leg.catching, "road beyond the weir");
    EXPECT_EQ(withLegNotes(planWithRoute(), id(1), id(99), notes), planWithRoute());
    EXPECT_EQ(withLegNotes(planWithRoute(), id(9), id(12), notes), planWithRoute());
}

// Laws over random routes: twice back is the same way and the same points; split and joined again are the route's.
TEST(RouteEdits, TwiceBackIsTheSameWay) {
    constexpr std::uint64_t kSeed = 3107;
    std::cout << "seed " << kSeed << '\n';
    testing::RandomPlans random(kSeed);
    const Plan plan = random.plan(20);
    for (int round = 0; round < 100; ++round) {
        const Route route = random.route(plan);
        const Plan with = std::move(PlanBuilder(plan).put(route)).build();
        const Route twice = *reversed(reversed(with, route.id), route.id).route(route.id);
        EXPECT_EQ(twice.vertices, route.vertices);
        ASSERT_EQ(twice.stops.size(), route.stops.size());
        for (std::size_t n = 0; n < route.stops.size(); ++n) {
            EXPECT_EQ(twice.stops[n].vertex, route.stops[n].vertex);
            EXPECT_EQ(twice.stops[n].measure, route.stops[n].measure);
            EXPECT_EQ(twice.stops[n].leg.halt, route.stops[n].leg.halt);
            EXPECT_EQ(twice.stops[n].leg.going, n == 0 ? std::optional<Going>{} : route.stops[n].leg.going);
        }
        const std::size_t vertex = 1 + random.below(std::max<std::size_t>(1, route.vertices.size() - 2));
        const Plan again = joined(splitAt(with, route.id, vertex, Uuid{{7, 7}}, "B"), route.id, Uuid{{7, 7}});
        Route whole = *again.route(route.id);
        EXPECT_TRUE(std::is_permutation(whole.contours.begin(), whole.contours.end(), route.contours.begin(),
                                        route.contours.end()));
        whole.contours = route.contours;
        EXPECT_EQ(whole, route);
    }
}

}  // namespace
}  // namespace crosstick::plan
