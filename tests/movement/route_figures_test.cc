#include "core/movement/route_figures.h"

#include <cmath>
#include <iostream>
#include <random>

#include <gtest/gtest.h>

#include "core/movement/faults.h"
#include "core/movement/gm_angle.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

constexpr std::uint32_t kSeed = 20270313;

const geodesy::MagneticModel& model() {
    static const geodesy::MagneticModel opened = *geodesy::MagneticModel::open(places::share() / "magnetic");
    return opened;
}

Result<RouteFigures> figuresOf(const plan::Plan& plan, const sheets::HeightSource* heights = nullptr) {
    return routeFigures(plan, *plan.routes().front(), &model(), heights);
}

plan::Plan changed(const plan::Plan& plan, const std::function<void(plan::Heading&)>& change) {
    plan::Heading heading = plan.heading();
    change(heading);
    return std::move(plan::PlanBuilder(plan).heading(std::move(heading))).build();
}

plan::Plan changedRoute(const plan::Plan& plan, const std::function<void(plan::Route&)>& change) {
    plan::Route route = *plan.routes().front();
    change(route);
    return std::move(plan::PlanBuilder(plan).put(std::move(route))).build();
}

/// A plane that rises by a share of the easting, known west of an edge only.
class Slope final : public sheets::HeightSource {
  public:
    explicit Slope(double rise, double edge = 1e9) : rise_(rise), edge_(edge) {}
    std::optional<Metres> heightAt(geodesy::PlanePoint p) const override {
        return p.easting.value() < edge_ ? std::optional(Metres(100 + (p.easting.value() - 655000) * rise_))
                                         : std::nullopt;
    }

  private:
    double rise_, edge_;
};

std::vector<geodesy::PlanePoint> randomWalk(std::mt19937& random, std::size_t count) {
    std::uniform_real_distribution<double> step(-900, 900);
    std::vector<geodesy::PlanePoint> points{at(655000, 5100000)};
    while (points.size() < count) {
        points.push_back(
            at(points.back().easting.value() + step(random), points.back().northing.value() + step(random)));
    }
    return points;
}

double turn(Degrees a, Degrees b) {
    return std::remainder(a.value() - b.value(), 360);
}

TEST(RouteFigures, ARouteOfOneVertexIsRefusedByName) {
    const auto result = figuresOf(plainRoute({at(655000, 5100000)}));
    ASSERT_FALSE(result);
    EXPECT_EQ(result.error().fault, kRouteTooShort);
    EXPECT_EQ(std::get<std::string>(result.error().arguments.front().value), "PLAIN");
}

TEST(RouteFigures, APieceOfNoLengthHasNoAzimuthAndTakesNoTime) {
    const auto result = figuresOf(plainRoute({at(655000, 5100000), at(655000, 5100000)}));
    ASSERT_TRUE(result);
    const Piece& piece = result->legs.at(0).pieces.at(0);
    EXPECT_TRUE(std::isnan(piece.gridAzimuth.value()));
    EXPECT_TRUE(std::isnan(piece.trueAzimuth.value()));
    EXPECT_TRUE(std::isnan(piece.magneticAzimuth.value()));
    EXPECT_EQ(piece.groundDistance.value(), 0);
    EXPECT_EQ(piece.time->value(), 0);
    EXPECT_TRUE(std::isfinite(result->gm.angle.value()));
}

TEST(RouteFigures, WithoutStopsTheWholeRouteIsOneLeg) {
    const auto plan = changedRoute(plainRoute({at(655000, 5100000), at(655100, 5100000), at(655100, 5100300)}),
                                   [](plan::Route& route) { route.stops.clear(); });
    const auto result = figuresOf(plan);
    ASSERT_TRUE(result);
    ASSERT_EQ(result->legs.size(), 1U);
    EXPECT_EQ(result->legs[0].pieces.size(), 2U);
    EXPECT_NEAR(result->mapDistance.value(), 400, 1e-9);
    EXPECT_EQ(result->legs[0].fromLabel, "");
}

TEST(RouteFigures, StopsThatPointNowhereOrBackwardsAreLeftOut) {
    const auto plan = changedRoute(plainRoute({at(655000, 5100000), at(655100, 5100000), at(655100, 5100300)}),
                                   [](plan::Route& route) {
                                       route.stops = {{0, {}}, {2, {}}, {1, {}}, {77, {}}};
                                   });
    const auto result = figuresOf(plan);
    ASSERT_TRUE(result);
    EXPECT_EQ(result->legs.size(), 1U);
}

