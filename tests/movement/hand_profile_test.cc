#include "core/movement/hand_profile.h"

#include <cmath>
#include <iostream>
#include <random>

#include <gtest/gtest.h>

#include "core/movement/profile.h"
#include "core/movement/route_figures.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

constexpr std::uint32_t kSeed = 20270314;

const geodesy::MagneticModel& model() {
    static const geodesy::MagneticModel opened = *geodesy::MagneticModel::open(places::share() / "magnetic");
    return opened;
}

/// A way of 1,000 m to the east with a bend in its middle, and what is read off along it.
plan::Plan byHand(std::vector<plan::ContourSpot> contours) {
    const auto plan = plainRoute({at(655000, 5100000), at(655500, 5100000), at(656000, 5100000)});
    plan::Route route = *plan.routes().front();
    route.contours = std::move(contours);
    return std::move(plan::PlanBuilder(plan).put(std::move(route))).build();
}

plan::ContourSpot contour(double east, double height, double aside = 0) {
    return {at(655000 + east, 5100000 + aside), Metres(height)};
}

RouteFigures figuresOf(const plan::Plan& plan, const sheets::HeightSource* heights = nullptr) {
    return *routeFigures(plan, *plan.routes().front(), &model(), heights);
}

/// Knows everything: 50 m.
class Level final : public sheets::HeightSource {
    std::optional<Metres> heightAt(geodesy::PlanePoint) const override { return Metres(50); }
};

// By hand: contours 100, 110, 120 at 0, 200 and 400 m, the same 120 at 600 m (over a hill nobody sees), 110 at 1,000 m:
// 20 m up, 10 m down; steepest 10 m in 200 m, 5 per cent; the bend at 500 m lies at 120 m.
TEST(HandProfile, ClimbAndDescentAreThoseFromContourToContour) {
    const auto figures = figuresOf(
        byHand({contour(0, 100), contour(200, 110), contour(400, 120), contour(600, 120), contour(1000, 110)}));
    ASSERT_TRUE(figures.climb);
    EXPECT_TRUE(figures.fromContours);
    EXPECT_NEAR(figures.climb->value(), 20, 1e-9);
    EXPECT_NEAR(figures.descent->value(), 10, 1e-9);
    EXPECT_NEAR(figures.steepest->slope, 0.05, 1e-4);
    EXPECT_NEAR(figures.steepest->along.value(), 100, 0.1);
    EXPECT_NEAR(figures.legs[0].climb->value(), 20, 1e-9);
    EXPECT_NEAR(figures.legs[1].descent->value(), 10, 1e-9);
    EXPECT_NEAR(figures.legs[0].slopeDistance->value(), 2 * std::hypot(200, 10) + 100, 0.1);
}

TEST(HandProfile, WhatLiesOutsideTheContoursIsUnknownAndSoAreItsSums) {
    const auto figures = figuresOf(byHand({contour(0, 100), contour(700, 110)}));
    EXPECT_NEAR(figures.legs[0].climb->value(), 10.0 * 500 / 700, 1e-9);
    EXPECT_FALSE(figures.legs[1].climb);
    EXPECT_FALSE(figures.climb);
    EXPECT_FALSE(figures.slopeDistance);
    EXPECT_FALSE(figuresOf(byHand({contour(500, 100)})).legs[0].climb) << "one height says nothing of a slope";
}

TEST(HandProfile, AHeightClickedBesideTheRouteStandsWhereTheRouteIsNearest) {
    const HandProfile profile(*byHand({contour(250, 105, 40), contour(-40, 100), contour(1030, 130)}).routes().front());
    ASSERT_EQ(profile.spots().size(), 3U);
    EXPECT_NEAR(profile.spots()[0].along.value(), 0, 1e-9);
    EXPECT_NEAR(profile.spots()[1].along.value(), 250, 1e-9);
    EXPECT_NEAR(profile.spots()[2].along.value(), 1000, 1e-9);
}

TEST(HandProfile, AContourReadForAnotherWayDoesNotCount) {
    const HandProfile profile(*byHand({contour(0, 100), contour(250, 400, 90), contour(1000, 120)}).routes().front());
    ASSERT_EQ(profile.spots().size(), 2U);
    EXPECT_NEAR(profile.heightAt(Metres(250))->value(), 105, 1e-9);
}

TEST(HandProfile, OfTwoHeightsAtOnePlaceTheLaterOneCounts) {
    const HandProfile profile(*byHand({contour(0, 100), contour(400, 110), contour(400, 115, 3)}).routes().front());
    ASSERT_EQ(profile.spots().size(), 2U);
    EXPECT_EQ(profile.spots()[1].height, Metres(115));
}

TEST(HandProfile, AModelThatCoversTheWayGoesFirst) {
    const Level level;
    const auto figures = figuresOf(byHand({contour(0, 100), contour(1000, 200)}), &level);
    EXPECT_FALSE(figures.fromContours);
    EXPECT_EQ(figures.climb->value(), 0);
}

TEST(HandProfile, TheProfilePaperHasItsHeightsAndSaysSo) {
    const auto plan = byHand({contour(0, 100), contour(333, 110), contour(1000, 90)});
    const auto figures = figuresOf(plan);
    const auto profile = profileOf(plan, figures, nullptr);
    ASSERT_TRUE(profile);
    EXPECT_TRUE(profile->fromContours);
    EXPECT_EQ(profile->highest, Metres(110)) << "the contour itself is a spot of the profile";
    EXPECT_NEAR(profile->climb->value(), 10, 1e-9);
    double up = 0;
    for (std::size_t n = 1; n < profile->spots.size(); ++n) {
        up += std::max(0.0, (*profile->spots[n].height - *profile->spots[n - 1].height).value());
    }
    EXPECT_NEAR(up, figures.climb->value(), 1e-6);
}

// Laws: climb less descent is the height of the end less that of the start; neither depends on the order of clicking;
// the heights that a hiking rule takes begin and end there too.
TEST(HandProfile, ClimbLessDescentIsTheHeightOfTheEndLessThatOfTheStart) {
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> east(1, 999);
    std::uniform_real_distribution<double> height(-50, 900);
    for (int round = 0; round < 200; ++round) {
        const double start = height(random);
        const double end = height(random);
        std::vector<plan::ContourSpot> contours{contour(0, start), contour(1000, end)};
        for (int n = 0; n < round % 9; ++n) {
            contours.push_back(contour(east(random), height(random)));
        }
        const auto figures = figuresOf(byHand(contours));
        EXPECT_NEAR((*figures.climb - *figures.descent).value(), end - start, 1e-6);
        EXPECT_GE(figures.slopeDistance->value(), figures.groundDistance.value() - 1e-6);
        std::shuffle(contours.begin(), contours.end(), random);
        EXPECT_NEAR(figuresOf(byHand(contours)).climb->value(), figures.climb->value(), 1e-6);
        const auto relief = HandProfile(*byHand(contours).routes().front()).after(1, Metres(500));
        EXPECT_NEAR(relief->heights.back().value(), end, 1e-6);
    }
}

}  // namespace
}  // namespace crosstick::movement
