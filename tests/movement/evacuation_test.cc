#include "core/movement/evacuation.h"

#include <iostream>
#include <random>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/geodesy/geodesic.h"
#include "core/movement/work_grid.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

using testing::HasSubstr;

constexpr std::uint32_t kSeed = 20270315;

const geodesy::MagneticModel& model() {
    static const geodesy::MagneticModel opened = *geodesy::MagneticModel::open(places::share() / "magnetic");
    return opened;
}

plan::Measure point(const char* kind, const std::string& number, geodesy::PlanePoint place) {
    plan::Measure one;
    one.id = kettleId(std::string(kind) + number);
    one.kind = kind;
    one.number = number;
    one.points = {place};
    return one;
}

plan::Route vehicleWay() {
    plan::Route way;
    way.id = kettleId("RTE GROAT");
    way.name = "GROAT";
    way.use = plan::Use::Vehicle;
    way.vertices = {at(656890, 5102460), at(656890, 5101460), at(656390, 5101460)};
    return way;
}

/// The hand-checked plan with its collection point on Road B, a pick-up at the works' yard and a way between for a
/// vehicle.
plan::Plan evacuated(std::optional<plan::MarchRate> carry = std::nullopt) {
    const plan::Plan plan = kettlePlan();
    plan::Heading heading = plan.heading();
    heading.evacuation = plan::Evacuation{kettleId("casualty-collection-point1"), kettleId("RTE GROAT"),
                                          kettleId("medevac-pickup2"), std::move(carry)};
    return std::move(plan::PlanBuilder(plan)
                         .heading(std::move(heading))
                         .put(point("casualty-collection-point", "1", at(656890, 5102460)))
                         .put(point("medevac-pickup", "2", at(656390, 5101460)))
                         .put(vehicleWay()))
        .build();
}

RouteFigures figuresOf(const plan::Plan& plan, const char* route) {
    return *routeFigures(plan, *plan.routeNamed(route), &model(), nullptr);
}

EvacuationFigures evacuationOf(const plan::Plan& plan, const char* route) {
    return **evacuationFrom(plan, figuresOf(plan, route));
}

// GeodSolve -i from SP 1 (46.018733732721 -31.006992873399) to CCP 1 (46.057715044799 -30.971718381300): 5121.5011 m;
// from RP 1 (46.057287579720 -30.978068827756): 493.7084 m. Grid azimuth atan2(2620, 4400) = 30.7719. QUILL's ground
// distance by the hand check 5198.188 m; nothing of it is nearer to the point than RP 1.
TEST(Evacuation, TheWorstSpotOfQuillIsItsStartPoint) {
    const auto evacuation = evacuationOf(evacuated(), "QUILL");
    EXPECT_EQ(evacuation.collection->label, "CCP 1");
    EXPECT_EQ(evacuation.collection->grid, "FM 5689 0246");
    ASSERT_TRUE(evacuation.carry);
    EXPECT_EQ(evacuation.carry->straight.spot, "SP 1");
    EXPECT_NEAR(evacuation.carry->straight.ground.value(), 5121.5011, 1e-3);
    EXPECT_NEAR(evacuation.carry->gridAzimuth.value(), 30.7719, 1e-4);
    EXPECT_NEAR(evacuation.carry->magneticAzimuth.value(), 30.7719 + 10.8987, 1e-3);
    EXPECT_EQ(evacuation.carry->byRoute.spot, "SP 1");
    EXPECT_NEAR(evacuation.carry->offRoute.value(), 493.7084, 1e-3);
    EXPECT_NEAR(evacuation.carry->byRoute.ground.value(), 5198.188 + 493.708, 2e-3);
    EXPECT_EQ(evacuation.pickUp->grid, "FM 5639 0146");
}

TEST(Evacuation, NoRateIsMadeUp) {
    const auto without = evacuationOf(evacuated(), "QUILL");
    EXPECT_FALSE(without.carry->straight.time);
    EXPECT_FALSE(without.carry->byRoute.time);
    EXPECT_THAT(evacuationLines(without, geodesy::AngleUnit::Degrees).at(1).text, HasSubstr("no rate for carrying"));
}

