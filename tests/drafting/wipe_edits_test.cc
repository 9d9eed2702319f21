#include "core/drafting/wipe_edits.h"

#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/drafting/made_lines.h"

namespace crosstick::drafting {
namespace {

class WipedPlan : public ::testing::Test {
  protected:
    IdSource ids{3};
    plan::FilmId film = ids.next(), other = ids.next();
    plan::Plan plan = plan::withFilm(plan::withFilm(plan::Plan{}, film, "MOVE", {}), other, "LOOK", {});
    NewId newId = [this] { return ids.next(); };
    Line region{at(400, -100), at(600, -100), at(600, 100), at(400, 100)};

    plan::ItemId put(const char* kind, Line points, const char* number = "") {
        plan::Measure measure;
        measure.id = ids.next();
        measure.kind = kind;
        measure.number = number;
        measure.points = std::move(points);
        const plan::ItemId id = measure.id;
        plan = plan::withMeasure(plan, std::move(measure), film);
        return id;
    }
    [[nodiscard]] Wiping wiped() { return regionWiped(plan, film, region, newId); }
};

TEST_F(WipedPlan, PointsInsideGoAndThoseOutsideStay) {
    const auto inside = put("checkpoint", {at(500, 0)}, "1");
    const auto outside = put("checkpoint", {at(700, 0)}, "2");
    const Wiping wiping = wiped();
    EXPECT_EQ(wiping.whole, 1U);
    EXPECT_FALSE(wiping.plan.measure(inside));
    EXPECT_TRUE(wiping.plan.measure(outside));
}

TEST_F(WipedPlan, ALineAcrossBecomesTwoAndTheLongerKeepsItsIdentity) {
    const auto line = put("phase-line", {at(0, 0), at(2000, 0)});
    const Wiping wiping = wiped();
    EXPECT_EQ(wiping.partly, 1U);
    ASSERT_EQ(wiping.plan.measures().size(), 2U);
    EXPECT_EQ(wiping.plan.measure(line)->points, (Line{at(600, 0), at(2000, 0)}));
    EXPECT_EQ(wiping.plan.film(film)->shows.size(), 2U);
}

TEST_F(WipedPlan, AnAreaIsCutAndASignOnSetPointsIsLeftAndCounted) {
    const auto area = put("assembly-area", {at(500, 0), at(900, 0), at(900, 300), at(500, 300)});
    put("support-by-fire", {at(500, 0), at(700, 0), at(500, 300), at(900, 300)});
    const Wiping wiping = wiped();
    EXPECT_EQ(wiping.partly, 1U);
    EXPECT_EQ(wiping.left, 1U);
    EXPECT_EQ(wiping.plan.measure(area)->points.size(), 6U);
    EXPECT_EQ(wiping.plan.measures().size(), 2U);
}

TEST_F(WipedPlan, WhatAnotherFilmShowsIsTakenOffThisOneAlone) {
    const auto point = put("checkpoint", {at(500, 0)}, "1");
    const auto line = put("phase-line", {at(0, 0), at(2000, 0)});
    plan = plan::shownOn(plan::shownOn(plan, point, other), line, other);
    const Wiping wiping = wiped();
    EXPECT_TRUE(wiping.plan.measure(point));
    EXPECT_FALSE(plan::isShownOn(*wiping.plan.film(film), point));
    EXPECT_TRUE(plan::isShownOn(*wiping.plan.film(other), point));
    EXPECT_EQ(wiping.elsewhere, 1U) << "the line is cut on both";
    EXPECT_EQ(wiping.plan.film(other)->shows.size(), 3U);
}

TEST_F(WipedPlan, ARouteIsPartedWithItsPoints) {
    const auto start = put("start-point", {at(0, 0)}, "1");
    const auto end = put("release-point", {at(1500, 0)}, "1");
    plan::Route route;
    route.id = ids.next();
    route.name = "QUILL";
    route.vertices = {at(0, 0), at(300, 0), at(1500, 0)};
    route.stops = {{0, start}, {2, end}};
    plan = plan::withRoute(plan, route, {}, film);
    const Wiping wiping = wiped();
    EXPECT_EQ(wiping.partly, 1U);
    ASSERT_EQ(wiping.plan.routes().size(), 2U);
    const plan::RoutePtr kept = wiping.plan.route(route.id);
    EXPECT_EQ(kept->vertices, (Line{at(600, 0), at(1500, 0)}));
    ASSERT_EQ(kept->stops.size(), 1U);
    EXPECT_EQ(kept->stops.front().vertex, 1U);
    EXPECT_EQ(kept->stops.front().measure, end);
    const plan::RoutePtr front = wiping.plan.routeNamed("QUILL 2");
    ASSERT_TRUE(front);
    EXPECT_EQ(front->vertices, (Line{at(0, 0), at(300, 0), at(400, 0)}));
    EXPECT_EQ(front->stops.front().vertex, 0U);
}

TEST_F(WipedPlan, ARegionWithNothingUnderItChangesNothing) {
    put("phase-line", {at(0, 500), at(2000, 500)});
    const Wiping wiping = wiped();
    EXPECT_TRUE(wiping.isNothing());
    EXPECT_EQ(wiping.plan, plan);
    EXPECT_EQ(regionWiped(plan, film, {at(0, 0), at(1, 1)}, newId).plan, plan);
}

TEST_F(WipedPlan, AStretchOfALineIsWipedAndAnAreaHasNone) {
    const auto line = put("phase-line", {at(0, 0), at(1000, 0)});
    const auto area = put("assembly-area", {at(500, 0), at(900, 0), at(900, 300)});
    const plan::Plan next = stretchWiped(plan, line, {0.25, 0.5}, newId);
    EXPECT_EQ(next.measure(line)->points, (Line{at(500, 0), at(1000, 0)}));
    EXPECT_EQ(next.measures().size(), 3U);
    EXPECT_EQ(stretchWiped(plan, area, {0.25, 0.5}, newId), plan);
    EXPECT_FALSE(stretchWiped(plan, line, {0, 1}, newId).measure(line));
}

TEST_F(WipedPlan, AFilmIsWipedButForWhatLiesOnItsPaper) {
    put("checkpoint", {at(500, 0)}, "1");
    plan::Measure block;
    block.id = ids.next();
    block.kind = "order-of-march";
    block.anchor = plan::Anchor::Paper;
    block.points = {{Metres(20), Metres(30)}};
    plan = plan::withMeasure(plan, block, film);
    const Wiping wiping = filmWiped(plan, film);
    EXPECT_EQ(wiping.whole, 1U);
    EXPECT_TRUE(wiping.plan.measure(block.id));
    EXPECT_EQ(wiping.plan.film(film)->shows.size(), 1U);
}

}  // namespace
}  // namespace crosstick::drafting
