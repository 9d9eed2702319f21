// How far a navigator may be off at a leg's end.
#include "core/movement/drift.h"

#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "core/geodesy/plane_angles.h"
#include "core/movement/typed_timing.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

const NavigatorErrors kOurs{};

Piece walked(double azimuth, double metres) {
    Piece piece{};
    piece.gridAzimuth = Degrees(azimuth);
    piece.mapDistance = piece.groundDistance = Metres(metres);
    return piece;
}

RouteFigures figuresOf(const plan::Plan& plan, const char* name) {
    const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
    return routeFigures(plan, *plan.routeNamed(name), &model.value(), nullptr).value();
}

// By hand beforehand: the longest leg in one piece is 1258.7 m, 62.9 m along and 43.9 m across; QUILL's, CP 2 to
// CP 3, 977.4 m, 48.9 and 34.1 m.
TEST(Drift, OfTheExercisesLongestLegsIsTheOneWorkedOutBeforehand) {
    const auto longest = [](const RouteFigures& figures) {
        const Leg* found = nullptr;
        for (const Leg& leg : figures.legs) {
            if (leg.pieces.size() == 1 && (found == nullptr || leg.groundDistance > found->groundDistance)) {
                found = &leg;
            }
        }
        return *found;
    };
    const DriftEllipse mitten = driftOf(longest(figuresOf(kettlePlan(), "MITTEN")).pieces, kOurs);
    EXPECT_NEAR(mitten.major.value(), 62.9, 0.05);
    EXPECT_NEAR(mitten.minor.value(), 43.9, 0.05);
    const Leg leg = longest(figuresOf(kettlePlan(), "QUILL"));
    const DriftEllipse quill = driftOf(leg.pieces, kOurs);
    EXPECT_NEAR(quill.major.value(), 48.9, 0.05);
    EXPECT_NEAR(quill.minor.value(), 34.1, 0.05);
    EXPECT_NEAR(std::fmod(leg.pieces[0].gridAzimuth.value(), 180), quill.gridAzimuth.value(), 1e-9);
}

TEST(Drift, TurnsAcrossTheLegWhereTheCompassIsTheWorse) {
    const DriftEllipse ellipse = driftOf({walked(30, 1000)}, {0.01, Degrees(5)});
    EXPECT_NEAR(ellipse.major.value(), 1000 * std::sin(5 * std::numbers::pi / 180), 1e-9);
    EXPECT_NEAR(ellipse.minor.value(), 10, 1e-9);
    EXPECT_NEAR(ellipse.gridAzimuth.value(), 120, 1e-9);
}

// By hand: 300 m north, 400 m east, pace 10 %, compass asin 0.1. The pace error scales the 500 m from start to end; the
// compass errors are 30 m to the east and 40 m to the south. Covariance east 40^2 + 30^2 = 2500, north 30^2 + 40^2 =
// 2500, both 40 * 30 = 1200: axes root 3700 and root 1300, at 45 degrees.
TEST(Drift, OverABendAddsWhatTheHandAdds) {
    const NavigatorErrors errors{0.1, degrees(Radians(std::asin(0.1)))};
    const DriftEllipse ellipse = driftOf({walked(0, 300), walked(90, 400)}, errors);
    EXPECT_NEAR(ellipse.major.value(), std::sqrt(3700), 1e-9);
    EXPECT_NEAR(ellipse.minor.value(), std::sqrt(1300), 1e-9);
    EXPECT_NEAR(ellipse.gridAzimuth.value(), 45, 1e-9);
}

TEST(Drift, ThereAndBackLeavesNoErrorOfPace) {
    const DriftEllipse ellipse = driftOf({walked(10, 500), walked(190, 500)}, {0.05, Degrees(0)});
    EXPECT_NEAR(ellipse.major.value(), 0, 1e-9);
}

