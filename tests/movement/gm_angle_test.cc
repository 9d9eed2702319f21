// Model and sheet side by side.
#include "core/movement/gm_angle.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/movement/paper_figures.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

using geodesy::AngleUnit;

GmAngle angleOf(Degrees modelled, std::optional<Degrees> printed) {
    GmAngle gm{};
    gm.convergence = Degrees(1.4);
    gm.model = geodesy::Declination{modelled + gm.convergence, Degrees(0.3), Nanotesla(20000)};
    gm.angle = modelled;
    gm.printed = printed;
    return gm;
}

TEST(GmAngle, WarnsOnlyOverHalfADegree) {
    EXPECT_FALSE(disagreement(angleOf(Degrees(-10.75), Degrees(-11.25))));
    EXPECT_FALSE(disagreement(angleOf(Degrees(-10.75), Degrees(-10.5))));
    EXPECT_NEAR(disagreement(angleOf(Degrees(-10.75), Degrees(-11.5))).value().value(), -0.75, 1e-12);
    EXPECT_NEAR(disagreement(angleOf(Degrees(-10.75), Degrees(10.75))).value().value(), 21.5, 1e-12);
    EXPECT_FALSE(disagreement(angleOf(Degrees(-10.75), std::nullopt)));
    GmAngle unmodelled = angleOf(Degrees(0), Degrees(5));
    unmodelled.model.reset();
    EXPECT_FALSE(disagreement(unmodelled));
    EXPECT_FALSE(modelledAngle(unmodelled));
}

TEST(GmAngle, WarningSaysBySizeWhatToCheck) {
    const GmAngle gm = angleOf(Degrees(-10.75), Degrees(-11.5));
    EXPECT_EQ(gmCautionText(gm, AngleUnit::Degrees),
              "Sheet and model differ by 0.8°. Check the sheet's diagram and its date.");
    EXPECT_THAT(gmCautionText(gm, AngleUnit::Mils), testing::HasSubstr("by 13 mils."));
    EXPECT_EQ(gmCautionText(angleOf(Degrees(-10.75), Degrees(-11)), AngleUnit::Degrees), "");
}

// A sheet printed for 2005 with 0.2 degree a year: after 22 years its own change has to be reckoned with.
TEST(GmAngle, BringsTheSheetsAngleToTheDayBeforeItCompares) {
    const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
    plan::Plan plan = kettlePlan();
    plan::Sheet sheet = *plan.sheets().front();
    sheet.declination = plan::PrintedDeclination{Degrees(-15.3), std::chrono::year(2005) / 3 / 13, Degrees(0.2)};
    plan = std::move(plan::PlanBuilder(plan).put(sheet)).build();
    const auto grid = WorkGrid::of(plan).value();
    const auto gm = gmAngleAt(plan, grid, at(655000, 5100500), &model.value(), nullptr).value();
    EXPECT_NEAR(gm.printed->value(), -15.3 + 22 * 0.2, 0.001);
    EXPECT_FALSE(disagreement(gm));
    EXPECT_NEAR(modelledAngle(gm)->value(), gm.angle.value(), 1e-12);
}

TEST(GmAngle, OfThePlanIsThatOfTheMiddleOfItsWork) {
    plan::Plan plan = plainRoute({at(655000, 5100000), at(657000, 5102000)});
    const auto grid = WorkGrid::of(plan).value();
    EXPECT_EQ(middleOfWork(plan, grid), at(656000, 5101000));
    plan::Sheet sheet;
    sheet.id = kettleId("sheet");
    sheet.crs = plan.planeCrs();
    sheet.columns = 4000;
    sheet.rows = 2000;
    sheet.placement = {at(650000, 5105000), 2, 0, 0, -2};
    plan = std::move(plan::PlanBuilder(plan).put(sheet)).build();
    EXPECT_EQ(middleOfWork(plan, grid), at(654000, 5103000));
    plan = std::move(plan::PlanBuilder(plan).registration(
                         plan::Registration{at(652000, 5100000), at(653000, 5101000), {}, {}}))
               .build();
    EXPECT_EQ(middleOfWork(plan, grid), at(652500, 5100500));
    EXPECT_FALSE(middleOfWork(plan::Plan(), grid));
}

}  // namespace
}  // namespace crosstick::movement
