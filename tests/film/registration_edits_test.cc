#include "core/film/registration_edits.h"

#include <algorithm>
#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "core/film/faults.h"
#include "core/film/registration.h"
#include "tests/film/printed_plan.h"

namespace crosstick::film {
namespace {

using movement::at;

const TickGrid kGrid = printedTicks(Scale{25000});

/// 653 to 659 by 5096 to 5105: six by nine kilometres.
plan::Registration window() {
    return {at(652500, 5096500), at(659500, 5105500), {at(653000, 5097000), at(658000, 5097000), at(653000, 5104000)}};
}

TEST(TicksByHand, StandOnTheCrossingsThatWereNamed) {
    const auto next = withTicksAt(window(), {at(654000, 5098000), at(658000, 5098000), at(654000, 5103000)}, kGrid);
    ASSERT_TRUE(next.has_value());
    EXPECT_EQ(next->ticks, (std::vector{at(654000, 5098000), at(658000, 5098000), at(654000, 5103000)}));
    EXPECT_EQ(next->southWest, window().southWest);
}

TEST(TicksByHand, AFewMetresBesideACrossingMeanIt) {
    const auto next = withTicksAt(window(), {at(654010, 5098000), at(658000, 5097990), at(654000, 5103000)}, kGrid);
    ASSERT_TRUE(next.has_value());
    EXPECT_EQ(next->ticks.front(), at(654000, 5098000));
}

TEST(TicksByHand, WhatIsNoCrossingIsRefusedByName) {
    const auto next = withTicksAt(window(), {at(654200, 5098000), at(658000, 5098000), at(654000, 5103000)}, kGrid);
    ASSERT_FALSE(next.has_value());
    EXPECT_EQ(next.error().fault, kNotACrossing);
}

TEST(TicksByHand, ATickNeedsRoomInsideTheFrame) {
    // 7 mm at 1:25,000 are 175 m: 652500 + 175 is more than nothing is between 652 and the frame.
    const auto outside = withTicksAt(window(), {at(652000, 5098000), at(658000, 5098000), at(654000, 5103000)}, kGrid);
    ASSERT_FALSE(outside.has_value());
    EXPECT_EQ(outside.error().fault, kTickOutsideWindow);
    plan::Registration tight = window();
    tight.southWest = at(652900, 5096500);
    const auto close = withTicksAt(tight, {at(653000, 5098000), at(658000, 5098000), at(654000, 5103000)}, kGrid);
    ASSERT_FALSE(close.has_value());
    EXPECT_EQ(close.error().fault, kTickOutsideWindow);
}

TEST(TicksByHand, TwoAndOneTwiceAreTooFew) {
    const auto next = withTicksAt(window(), {at(654000, 5098000), at(658000, 5098000), at(654000, 5098000)}, kGrid);
    ASSERT_FALSE(next.has_value());
    EXPECT_EQ(next.error().fault, kTooFewTicks);
}

TEST(TicksByHand, ThreeInARowAreRefused) {
    const auto next = withTicksAt(window(), {at(654000, 5098000), at(656000, 5098000), at(658000, 5098000)}, kGrid);
    ASSERT_FALSE(next.has_value());
    EXPECT_EQ(next.error().fault, kTicksInARow);
}

TEST(TicksByHand, OneMovesToTheCrossingNearestToTheHand) {
    const auto next = withTickMoved(window(), 1, at(657420, 5098350), kGrid);
    ASSERT_TRUE(next.has_value());
    EXPECT_EQ(next->ticks, (std::vector{at(653000, 5097000), at(657000, 5098000), at(653000, 5104000)}));
}

TEST(TicksByHand, TwoNeverStandOnOneCrossing) {
    const auto moved = withTickMoved(window(), 1, at(653100, 5097100), kGrid);
    ASSERT_FALSE(moved.has_value());
    EXPECT_EQ(moved.error().fault, kCrossingTaken);
    EXPECT_EQ(withTickAdded(window(), at(653100, 5097100), kGrid).error().fault, kCrossingTaken);
    EXPECT_EQ(withTickMoved(window(), 1, at(658100, 5097000), kGrid).value(), window()) << "its own is no other's";
}

TEST(TicksByHand, AFourthComesAndGoesAndThreeStay) {
    const auto four = withTickAdded(window(), at(658200, 5104100), kGrid);
    ASSERT_TRUE(four.has_value());
    EXPECT_EQ(four->ticks.back(), at(658000, 5104000));
    EXPECT_EQ(withTickRemoved(*four, 3, kGrid).value(), window());
    EXPECT_EQ(withTickRemoved(window(), 0, kGrid).error().fault, kTooFewTicks);
}

/// A film laid by such ticks, over a plan on a sheet of 1:25,000.
plan::Sheet filmWith(const std::vector<geodesy::PlanePoint>& ticks) {
    plan::Sheet film;
    film.crs = "EPSG:32625";
    film.asFilm = 1;
    for (const geodesy::PlanePoint tick : ticks) {
        film.marks.push_back({{0, 0}, tick});
    }
    return film;
}

plan::Plan planWithWindow() {
    plan::PlanBuilder builder(printedPlan());
    builder.registration(window());
    return std::move(builder).build();
}

TEST(TicksOfAFilm, BecomeThePlansAndTheWindowStays) {
    const std::vector ticks{at(654000, 5098000), at(658000, 5098000), at(654000, 5103000)};
    const auto next = withTicksOf(filmWith(ticks), planWithWindow());
    ASSERT_TRUE(next.has_value()) << next.error().fault.name;
    EXPECT_EQ(next->ticks, ticks);
    EXPECT_EQ(next->southWest, window().southWest);
    EXPECT_EQ(next->northEast, window().northEast);
}

// 7 mm at 1:25,000 are 175 m: 650000 less that is 649825, and the tenth below it 649800.
TEST(TicksOfAFilm, TheWindowGrowsForThem) {
    const auto next =
        withTicksOf(filmWith({at(650000, 5098000), at(658000, 5098000), at(654000, 5103000)}), planWithWindow());
    ASSERT_TRUE(next.has_value()) << next.error().fault.name;
    EXPECT_DOUBLE_EQ(next->southWest.easting.value(), 649800);
    EXPECT_EQ(next->southWest.northing, window().southWest.northing);
    EXPECT_EQ(next->northEast, window().northEast);
}

TEST(TicksOfAFilm, TwoAreTooFew) {
    const auto next = withTicksOf(filmWith({at(654000, 5098000), at(658000, 5098000)}), planWithWindow());
    ASSERT_FALSE(next.has_value());
    EXPECT_EQ(next.error().fault, kTooFewTicks);
}

TEST(WindowByHand, AnEdgeGoesToTenthsOfTheGridAndTheOthersStay) {
    const auto next = withWindowPulled(window(), {.west = {}, .south = {}, .east = Metres(1234), .north = {}}, kGrid);
    ASSERT_TRUE(next.has_value());
    EXPECT_EQ(next->northEast, at(660700, 5105500));
    EXPECT_EQ(next->southWest, window().southWest);
    EXPECT_EQ(next->ticks, window().ticks);
}

TEST(WindowByHand, DrivesTicksBeforeItAndLeavesTheOthers) {
    const auto next = withWindowPulled(window(), {.west = Metres(1000), .south = {}, .east = {}, .north = {}}, kGrid);
    ASSERT_TRUE(next.has_value());
    EXPECT_EQ(next->southWest.easting, Metres(653500));
    std::vector<geodesy::PlanePoint> ticks = next->ticks;
    EXPECT_NE(std::find(ticks.begin(), ticks.end(), at(658000, 5097000)), ticks.end());
    EXPECT_NE(std::find(ticks.begin(), ticks.end(), at(654000, 5097000)), ticks.end());
    EXPECT_NE(std::find(ticks.begin(), ticks.end(), at(654000, 5104000)), ticks.end());
}

TEST(WindowByHand, LawWhateverThePullWhatComesIsARegistrationOrAReason) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> far(-6000, 6000);
    int taken = 0;
    for (int round = 0; round < 300; ++round) {
        const auto next = withWindowPulled(
            window(), {Metres(far(random)), Metres(far(random)), Metres(far(random)), Metres(far(random))}, kGrid);
        if (!next) {
            continue;
        }
        ++taken;
        EXPECT_EQ(withTicksAt(*next, next->ticks, kGrid).value(), *next);
        EXPECT_NEAR(std::remainder(next->southWest.easting.value(), 100), 0, 1e-6);
        EXPECT_NEAR(std::remainder(next->northEast.northing.value(), 100), 0, 1e-6);
    }
    EXPECT_GT(taken, 30);
}

TEST(WindowByHand, PulledTooNarrowIsRefused) {
    const auto next = withWindowPulled(window(), {.west = Metres(6500), .south = {}, .east = {}, .north = {}}, kGrid);
    ASSERT_FALSE(next.has_value());
    EXPECT_EQ(next.error().fault, kWindowTooSmall);
}

TEST(WindowByHand, LiesOnTenthsOfTheGridHoldsBothCornersAndHasItsTicks) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> east(650000, 653000);
    std::uniform_real_distribution<double> far(3500, 7000);
    const plan::Plan plan = printedPlan();
    for (int round = 0; round < 50; ++round) {
        const auto a = at(east(random), 5096000 + far(random) / 10);
        const auto b = at(a.easting.value() + far(random), a.northing.value() + far(random));
        const auto next = withWindow(plan, round % 2 == 0 ? a : b, round % 2 == 0 ? b : a);
        ASSERT_TRUE(next.has_value());
        EXPECT_LE(next->southWest.easting, a.easting);
        EXPECT_GE(next->northEast.northing, b.northing);
        EXPECT_LT((a.easting - next->southWest.easting).value(), 100);
        EXPECT_NEAR(std::remainder(next->southWest.easting.value(), 100), 0, 1e-6);
        EXPECT_GE(next->ticks.size(), 3U);
        EXPECT_TRUE(withTicksAt(*next, next->ticks, kGrid).has_value()) << "its own ticks would be taken by hand too";
    }
}

TEST(WindowByHand, ThatHoldsNoSquareIsRefused) {
    const auto next = withWindow(printedPlan(), at(653000, 5097000), at(653400, 5104000));
    ASSERT_FALSE(next.has_value());
    EXPECT_EQ(next.error().fault, kWindowTooSmall);
}

}  // namespace
}  // namespace crosstick::film
