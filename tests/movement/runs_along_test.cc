#include "core/movement/runs_along.h"

#include <cmath>
#include <iostream>
#include <random>

#include <gtest/gtest.h>

#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

using Points = std::vector<geodesy::PlanePoint>;

RouteFigures figuresOf(const plan::Plan& plan) {
    static const geodesy::MagneticModel model = *geodesy::MagneticModel::open(places::share() / "magnetic");
    return *routeFigures(plan, *plan.routes().front(), &model, nullptr);
}

plan::Plan withLine(const plan::Plan& plan, Points points, const char* kind = "main-supply-route") {
    plan::Measure line;
    line.id = kettleId("line");
    line.kind = kind;
    line.name = "OAK";
    line.points = std::move(points);
    plan::Film film;
    film.id = kettleId("film");
    film.shows = {{plan.routes().front()->id, "a", {}, {}}, {line.id, "b", {}, {}}};
    return std::move(plan::PlanBuilder(plan).put(std::move(line)).put(std::move(film))).build();
}

std::vector<RunAlong> runsOf(const plan::Plan& plan) {
    return *runsAlong(plan, figuresOf(plan));
}

/// 1,000 m east, then 1,000 m north.
plan::Plan corner() {
    return plainRoute({at(655000, 5100000), at(656000, 5100000), at(656000, 5101000)});
}

// By hand: the road lies 10 m beside the route from metre 200 to 700; its ends are within 20 m for another 17.3 m each.
TEST(RunsAlong, ARoadBesideTheRouteIsToldFromWhereToWhere) {
    const auto runs = runsOf(withLine(corner(), {at(655200, 5100010), at(655700, 5100010)}));
    ASSERT_EQ(runs.size(), 1U);
    EXPECT_EQ(runs[0].label, "MSR OAK");
    EXPECT_NEAR(runs[0].mapFrom.value(), 200 - std::sqrt(300), 1e-6);
    EXPECT_NEAR(runs[0].mapTo.value(), 700 + std::sqrt(300), 1e-6);
    EXPECT_EQ(runs[0].leg, 1);
}

TEST(RunsAlong, ALineThatIsCrossedIsNotRunAlong) {
    EXPECT_TRUE(runsOf(withLine(corner(), {at(655300, 5099000), at(655300, 5101000)})).empty());
    // 45 degrees: 57 m within 20 m
    EXPECT_TRUE(runsOf(withLine(corner(), {at(655000, 5099500), at(655800, 5100300)})).empty());
}

TEST(RunsAlong, RoundACornerItIsOneRunAndBeginsOnTheFirstLeg) {
    const auto runs =
        runsOf(withLine(corner(), {at(655600, 5100000), at(656000, 5100000), at(656000, 5100300)}, "phase-line"));
    ASSERT_EQ(runs.size(), 1U);
    EXPECT_NEAR(runs[0].mapFrom.value(), 580, 1e-6);
    EXPECT_NEAR(runs[0].mapTo.value(), 1320, 1e-6);
    EXPECT_NEAR(runs[0].mapFromLast.value(), 580, 1e-6);
}

TEST(RunsAlong, OnTheSecondLegDistancesAreFromItsRoutePoint) {
    const auto runs = runsOf(withLine(corner(), {at(656010, 5100500), at(656010, 5100900)}));
    ASSERT_EQ(runs.size(), 1U);
    EXPECT_EQ(runs[0].leg, 2);
    EXPECT_NEAR(runs[0].mapFromLast.value(), 500 - std::sqrt(300), 1e-6);
}

// The line of departure of the exercise lies along a road; the route crosses it.
TEST(RunsAlong, TheExercisesRoutesCrossTheirLinesOnly) {
    EXPECT_TRUE(runsOf(kettlePlan()).empty());
}

// Against looking every metre: a place within a run lies near the line, and one outside all of them does not, where the
// line runs straight beside a straight route.
TEST(RunsAlong, AgreesWithLookingEveryMetre) {
    constexpr std::uint32_t kSeed = 20270313;
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> offset(-40, 40);
    std::uniform_real_distribution<double> along(-200, 1200);
    const auto route = plainRoute({at(655000, 5100000), at(656000, 5100000)});
    const RouteFigures figures = figuresOf(route);
    for (int round = 0; round < 200; ++round) {
        const double x1 = along(random);
        const double x2 = along(random);
        const double y1 = offset(random);
        const double y2 = offset(random);
        if (std::abs(y2 - y1) > std::abs(x2 - x1) * std::tan(radians(kAlike).value())) {
            continue;
        }
        const auto plan = withLine(route, {at(655000 + x1, 5100000 + y1), at(655000 + x2, 5100000 + y2)});
        const auto runs = *runsAlong(plan, figures);
        int nearMetres = 0;
        for (int m = 0; m < 1000; ++m) {
            const double t = std::clamp(
                ((m - x1) * (x2 - x1) - y1 * (y2 - y1)) / ((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1)), 0.0, 1.0);
            nearMetres += std::hypot(x1 + t * (x2 - x1) - m, y1 + t * (y2 - y1)) <= kBeside.value() ? 1 : 0;
        }
        const double told = runs.empty() ? 0 : (runs[0].mapTo - runs[0].mapFrom).value();
        EXPECT_NEAR(told, nearMetres >= kShortestRun.value() ? nearMetres : 0,
                    std::abs(nearMetres - kShortestRun.value()) < 3 ? 105 : 2)
            << x1 << ' ' << y1 << ' ' << x2 << ' ' << y2;
    }
}

}  // namespace
}  // namespace crosstick::movement
