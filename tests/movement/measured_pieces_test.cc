#include "core/movement/measured_pieces.h"

#include <iostream>
#include <random>

#include <gtest/gtest.h>

#include "core/movement/route_figures.h"
#include "core/plan/edits.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

constexpr std::uint32_t kSeed = 20270318;

const geodesy::MagneticModel& model() {
    static const geodesy::MagneticModel opened = *geodesy::MagneticModel::open(places::share() / "magnetic");
    return opened;
}

/// Rises to the north-east and counts how often it was asked.
class Counting final : public sheets::HeightSource {
  public:
    std::optional<Metres> heightAt(geodesy::PlanePoint p) const override {
        ++asked;
        return Metres((p.easting.value() + p.northing.value()) / 40);
    }
    mutable int asked = 0;
};

plan::Plan longRoute(std::size_t vertices) {
    std::vector<geodesy::PlanePoint> points;
    for (std::size_t n = 0; n < vertices; ++n) {
        const double along = static_cast<double>(n);
        points.push_back(at(652000 + 40 * along, 5098000 + 900 * std::sin(along / 9)));
    }
    return plainRoute(points);
}

const plan::Route& routeOf(const plan::Plan& plan) {
    return *plan.routes().front();
}

TEST(KeptPieces, OneMovedVertexMeasuresTheTwoLegsBesideItAndNoMore) {
    plan::Plan plan = longRoute(501);
    const auto grid = WorkGrid::of(plan).value();
    KeptPieces kept;
    ASSERT_TRUE(routeFigures(plan, routeOf(plan), grid, &model(), nullptr, kept));
    EXPECT_EQ(kept.fresh(), 500U);
    ASSERT_TRUE(routeFigures(plan, routeOf(plan), grid, &model(), nullptr, kept));
    EXPECT_EQ(kept.fresh(), 0U);
    plan = plan::withPoint(plan, routeOf(plan).id, 250, at(660000, 5099000));
    ASSERT_TRUE(routeFigures(plan, routeOf(plan), grid, &model(), nullptr, kept));
    EXPECT_EQ(kept.fresh(), 2U);
    plan = plan::withPoint(plan, routeOf(plan).id, 0, at(651000, 5099000));
    ASSERT_TRUE(routeFigures(plan, routeOf(plan), grid, &model(), nullptr, kept));
    EXPECT_EQ(kept.fresh(), 1U) << "the end of a route has one leg";
}

TEST(KeptPieces, AVertexPutInMeasuresTwoAndOneTakenOutMeasuresOne) {
    plan::Plan plan = longRoute(60);
    const auto grid = WorkGrid::of(plan).value();
    KeptPieces kept;
    ASSERT_TRUE(kept.measure(routeOf(plan), grid, nullptr));
    plan = plan::withPointBefore(plan, routeOf(plan).id, 30, at(653190, 5098100));
    ASSERT_TRUE(kept.measure(routeOf(plan), grid, nullptr));
    EXPECT_EQ(kept.fresh(), 2U);
    plan = plan::withoutPoint(plan, routeOf(plan).id, 10);
    ASSERT_TRUE(kept.measure(routeOf(plan), grid, nullptr));
    EXPECT_EQ(kept.fresh(), 1U);
}

TEST(KeptPieces, HeightsOfWhatStandsStillAreNotAskedForAgain) {
    plan::Plan plan = longRoute(100);
    const auto grid = WorkGrid::of(plan).value();
    const Counting heights;
    KeptPieces kept;
    ASSERT_TRUE(kept.measure(routeOf(plan), grid, &heights));
    const int whole = heights.asked;
    ASSERT_TRUE(kept.measure(routeOf(plan), grid, &heights));
    EXPECT_EQ(heights.asked, whole);
    kept.forget();
    ASSERT_TRUE(kept.measure(routeOf(plan), grid, &heights));
    EXPECT_EQ(heights.asked, 2 * whole);
}

// Law: whatever is done to a route, kept pieces give the figures that measuring everything anew gives.
TEST(KeptPieces, GiveTheSameFiguresAsMeasuringEverythingAnew) {
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    std::uniform_real_distribution<double> away(-2000, 2000);
    plan::Plan plan = longRoute(12);
    const plan::ItemId id = routeOf(plan).id;
    const auto grid = WorkGrid::of(plan).value();
    const Counting heights;
    KeptPieces kept;
    for (int round = 0; round < 200; ++round) {
        const std::size_t at_ = random() % routeOf(plan).vertices.size();
        const auto to = at(655000 + away(random), 5099000 + away(random));
        switch (random() % 4) {
            case 0:
                plan = plan::withPointBefore(plan, id, at_, to);
                break;
            case 1:
                plan = plan::withoutPoint(plan, id, at_);
                break;
            case 2:
                plan = plan::movedBy(plan, id, Metres(away(random)), Metres(0));
                break;
            default:
                plan = plan::withPoint(plan, id, at_, to);
        }
        const auto by = routeFigures(plan, routeOf(plan), grid, &model(), &heights, kept);
        const auto anew = routeFigures(plan, routeOf(plan), grid, &model(), &heights);
        ASSERT_TRUE(by && anew);
        EXPECT_EQ(*by, *anew) << "round " << round;
    }
}

}  // namespace
}  // namespace crosstick::movement