/// One who walks the pieces with errors drawn at random ends inside the ellipse as often as theory says: 1 - e^(-1/2)
/// of the time, and 1 - e^(-2) inside one twice as large (two normal variables, common knowledge).
TEST(Drift, IsTheSpreadOfManyWhoWalkTheLeg) {
    std::mt19937_64 random(20270313);
    SCOPED_TRACE("seed 20270313");
    const std::vector<Piece> pieces{walked(20, 700), walked(75, 400), walked(350, 900)};
    const DriftEllipse ellipse = driftOf(pieces, kOurs);
    std::normal_distribution<double> normal;
    constexpr int kWalkers = 20000;
    int inside = 0;
    int insideTwice = 0;
    for (int n = 0; n < kWalkers; ++n) {
        const double scale = 1 + kOurs.pace * normal(random);
        double east = 0;
        double north = 0;
        for (const Piece& piece : pieces) {
            const double meant = radians(piece.gridAzimuth).value();
            const double gone = meant + radians(kOurs.compass).value() * normal(random);
            const double length = piece.groundDistance.value();
            east += length * (scale * std::sin(gone) - std::sin(meant));
            north += length * (scale * std::cos(gone) - std::cos(meant));
        }
        const double axis = radians(ellipse.gridAzimuth).value();
        const double along = (east * std::sin(axis) + north * std::cos(axis)) / ellipse.major.value();
        const double across = (east * std::cos(axis) - north * std::sin(axis)) / ellipse.minor.value();
        const double size = std::hypot(along, across);
        inside += size < 1 ? 1 : 0;
        insideTwice += size < 2 ? 1 : 0;
    }
    EXPECT_NEAR(static_cast<double>(inside) / kWalkers, 1 - std::exp(-0.5), 0.015);
    EXPECT_NEAR(static_cast<double>(insideTwice) / kWalkers, 1 - std::exp(-2), 0.015);
}

TEST(Drift, LongestSafeLegIsWhereTheEllipseJustFits) {
    for (const NavigatorErrors& errors : {kOurs, NavigatorErrors{0.01, Degrees(4)}, NavigatorErrors{0.1, Degrees(0)}}) {
        const Metres longest = longestSafeLeg(errors, Metres(40));
        EXPECT_NEAR(driftOf({walked(123, longest.value())}, errors).major.value(), 40, 1e-9);
    }
    EXPECT_NEAR(longestSafeLeg(kOurs, kFoundWithin).value(), 1000, 1e-9);
    EXPECT_FALSE(isFinite(longestSafeLeg({0, Degrees(0)}, Metres(40))));
}

TEST(Drift, NamesLegsThatEndAtLessThanItsSize) {
    plan::Plan plan = kettlePlan();
    plan::Measure weir = *plan.measure(kettleId("CP 3"));
    weir.fields["found_within"] = "300";
    plan = std::move(plan::PlanBuilder(plan).put(weir)).build();
    const RouteFigures quill = figuresOf(plan, "QUILL");
    const RouteDrift drift = routeDrift(plan, quill, kOurs, Metres(20));
    ASSERT_EQ(drift.legs.size(), quill.legs.size());
    for (std::size_t n = 0; n < drift.legs.size(); ++n) {
        const LegDrift& leg = drift.legs[n];
        const bool weirEndsIt = quill.legs[n].toLabel == "CP 3";
        EXPECT_EQ(leg.by == FoundBy::Plan, weirEndsIt);
        EXPECT_EQ(leg.foundWithin, Metres(weirEndsIt ? 300 : 20));
        EXPECT_EQ(leg.isLarger(), !weirEndsIt && leg.ellipse.major > Metres(20)) << quill.legs[n].toLabel;
    }
    EXPECT_NEAR(drift.longestSafeLeg.value(), 400, 1e-9);
}

TEST(Drift, TakesTheNavigatorsOwnFiguresFromThePlanBeforeOurs) {
    const plan::Plan plan = kettlePlan();
    const RouteFigures quill = figuresOf(plan, "QUILL");
    EXPECT_EQ(routeDrift(plan, quill, std::nullopt, kFoundWithin).errors, kOurs);
    const plan::Plan own = withNavigatorTyped(plan, "4 1.5").value();
    EXPECT_EQ(routeDrift(own, quill, std::nullopt, kFoundWithin).errors, (NavigatorErrors{0.04, Degrees(1.5)}));
    EXPECT_EQ(routeDrift(own, quill, kOurs, kFoundWithin).errors, kOurs) << "who asks for others gets them";
}

TEST(Drift, DoesNotTakeANumberThatIsNoneOfAPoint) {
    for (const char* typed : {"", "far", "-3", "0", "nan"}) {
        plan::Plan plan = kettlePlan();
        plan::Measure weir = *plan.measure(kettleId("CP 3"));
        weir.fields["found_within"] = typed;
        plan = std::move(plan::PlanBuilder(plan).put(weir)).build();
        for (const LegDrift& leg : routeDrift(plan, figuresOf(plan, "QUILL"), kOurs, kFoundWithin).legs) {
            EXPECT_EQ(leg.by, FoundBy::Asked) << typed;
        }
    }
}

TEST(Drift, OfALegWithoutLengthIsNothing) {
    Piece none = walked(0, 0);
    none.gridAzimuth = geodesy::planeAzimuth(at(0, 0), at(0, 0));
    EXPECT_EQ(driftOf({none}, kOurs).major, Metres(0));
}

}  // namespace
}  // namespace crosstick::movement
