#include "core/movement/profile.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/movement/faults.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

const geodesy::MagneticModel& model() {
    static const geodesy::MagneticModel opened = *geodesy::MagneticModel::open(places::share() / "magnetic");
    return opened;
}

/// A roof: up by a share of the way east until 655500, then down; unknown from an edge on.
class Roof final : public sheets::HeightSource {
  public:
    explicit Roof(double slope, double edge = 1e9) : slope_(slope), edge_(edge) {}
    std::optional<Metres> heightAt(geodesy::PlanePoint p) const override {
        const double east = p.easting.value() - 655000;
        return p.easting.value() < edge_ ? std::optional(Metres(100 + slope_ * (east < 500 ? east : 1000 - east)))
                                         : std::nullopt;
    }

  private:
    double slope_, edge_;
};

plan::Plan overTheRoof() {
    return plainRoute({at(655000, 5100000), at(655500, 5100000), at(656000, 5100000)});
}

RouteFigures figuresOf(const plan::Plan& plan, const sheets::HeightSource& heights) {
    return *routeFigures(plan, *plan.routes().front(), &model(), &heights);
}

// By hand: 500 m at 20 per cent up and down: 100 m of climb, 100 m of descent, highest 200 m in the middle.
TEST(Profile, OfARoofIsUpAndDown) {
    const Roof roof(0.2);
    const auto plan = overTheRoof();
    const auto profile = profileOf(plan, figuresOf(plan, roof), &roof);
    ASSERT_TRUE(profile);
    EXPECT_EQ(profile->spots.size(), 41U);
    EXPECT_NEAR(profile->lowest.value(), 100, 1e-6);
    EXPECT_NEAR(profile->highest.value(), 200, 1e-6);
    EXPECT_NEAR(profile->spots[20].height->value(), 200, 1e-6);
    ASSERT_EQ(profile->marks.size(), 3U);
    EXPECT_EQ(profile->marks[1].label, "CP 2");
    EXPECT_NEAR(profile->marks[1].height->value(), 200, 1e-6);
    ASSERT_EQ(profile->steep.size(), 2U);
    EXPECT_NEAR(profile->steep[0].steepest, 0.2, 1e-3);  // ground metres are 0.01 per cent longer than map metres
    EXPECT_NEAR(profile->steep[1].steepest, -0.2, 1e-3);
    EXPECT_NEAR(profile->steep[0].to.value(), profile->steep[1].from.value(), 1e-9);
}

TEST(Profile, ClimbAndDescentAreThoseOfTheFigures) {
    const Roof roof(0.13);
    const auto plan = overTheRoof();
    const auto figures = figuresOf(plan, roof);
    const auto profile = profileOf(plan, figures, &roof);
    double up = 0;
    for (std::size_t n = 1; n < profile->spots.size(); ++n) {
        up += std::max(0.0, (*profile->spots[n].height - *profile->spots[n - 1].height).value());
    }
    EXPECT_NEAR(up, figures.climb->value(), 1e-6);
    EXPECT_NEAR(profile->spots.back().ground.value(), figures.groundDistance.value(), 1e-6);
    EXPECT_TRUE(profile->steep.empty());  // 13 per cent is under the steepest class
}

TEST(Profile, WhatTheModelDoesNotReachIsUnknownAndNotZero) {
    const Roof roof(0.2, 655600);
    const auto plan = overTheRoof();
    const auto profile = profileOf(plan, figuresOf(plan, roof), &roof);
    ASSERT_TRUE(profile);
    EXPECT_FALSE(profile->spots.back().height);
    EXPECT_FALSE(profile->marks.back().height);
    EXPECT_FALSE(profile->climb);
    EXPECT_NEAR(profile->lowest.value(), 100, 1e-6);
}

TEST(Profile, WithoutAnyHeightIsAnErrorThatNamesTheRoute) {
    const Roof roof(0.2, 0);
    const auto plan = overTheRoof();
    const auto profile = profileOf(plan, figuresOf(plan, roof), &roof);
    ASSERT_FALSE(profile);
    EXPECT_EQ(profile.error().fault, kNoHeights);
}

TEST(Profile, LinesStandBetweenTheRoutePointsInTheirOrder) {
    const Roof roof(0.01);
    const auto plan = kettlePlan();
    const auto figures = *routeFigures(plan, *plan.routeNamed("QUILL"), &model(), &roof);
    std::vector<std::string> labels;
    const auto profile = *profileOf(plan, figures, &roof);
    for (const ProfileMark& mark : profile.marks) {
        labels.push_back(mark.label);
    }
    EXPECT_THAT(labels, testing::ElementsAre("SP 1", "LD TRIVET", "CP 1", "CP 2", "PL BODKIN", "CP 3", "CP 4",
                                             "PL LADLE", "CP 5", "RP 1"));
}

// By hand: 0.2 up over 500 m; the steepest step is the first one.
TEST(Steepest, IsTheSteepestStepSeenFromTheStartOfTheLegAndOfTheRoute) {
    const Roof roof(0.2);
    const auto plan = overTheRoof();
    const auto figures = figuresOf(plan, roof);
    EXPECT_NEAR(figures.legs[1].steepest->slope, -0.2, 1e-3);
    EXPECT_LT(figures.legs[1].steepest->along.value(), 501);
    EXPECT_NEAR(std::abs(figures.steepest->slope), 0.2, 1e-3);
    const Roof edge(0.2, 655600);
    EXPECT_FALSE(figuresOf(plan, edge).legs[1].steepest);
    EXPECT_TRUE(figuresOf(plan, edge).legs[0].steepest);
    EXPECT_FALSE(figuresOf(plan, edge).steepest);
}

}  // namespace
}  // namespace crosstick::movement