TEST(RouteFigures, TheAdministrativePartLiesOutsideLegsAndTotals) {
    const auto plan =
        changedRoute(plainRoute({at(654000, 5100000), at(655000, 5100000), at(655000, 5100300), at(655000, 5105000)}),
                     [](plan::Route& route) {
                         route.stops = {route.stops[1], route.stops[2]};
                     });
    const auto result = figuresOf(plan);
    ASSERT_TRUE(result);
    EXPECT_EQ(result->legs.size(), 1U);
    EXPECT_NEAR(result->mapDistance.value(), 300, 1e-9);
    EXPECT_NEAR(result->gm.middle.northing.value(), 5100150, 1e-6);
}

TEST(RouteFigures, WithoutProfileRateOrHeightsTheFiguresAreUnknownNotZero) {
    const auto plan = changed(plainRoute({at(655000, 5100000), at(655100, 5100000)}), [](plan::Heading& heading) {
        heading.pace.reset();
        heading.rate.reset();
    });
    const auto result = figuresOf(plan);
    ASSERT_TRUE(result);
    EXPECT_FALSE(result->paces);
    EXPECT_FALSE(result->time);
    EXPECT_FALSE(result->arrival);
    EXPECT_FALSE(result->climb);
    EXPECT_FALSE(result->slopeDistance);
    EXPECT_FALSE(result->legs[0].paces);
    EXPECT_FALSE(result->legs[0].timeSoFar);
}

TEST(RouteFigures, ARateOfNothingGivesNoTime) {
    const auto plan = changed(plainRoute({at(655000, 5100000), at(655100, 5100000)}),
                              [](plan::Heading& heading) { heading.rate->rate = KilometresPerHour(0); });
    const auto result = figuresOf(plan);
    ASSERT_TRUE(result);
    EXPECT_FALSE(result->time);
}

TEST(RouteFigures, ClimbAndSlopeFollowAnEvenSlope) {
    const Slope slope(0.2);
    const auto result = figuresOf(plainRoute({at(655000, 5100000), at(655500, 5100000), at(655200, 5100000)}), &slope);
    ASSERT_TRUE(result);
    EXPECT_NEAR(result->climb->value(), 100, 1e-9);
    EXPECT_NEAR(result->descent->value(), 60, 1e-9);
    EXPECT_NEAR(result->legs[0].slopeDistance->value(), std::hypot(result->legs[0].groundDistance.value(), 100), 1e-6);
    EXPECT_NEAR(result->gm.height->value(), 180, 1e-6);
}

TEST(RouteFigures, OneSampleWithoutHeightMakesTheClimbUnknown) {
    const Slope slope(0.2, 655490);
    const auto result = figuresOf(plainRoute({at(655000, 5100000), at(655400, 5100000), at(655500, 5100000)}), &slope);
    ASSERT_TRUE(result);
    EXPECT_TRUE(result->legs[0].climb);
    EXPECT_FALSE(result->legs[1].climb);
    EXPECT_FALSE(result->climb);
}

TEST(RouteFigures, ThePrintedAngleIsTakenWhereThePlanChoseIt) {
    const auto plan =
        changed(kettlePlan(), [](plan::Heading& heading) { heading.declination = plan::DeclinationSource::Sheet; });
    const auto result = routeFigures(plan, *plan.routeNamed("QUILL"), nullptr, nullptr);
    ASSERT_TRUE(result);
    // printed -11.5 on 1 January 2025, +0.2 a year, 801 days on
    EXPECT_NEAR(result->gm.angle.value(), -11.5 + 0.2 * 801 / 365.25, 1e-9);
    EXPECT_EQ(result->gm.source, plan::DeclinationSource::Sheet);
    EXPECT_FALSE(result->gm.model);
    const Piece& piece = result->legs[3].pieces[1];
    EXPECT_NEAR(piece.magneticAzimuth.value(), -result->gm.angle.value(), 1e-9);
}

TEST(RouteFigures, BothAnglesStandInTheResultWhicheverWasChosen) {
    const auto plan = kettlePlan();
    const auto result = routeFigures(plan, *plan.routeNamed("QUILL"), &model(), nullptr);
    ASSERT_TRUE(result);
    EXPECT_TRUE(result->gm.model);
    EXPECT_NEAR(result->gm.printed->value(), -11.0614, 1e-3);
}

TEST(RouteFigures, AMissingAngleIsAnErrorThatNamesWhich) {
    const auto plain = plainRoute({at(655000, 5100000), at(655100, 5100000)});
    const auto noModel = routeFigures(plain, *plain.routes().front(), nullptr, nullptr);
    ASSERT_FALSE(noModel);
    EXPECT_EQ(noModel.error().fault, kNoModel);
    const auto bySheet =
        changed(plain, [](plan::Heading& heading) { heading.declination = plan::DeclinationSource::Sheet; });
    ASSERT_FALSE(figuresOf(bySheet));
    EXPECT_EQ(figuresOf(bySheet).error().fault, kNoPrintedAngle);
    const auto undated = changed(plain, [](plan::Heading& heading) { heading.date = CalendarDate{}; });
    ASSERT_FALSE(figuresOf(undated));
    EXPECT_EQ(figuresOf(undated).error().fault, kNoDate);
}

