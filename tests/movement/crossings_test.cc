#include "core/movement/crossings.h"

#include <cmath>
#include <iostream>
#include <random>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

const geodesy::MagneticModel& model() {
    static const geodesy::MagneticModel opened = *geodesy::MagneticModel::open(places::share() / "magnetic");
    return opened;
}

plan::Plan withLine(const plan::Plan& plan, std::vector<geodesy::PlanePoint> points) {
    plan::Measure line;
    line.id = kettleId("line");
    line.kind = "phase-line";
    line.name = "CHALK";
    line.points = std::move(points);
    plan::Film film;
    film.id = kettleId("film");
    film.shows = {{plan.routes().front()->id, "a", {}, {}}, {line.id, "b", {}, {}}};
    return std::move(plan::PlanBuilder(plan).put(std::move(line)).put(std::move(film))).build();
}

std::vector<double> metresAlong(const plan::Plan& plan) {
    const auto figures = routeFigures(plan, *plan.routes().front(), &model(), nullptr);
    std::vector<double> along;
    const std::vector<Crossing> found = crossings(plan, figures.value()).value();
    for (const Crossing& crossing : found) {
        along.push_back(crossing.mapSoFar.value());
    }
    return along;
}

/// 1,000 m east, then 1,000 m north.
plan::Plan corner() {
    return plainRoute({at(655000, 5100000), at(656000, 5100000), at(656000, 5101000)});
}

using testing::DoubleNear;
using testing::ElementsAre;
using testing::IsEmpty;

TEST(Crossings, ALineStraightAcrossIsMetOnce) {
    const auto plan = withLine(corner(), {at(655300, 5099000), at(655300, 5101000)});
    EXPECT_THAT(metresAlong(plan), ElementsAre(DoubleNear(300, 1e-6)));
}

TEST(Crossings, TheRoutesVertexOnTheLineCountsOnce) {
    const auto plan = withLine(corner(), {at(655500, 5100500), at(656500, 5099500)});
    EXPECT_THAT(metresAlong(plan), ElementsAre(DoubleNear(1000, 1e-6)));
}

TEST(Crossings, TheLinesVertexOnTheRouteCountsOnce) {
    const auto through = withLine(corner(), {at(655300, 5099000), at(655400, 5100000), at(655300, 5101000)});
    EXPECT_THAT(metresAlong(through), ElementsAre(DoubleNear(400, 1e-6)));
    const auto touching = withLine(corner(), {at(655300, 5101000), at(655400, 5100000), at(655500, 5101000)});
    EXPECT_THAT(metresAlong(touching), ElementsAre(DoubleNear(400, 1e-6)));
}

TEST(Crossings, ALineThatEndsOnTheRouteIsMet) {
    const auto plan = withLine(corner(), {at(655300, 5100000), at(655300, 5101000)});
    EXPECT_THAT(metresAlong(plan), ElementsAre(DoubleNear(300, 1e-6)));
}

TEST(Crossings, RunningAlongTheLineCountsWhereTheyMeet) {
    const auto plan = withLine(corner(), {at(655200, 5101000), at(655400, 5100000), at(655900, 5100000),
                                          at(656000, 5100000), at(656000, 5100400), at(657000, 5100400)});
    EXPECT_THAT(metresAlong(plan), ElementsAre(DoubleNear(400, 1e-6)));
}

TEST(Crossings, ALineThatComesBackIsMetTwice) {
    const auto plan =
        withLine(corner(), {at(655300, 5099000), at(655300, 5101000), at(655700, 5101000), at(655700, 5099000)});
    EXPECT_THAT(metresAlong(plan), ElementsAre(DoubleNear(300, 1e-6), DoubleNear(700, 1e-6)));
}

TEST(Crossings, NearMissesUnplacedLinesAndOtherMeasuresAreNotMet) {
    EXPECT_THAT(metresAlong(withLine(corner(), {at(655300, 5100000.01), at(655300, 5101000)})), IsEmpty());
    EXPECT_THAT(metresAlong(withLine(corner(), {})), IsEmpty());
    EXPECT_THAT(metresAlong(withLine(corner(), {at(655300, 5100000)})), IsEmpty());
}

TEST(Crossings, OnlyLinesOnAFilmThatShowsTheRouteCount) {
    auto plan = withLine(corner(), {at(655300, 5099000), at(655300, 5101000)});
    plan::Film other;
    other.id = kettleId("other film");
    other.shows = {{kettleId("second line"), "a", {}, {}}};
    plan::Measure second;
    second.id = kettleId("second line");
    second.kind = "boundary";
    second.points = {at(655400, 5099000), at(655400, 5101000)};
    plan = std::move(plan::PlanBuilder(plan).put(other).put(second)).build();
    EXPECT_THAT(metresAlong(plan), ElementsAre(DoubleNear(300, 1e-6)));
}

TEST(Crossings, CountsFromTheLastRoutePointAndNamesTheLeg) {
    const auto plan = withLine(corner(), {at(655000, 5100250), at(657000, 5100250)});
    const auto figures = routeFigures(plan, *plan.routes().front(), &model(), nullptr);
    const auto found = crossings(plan, figures.value()).value();
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].leg, 2);
    EXPECT_EQ(found[0].label, "PL CHALK");
    EXPECT_NEAR(found[0].mapFromLast.value(), 250, 1e-6);
    EXPECT_NEAR(found[0].mapSoFar.value(), 1250, 1e-6);
    EXPECT_NEAR(found[0].at.easting.value(), 656000, 1e-6);
}

TEST(Crossings, AgreeWithCountingSidesAlongTheRoute) {
    // a slow oracle: walk the route in 0.5 m steps and note where it changes sides of an endless line
    constexpr std::uint32_t kSeed = 655000;
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> any(-1500, 1500);
    for (int round = 0; round < 60; ++round) {
        std::vector<geodesy::PlanePoint> route;
        for (int n = 0; n < 5; ++n) {
            route.push_back(at(655000 + any(random), 5100000 + any(random)));
        }
        const double angle = any(random);
        const double ux = std::cos(angle);
        const double uy = std::sin(angle);
        const auto plan = withLine(plainRoute(route), {at(655000 - 9000 * ux, 5100000 - 9000 * uy),
                                                       at(655000 + 9000 * ux, 5100000 + 9000 * uy)});
        const auto side = [&](double e, double n) { return (n - 5100000) * ux - (e - 655000) * uy; };
        std::vector<double> expected;
        double along = 0;
        for (std::size_t n = 0; n + 1 < route.size(); ++n) {
            const double e0 = route[n].easting.value();
            const double n0 = route[n].northing.value();
            const double de = route[n + 1].easting.value() - e0;
            const double dn = route[n + 1].northing.value() - n0;
            const double length = std::hypot(de, dn);
            for (double s = 0; s < length; s += 0.5) {
                const double before = side(e0 + de * s / length, n0 + dn * s / length);
                const double next = std::min(s + 0.5, length);
                const double after = side(e0 + de * next / length, n0 + dn * next / length);
                if ((before < 0) != (after < 0)) {
                    expected.push_back(along + s + 0.25);
                }
            }
            along += length;
        }
        const auto found = metresAlong(plan);
        ASSERT_EQ(found.size(), expected.size()) << "round " << round;
        for (std::size_t n = 0; n < found.size(); ++n) {
            EXPECT_NEAR(found[n], expected[n], 0.26);
        }
    }
}

}  // namespace
}  // namespace crosstick::movement
