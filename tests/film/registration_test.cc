#include "core/film/registration.h"

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

#include <gtest/gtest.h>

#include "tests/film/printed_plan.h"

namespace crosstick::film {
namespace {

using movement::at;

plan::Plan withoutWindow(const plan::Plan& plan) {
    plan::PlanBuilder builder{plan};
    builder.registration(std::nullopt);
    return std::move(builder).build();
}

bool holds(const plan::Registration& window, geodesy::PlanePoint p, Metres by) {
    return p.easting >= window.southWest.easting + by && p.easting <= window.northEast.easting - by &&
           p.northing >= window.southWest.northing + by && p.northing <= window.northEast.northing - by;
}

void expectGoodTicks(const plan::Registration& window, Metres interval, Metres inset) {
    ASSERT_GE(window.ticks.size(), 3U);
    std::set<std::pair<double, double>> places;
    for (const geodesy::PlanePoint tick : window.ticks) {
        EXPECT_EQ(std::fmod(tick.easting.value(), interval.value()), 0);
        EXPECT_EQ(std::fmod(tick.northing.value(), interval.value()), 0);
        EXPECT_TRUE(holds(window, tick, inset));
        places.insert({tick.easting.value(), tick.northing.value()});
    }
    EXPECT_EQ(places.size(), window.ticks.size()) << "two ticks on one crossing";
}

TEST(Registration, WindowHoldsEveryMeasureWithRoomForLabels) {
    const plan::Plan plan = withoutWindow(printedPlan());
    const auto window = proposeRegistration(plan);
    ASSERT_TRUE(window.has_value());
    plan.measures().forEach([&](const plan::MeasurePtr& measure) {
        for (const geodesy::PlanePoint p : measure->points) {
            EXPECT_TRUE(holds(*window, p, Metres(250))) << measure->name;  // 10 mm at 1:25,000
        }
    });
    expectGoodTicks(*window, Metres(1000), Metres(175));
}

// Scenario 4 has its four ticks at 653000 and 658000, 5097000 and 5104000. The left boundary begins 50 m from the first
// of them; the neighbour crossing to the north lies clear.
TEST(Registration, TicksStandNearTheCornersAndClearOfMeasures) {
    const auto window = proposeRegistration(withoutWindow(printedPlan()));
    ASSERT_TRUE(window.has_value());
    ASSERT_EQ(window->ticks.size(), 4U);
    const auto has = [&](geodesy::PlanePoint p) {
        return std::find(window->ticks.begin(), window->ticks.end(), p) != window->ticks.end();
    };
    EXPECT_TRUE(has(at(658000, 5097000)));
    EXPECT_FALSE(has(at(653000, 5097000)));
    for (const geodesy::PlanePoint tick : window->ticks) {
        const double distance = std::hypot(tick.easting.value() - 653050, tick.northing.value() - 5097000);
        EXPECT_GE(distance, 175);  // 7 mm
    }
}

TEST(Registration, IsCutToTheSheet) {
    plan::Plan plan = withoutWindow(printedPlan());
    plan::Sheet small = *plan.sheets().front();
    small.placement = {at(653000, 5104000), 50, 0, 0, -60};  // 5 by 6 km
    plan::PlanBuilder builder{plan};
    builder.put(small);
    plan = std::move(builder).build();
    const auto window = proposeRegistration(plan);
    ASSERT_TRUE(window.has_value());
    EXPECT_EQ(window->southWest, at(653000, 5098000));
    // In the north the measures end first: 5103290 and 250 m for labels, to the next 100 m.
    EXPECT_EQ(window->northEast, at(658000, 5103600));
}

TEST(Registration, SheetWithoutMeasuresIsTakenWholeWhereA4HoldsIt) {
    plan::Heading heading;
    heading.plane = {25, geodesy::Hemisphere::North};
    plan::Sheet sheet = *printedPlan().sheets().front();
    sheet.placement = {at(652000, 5105000), 40, 0, 0, -50};  // 4 by 5 km: 160 x 200 mm
    plan::PlanBuilder builder{plan::Plan{}};
    builder.heading(heading).put(sheet);
    const auto window = proposeRegistration(std::move(builder).build());
    ASSERT_TRUE(window.has_value());
    EXPECT_EQ(window->southWest, at(652000, 5100000));
    EXPECT_EQ(window->northEast, at(656000, 5105000));
}

TEST(Registration, LargeSheetWithoutMeasuresGivesItsMiddle) {
    plan::Heading heading;
    heading.plane = {25, geodesy::Hemisphere::North};
    plan::Sheet sheet = *printedPlan().sheets().front();
    sheet.placement = {at(640000, 5120000), 200, 0, 0, -200};  // 20 by 20 km
    plan::PlanBuilder builder{plan::Plan{}};
    builder.heading(heading).put(sheet);
    const auto window = proposeRegistration(std::move(builder).build());
    ASSERT_TRUE(window.has_value());
    EXPECT_NEAR((window->southWest.easting + window->northEast.easting).value() / 2, 650000, 100);
    EXPECT_NEAR((window->southWest.northing + window->northEast.northing).value() / 2, 5110000, 100);
    expectGoodTicks(*window, Metres(1000), Metres(175));
}

TEST(Registration, SmallDrawingGetsAWindowThatHoldsItsTicks) {
    const plan::Plan plan = lineOn({32, geodesy::Hemisphere::North}, {at(501450, 5303450), at(501550, 5303550)},
                                   "EPSG:32632", at(498000, 5309000), Metres(10000));
    const auto window = proposeRegistration(plan);
    ASSERT_TRUE(window.has_value());
    expectGoodTicks(*window, Metres(1000), Metres(175));
}

TEST(Registration, PlanWithoutASheetStandsInItsOwnZone) {
    plan::PlanBuilder builder{withoutWindow(printedPlan())};
    builder.removeSheet(movement::kettleId("sheet"));
    const auto window = proposeRegistration(std::move(builder).build());
    ASSERT_TRUE(window.has_value());
    EXPECT_TRUE(holds(*window, at(654270, 5098060), Metres(250)));
}

TEST(Registration, NothingAtAllIsAFault) {
    const auto window = proposeRegistration(plan::Plan{});
    ASSERT_FALSE(window.has_value());
    EXPECT_EQ(window.error().fault.name, "film/no-ground");
}

TEST(Registration, MeasuresBesideTheSheetAreAFault) {
    const plan::Plan plan = lineOn({32, geodesy::Hemisphere::North}, {at(601000, 5301500), at(605000, 5306000)},
                                   "EPSG:32632", at(498000, 5309000), Metres(10000));
    const auto window = proposeRegistration(plan);
    ASSERT_FALSE(window.has_value());
    EXPECT_EQ(window.error().fault.name, "film/off-the-sheet");
}

TEST(Registration, SheetThatShowsNoCrossingsIsAFault) {
    const plan::Plan plan = lineOn({32, geodesy::Hemisphere::North}, {at(500300, 5303300), at(500700, 5303700)},
                                   "EPSG:32632", at(500200, 5303800), Metres(600));
    const auto window = proposeRegistration(plan);
    ASSERT_FALSE(window.has_value());
    EXPECT_EQ(window.error().fault.name, "film/too-few-crossings");
}

// Law: for any few lines on the sheet, ticks are crossings inside the window, at least three, no two the same.
TEST(Registration, TicksOfRandomPlansAreCrossingsInsideTheWindow) {
    const unsigned seed = 11;
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> east(498500, 507500);
    std::uniform_real_distribution<double> north(5299500, 5308500);
    for (int n = 0; n < 40; ++n) {
        std::vector<geodesy::PlanePoint> line;
        for (int k = 0; k < 4; ++k) {
            line.push_back(at(east(random), north(random)));
        }
        const auto window = proposeRegistration(
            lineOn({32, geodesy::Hemisphere::North}, line, "EPSG:32632", at(498000, 5309000), Metres(10000)));
        ASSERT_TRUE(window.has_value());
        expectGoodTicks(*window, Metres(1000), Metres(175));
    }
}

TEST(Registration, FilmOnAnotherGridHasWindowAndTicksThere) {
    plan::Plan plan = printedPlan();
    plan::Sheet other = *plan.sheets().front();
    other.id = movement::kettleId("other sheet");
    other.crs = "EPSG:32626";
    other.placement = {at(190000, 5112000), 100, 0, 0, -150};
    plan::Film film = *plan.filmNamed("LOOK");
    film.groundSheet = other.id;
    plan::PlanBuilder builder{plan};
    builder.put(other).put(film);
    plan = std::move(builder).build();
    EXPECT_TRUE(sharesRegistration(plan, *plan.filmNamed("MOVE")));
    EXPECT_FALSE(sharesRegistration(plan, *plan.filmNamed("LOOK")));
    EXPECT_EQ(*registrationFor(plan, *plan.filmNamed("MOVE")), *plan.registration());
    const auto own = registrationFor(plan, *plan.filmNamed("LOOK"));
    ASSERT_TRUE(own.has_value());
    EXPECT_LT(own->northEast.easting, Metres(290000));
    expectGoodTicks(*own, Metres(1000), Metres(175));
}

TEST(Registration, GridIntervalFollowsTheScale) {
    EXPECT_EQ(gridInterval(Scale{5000}), Metres(100));
    EXPECT_EQ(gridInterval(Scale{10000}), Metres(1000));
    EXPECT_EQ(gridInterval(Scale{25000}), Metres(1000));
    EXPECT_EQ(gridInterval(Scale{100000}), Metres(1000));
    EXPECT_EQ(gridInterval(Scale{250000}), Metres(10000));
}

}  // namespace
}  // namespace crosstick::film