TEST(RouteFigures, ANationalGridRulesAzimuthsAndMapDistances) {
    // the same ground on a sheet of ED50 / UTM 31: its own figures, WGS 84 ground distance
    plan::Sheet sheet;
    sheet.id = kettleId("ed50");
    sheet.crs = "EPSG:23031";
    auto plan = plainRoute({at(448000, 5411000), at(449000, 5412000)});
    plan = changed(plan, [](plan::Heading& heading) { heading.plane = {31, geodesy::Hemisphere::North}; });
    const auto own = figuresOf(plan);
    const auto onSheet = figuresOf(std::move(plan::PlanBuilder(plan).put(sheet)).build());
    ASSERT_TRUE(own);
    ASSERT_TRUE(onSheet);
    EXPECT_EQ(onSheet->gridCrs, "EPSG:23031");
    EXPECT_NEAR(onSheet->groundDistance.value(), own->groundDistance.value(), 1e-4);
    EXPECT_NE(onSheet->legs[0].pieces[0].from, own->legs[0].pieces[0].from);
    EXPECT_NEAR(onSheet->legs[0].pieces[0].from.easting.value(), 448000, 250);
    // no MGRS on another datum: figures of the sheet's own grid
    EXPECT_EQ(onSheet->legs[0].fromGrid.size(), std::string("44808 541121").size());
}

TEST(RouteFigures, LegsAddUpToTheRouteAndPiecesToTheLeg) {
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    for (int round = 0; round < 40; ++round) {
        const auto walk = randomWalk(random, 9);
        const auto plan = changedRoute(plainRoute(walk), [](plan::Route& route) {
            route.stops = {route.stops[0], route.stops[3], route.stops[4], route.stops[8]};
        });
        const Slope slope(0.1);
        const RouteFigures figures = figuresOf(plan, &slope).value();
        double ground = 0;
        double climb = 0;
        for (const Leg& leg : figures.legs) {
            double map = 0;
            for (const Piece& piece : leg.pieces) {
                map += piece.mapDistance.value();
                ground += piece.groundDistance.value();
                climb += piece.climb->value();
                EXPECT_GE(piece.slopeDistance->value(), piece.groundDistance.value() - 1e-9);
            }
            EXPECT_NEAR(leg.mapDistance.value(), map, 1e-9);
            EXPECT_NEAR(leg.groundSoFar.value(), ground, 1e-9);
            EXPECT_NEAR(leg.timeSoFar->value(), ground * 60 / 1600, 1e-9);
        }
        EXPECT_NEAR(figures.groundDistance.value(), ground, 1e-9);
        EXPECT_NEAR(figures.climb->value(), climb, 1e-9);
        EXPECT_NEAR(figures.paces.value(), ground * 0.74, 1e-9);
    }
}

TEST(RouteFigures, TheRouteReversedIsWalkedOnTheBackAzimuths) {
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    for (int round = 0; round < 40; ++round) {
        auto walk = randomWalk(random, 6);
        const Slope slope(0.1);
        const RouteFigures there = figuresOf(plainRoute(walk), &slope).value();
        std::reverse(walk.begin(), walk.end());
        const RouteFigures back = figuresOf(plainRoute(walk), &slope).value();
        EXPECT_NEAR(there.gm.angle.value(), back.gm.angle.value(), 1e-9);
        EXPECT_NEAR(there.climb->value(), back.descent->value(), 1e-9);
        EXPECT_NEAR(there.groundDistance.value(), back.groundDistance.value(), 1e-6);
        for (std::size_t n = 0; n < there.legs.size(); ++n) {
            const Piece& one = there.legs[n].pieces[0];
            const Piece& other = back.legs[there.legs.size() - 1 - n].pieces[0];
            EXPECT_NEAR(turn(geodesy::backAzimuth(one.gridAzimuth), other.gridAzimuth), 0, 1e-9);
            EXPECT_NEAR(turn(geodesy::backAzimuth(one.magneticAzimuth), other.magneticAzimuth), 0, 1e-9);
        }
    }
}

TEST(Label, IsTheTradesAbbreviationWithNumberAndName) {
    const auto plan = kettlePlan();
    for (const char* name : {"SP 1", "CP 3", "RP 1", "ORP SORREL", "LD TRIVET", "PL BODKIN", "LOA GASKET"}) {
        EXPECT_EQ(label(*plan.measure(kettleId(name))), name);
    }
    EXPECT_EQ(label(*plan.measure(kettleId("left"))), "Boundary");
    plan::Measure newer;
    newer.kind = "something-newer";
    newer.number = "4";
    EXPECT_EQ(label(newer), "something-newer 4");
    plan::Measure said;
    said.kind = "phase-line";
    said.name = "PL TRIVET";
    EXPECT_EQ(label(said), "PL TRIVET");
}