// By hand: 5121.5 m at 1.2 km/h are 256.07 minutes, 5691.9 m 284.6.
TEST(Evacuation, TheLeadersRateGivesTheTime) {
    const auto evacuation = evacuationOf(evacuated(plan::MarchRate{KilometresPerHour(1.2), "four men"}), "QUILL");
    EXPECT_NEAR(evacuation.carry->straight.time->value(), 256.07, 0.01);
    EXPECT_NEAR(evacuation.carry->byRoute.time->value(), 284.60, 0.01);
    const auto lines = evacuationLines(evacuation, geodesy::AngleUnit::Degrees);
    ASSERT_EQ(lines.size(), 3U);
    EXPECT_EQ(lines[0].lead, "Casualties:");
    EXPECT_EQ(lines[0].text, "CCP 1 FM 5689 0246, on by vehicle RTE GROAT to FM 5639 0146, 1500 m");
    EXPECT_EQ(lines[1].text,
              "at worst from SP 1 straight 5120 m, 4:16, magnetic 042°; from SP 1 by the route 5690 m, "
              "4:45; at 1.2 km/h, four men");
    EXPECT_EQ(lines[2], (EvacuationLine{"Pick-up:", "MEDEVAC 2 FM 5639 0146"}));
}

TEST(Evacuation, AVehiclesOwnWayHasNoCarry) {
    const auto evacuation = evacuationOf(evacuated(), "GROAT");
    EXPECT_FALSE(evacuation.carry);
    EXPECT_TRUE(evacuation.onward);
    EXPECT_NEAR(evacuation.onward->mapDistance.value(), 1500, 1e-9);
    EXPECT_NEAR(evacuation.onward->fromCollection->value(), 0, 1e-9);
}

TEST(Evacuation, AVehicleHasNeitherPacesNorAManOnFootsTimes) {
    const auto figures = figuresOf(evacuated(), "GROAT");
    EXPECT_FALSE(figures.paces);
    EXPECT_FALSE(figures.pace);
    EXPECT_FALSE(figures.legs[0].paces);
    EXPECT_FALSE(figures.legs[0].pieces[0].paces);
    EXPECT_FALSE(figures.time);
    EXPECT_FALSE(figures.arrival);
}

TEST(Evacuation, WhatIsNotNamedOrNotPlacedIsNothing) {
    EXPECT_FALSE(*evacuationFrom(kettlePlan(), figuresOf(kettlePlan(), "QUILL")));
    plan::Plan plan = evacuated();
    plan::Measure unplaced = *plan.measure(kettleId("casualty-collection-point1"));
    unplaced.points.clear();
    plan = std::move(plan::PlanBuilder(plan).put(unplaced).removeRoute(kettleId("RTE GROAT"))).build();
    const auto evacuation = evacuationOf(plan, "QUILL");
    EXPECT_FALSE(evacuation.collection);
    EXPECT_FALSE(evacuation.carry);
    EXPECT_FALSE(evacuation.onward);
    EXPECT_TRUE(evacuation.pickUp);
}

// Law: no spot of the way lies farther from the collection point than the one that is told, and who follows the route
// never goes a shorter way than the straight one.
TEST(Evacuation, NoSpotOfTheWayIsWorseThanTheOneTold) {
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> away(-3000, 3000);
    std::uniform_real_distribution<double> share(0, 1);
    for (int round = 0; round < 60; ++round) {
        std::vector<geodesy::PlanePoint> vertices;
        for (int n = 0; n < 2 + round % 7; ++n) {
            vertices.push_back(at(655000 + away(random), 5100000 + away(random)));
        }
        const auto collection = at(655000 + away(random), 5100000 + away(random));
        plan::Plan plan = plainRoute(vertices);
        plan::Heading heading = plan.heading();
        heading.evacuation = plan::Evacuation{kettleId("casualty-collection-point1"), {}, {}, {}};
        plan =
            std::move(plan::PlanBuilder(plan).heading(heading).put(point("casualty-collection-point", "1", collection)))
                .build();
        const auto carry = *evacuationOf(plan, "PLAIN").carry;
        const auto grid = WorkGrid::of(plan).value();
        const auto there = *grid.plane().geographic(collection);
        for (int spot = 0; spot < 40; ++spot) {
            const auto n = static_cast<std::size_t>(share(random) * static_cast<double>(vertices.size() - 1));
            const double along = share(random);
            const auto from = *grid.plane().geographic(
                {vertices[n].easting + (vertices[n + 1].easting - vertices[n].easting) * along,
                 vertices[n].northing + (vertices[n + 1].northing - vertices[n].northing) * along});
            EXPECT_LE(geodesy::geodesic(from, there).distance.value(), carry.straight.ground.value() + 1e-3);
        }
        const auto end = *grid.plane().geographic(carry.byRoute.from);
        EXPECT_GE(carry.byRoute.ground.value(), geodesy::geodesic(end, there).distance.value() - 0.01);
    }
}

}  // namespace
}  // namespace crosstick::movement