TEST(Arrival, IsTheSecondBegunAndUnknownWithoutStartOrTime) {
    const Instant start = *parseIsoTime("2027-03-13T23:59:59Z");
    EXPECT_EQ(isoTime(*arrivalAfter(start, Minutes(0.999 / 60)), {}), "2027-03-13T23:59:59Z");
    EXPECT_EQ(isoTime(*arrivalAfter(start, Minutes(1.0001 / 60)), {}), "2027-03-14T00:00:00Z");
    EXPECT_FALSE(arrivalAfter(std::nullopt, Minutes(1)));
    EXPECT_FALSE(arrivalAfter(start, std::nullopt));
    EXPECT_FALSE(arrivalAfter(start, Minutes(1e300)));
}

TEST(RouteFigures, LegsBeginAtTheStartPointAndWhatLiesBeforeIsAdministrative) {
    plan::Plan plan = plainRoute({at(654000, 5100000), at(655000, 5100000), at(655000, 5100300)});
    plan::Measure start = *plan.measure(kettleId("CP 2"));
    start.kind = "start-point";
    plan = std::move(plan::PlanBuilder(plan).put(start)).build();
    const auto result = figuresOf(plan);
    ASSERT_TRUE(result);
    EXPECT_EQ(result->legs.size(), 1U);
    EXPECT_NEAR(result->mapDistance.value(), 300, 1e-9);
    ASSERT_TRUE(result->administrative);
    EXPECT_NEAR(result->administrative->mapDistance.value(), 1000, 1e-9);
    EXPECT_FALSE(figuresOf(plainRoute({at(654000, 5100000), at(655000, 5100000)}))->administrative);
}

TEST(RouteFigures, TheActiveRallyPointIsTheLastOneThatWasPassed) {
    plan::Plan plan = plainRoute({at(654000, 5100000), at(655000, 5100000), at(655000, 5100300), at(655500, 5100300)});
    plan::Measure rally = *plan.measure(kettleId("CP 2"));
    rally.kind = "rally-point";
    plan = std::move(plan::PlanBuilder(plan).put(rally)).build();
    const auto result = figuresOf(plan);
    EXPECT_EQ(result->legs[0].rallyLabel, "");
    EXPECT_EQ(result->legs[1].rallyLabel, "RLY 2");
    EXPECT_EQ(result->legs[2].rallyLabel, "RLY 2");
}

TEST(RouteFigures, HaltsAtPointsCountInTheTimeSoFarAndNotInTheLegs) {
    const auto plan = changedRoute(plainRoute({at(655000, 5100000), at(656000, 5100000), at(657000, 5100000)}),
                                   [](plan::Route& route) { route.stops[1].leg.halt = Minutes(20); });
    const auto result = figuresOf(plan);
    EXPECT_NEAR(result->legs[0].timeSoFar->value(), result->legs[0].time->value(), 1e-9);
    EXPECT_NEAR(result->legs[1].timeSoFar->value(), (*result->legs[0].time + *result->legs[1].time).value() + 20, 1e-9);
    EXPECT_NEAR(result->time->value(), result->legs[1].timeSoFar->value(), 1e-9);
}

TEST(RouteFigures, ANaismithLegOnASteepClimbIsSlowerThanDoctrine) {
    const Slope slope(0.3);
    const auto plan = changed(plainRoute({at(655000, 5100000), at(656000, 5100000)}), [](plan::Heading& heading) {
        heading.timing = plan::Timing{plan::TimeRule::Naismith, plan::Going::Road, {}};
    });
    const auto result = figuresOf(plan, &slope);
    // 1 km and 300 m of climb: 12 + 30 min; by road at night 18.75
    EXPECT_NEAR(result->time->value(), 42, 0.05);
    EXPECT_TRUE(result->legs[0].pieces[0].slowed);
    EXPECT_FALSE(figuresOf(plan)->legs[0].pieces[0].slowed);  // no heights: doctrine alone
    EXPECT_NEAR(figuresOf(plan)->time->value(), 18.75, 0.05);
}

TEST(RouteFigures, TheBackTrueAzimuthIsReadAtTheEnd) {
    // 40 km to the east at 46 north: the meridians turn by 0.37 degree between the two
    const auto result = figuresOf(plainRoute({at(640000, 5100000), at(680000, 5100000)}));
    const Piece& piece = result->legs[0].pieces[0];
    EXPECT_NEAR(turn(piece.backTrueAzimuth, Degrees(piece.trueAzimuth.value() + 180)), 0.372, 0.01);
}

}  // namespace
}  // namespace crosstick::movement
