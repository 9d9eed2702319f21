#include "core/movement/paper_figures.h"

#include <gtest/gtest.h>

#include "tests/movement/kettle_plan.h"
#include "tests/places.h"

namespace crosstick::movement {
namespace {

using geodesy::AngleUnit;

PaperRoute paperOf(const plan::Plan& plan, const char* name) {
    const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
    const auto figures = routeFigures(plan, *plan.routeNamed(name), &model.value(), nullptr);
    return paperFigures(plan, figures.value(), AngleUnit::Degrees).value();
}

TEST(PaperFigures, SumsAreThoseOfTheFiguresShown) {
    const PaperRoute quill = paperOf(kettlePlan(), "QUILL");
    std::int64_t metres = 0;
    std::int64_t paces = 0;
    for (const PaperLeg& leg : quill.legs) {
        for (const PaperPiece& piece : leg.pieces) {
            metres += piece.metres;
            paces += *piece.paces;
        }
        EXPECT_EQ(leg.metresSoFar, metres);
        EXPECT_EQ(*leg.pacesSoFar, paces);
    }
    EXPECT_EQ(quill.metres, metres);
    EXPECT_EQ(quill.metres, 5210);
    EXPECT_EQ(*quill.paces, 3846);
    EXPECT_EQ(quill.arrival, "0015");
    EXPECT_EQ(quill.time, "3:15");
}

TEST(PaperFigures, TheLadderCountsFromTheLastRoutePoint) {
    const PaperRoute quill = paperOf(kettlePlan(), "QUILL");
    ASSERT_EQ(quill.legs[2].crossings.size(), 1U);
    EXPECT_EQ(quill.legs[2].crossings[0].label, "PL BODKIN");
    EXPECT_EQ(quill.legs[2].crossings[0].metresFromLast, 140);
    EXPECT_NEAR(quill.legs[2].crossings[0].share, 0.142, 0.001);
    EXPECT_EQ(quill.legs[2].crossings[0].arrival, "2210");
}

TEST(PaperFigures, TiesAndLabelsComeFromTheMeasures) {
    const PaperRoute quill = paperOf(kettlePlan(), "QUILL");
    EXPECT_EQ(quill.name, "RTE QUILL");
    EXPECT_EQ(quill.startLabel, "SP 1");
    EXPECT_EQ(quill.startTie, "track bend at the wood's NE corner");
    EXPECT_EQ(quill.startTime, "2100");
    EXPECT_EQ(quill.legs[4].to, "CP 5");
    EXPECT_EQ(quill.legs[4].tie, "gully where it steepens, hear water");
    EXPECT_EQ(quill.onwardTo, "ORP SORREL");
}

TEST(PaperFigures, UnknownFiguresStayEmpty) {
    plan::Plan plan = kettlePlan();
    plan::Heading heading = plan.heading();
    heading.pace.reset();
    heading.rate.reset();
    plan = std::move(plan::PlanBuilder(plan).heading(heading)).build();
    const PaperRoute quill = paperOf(plan, "QUILL");
    EXPECT_FALSE(quill.paces);
    EXPECT_FALSE(quill.legs[0].climb);
    EXPECT_EQ(quill.time, "");
    EXPECT_EQ(quill.legs[0].arrival, "");
    EXPECT_EQ(quill.startTime, "2100");
}

TEST(PaperWords, TheAngleIsPrintedToHalfADegreeOrTenMils) {
    EXPECT_EQ(gmAngleText(Degrees(-10.898688), AngleUnit::Degrees), "11° W");
    EXPECT_EQ(gmAngleText(Degrees(-10.898688), AngleUnit::Mils), "190 mils W");
    EXPECT_EQ(gmAngleText(Degrees(10.7), AngleUnit::Degrees), "10.5° E");
    EXPECT_EQ(gmAngleText(Degrees(-0.2), AngleUnit::Degrees), "0°");
    EXPECT_EQ(gmRuleText(Degrees(-10.898688), AngleUnit::Degrees), "grid to magnetic: add 11");
    EXPECT_EQ(gmRuleText(Degrees(-10.898688), AngleUnit::Mils), "grid to magnetic: add 190");
    EXPECT_EQ(gmRuleText(Degrees(16), AngleUnit::Degrees), "grid to magnetic: subtract 16");
    EXPECT_EQ(gmRuleText(Degrees(0.1), AngleUnit::Degrees), "grid to magnetic: add nothing");
}

TEST(PaperWords, TimesOnTheMoveRoundHalvesUp) {
    EXPECT_EQ(timeText(Minutes(40.5)), "0:41");
    EXPECT_EQ(timeText(Minutes(59.49)), "0:59");
    EXPECT_EQ(timeText(Minutes(725)), "12:05");
    EXPECT_EQ(routeTitle("QUILL"), "RTE QUILL");
    EXPECT_EQ(routeTitle("RTE QUILL"), "RTE QUILL");
}

TEST(PaperFigures, ALegTellsWhatTheLeaderSaysAboutIt) {
    plan::Plan plan = kettlePlan();
    plan::Route route = *plan.routeNamed("QUILL");
    plan::LegNotes& leg = route.stops[3].leg;
    leg.halt = Minutes(10);
    leg.catching = "road beyond the weir";
    leg.rally = kettleId("CP 2");
    leg.inContact = "break east";
    leg.ifSeparated = "wait 30 min at CP 2";
    leg.remark = "quiet";
    plan = std::move(plan::PlanBuilder(plan).put(route)).build();
    const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
    const auto figures = routeFigures(plan, *plan.routeNamed("QUILL"), &model.value(), nullptr);
    const PaperRoute paper = *paperFigures(plan, *figures, geodesy::AngleUnit::Degrees);
    EXPECT_EQ(paper.legs[2].notes,
              (std::vector<std::string>{"halt 10 min", "catch: road beyond the weir", "rally: CP 2",
                                        "in contact: break east", "if separated: wait 30 min at CP 2", "quiet"}));
    EXPECT_TRUE(paper.legs[1].notes.empty());
    EXPECT_FALSE(paper.legs[2].steepest);
}

// By hand: 10 m beside, the road is within 20 m for another 17.3 m at each of its ends: 182.7 to 757.3.
TEST(PaperFigures, ALegTellsBesideWhatItRuns) {
    const PaperRoute paper = paperOf(kettlePlanBesideOak(), "QUILL");
    EXPECT_EQ(paper.legs[2].notes, std::vector<std::string>{"along MSR OAK 570 m from 180 m after CP 2"});
    EXPECT_TRUE(paper.legs[3].notes.empty());
}

}  // namespace
}  // namespace crosstick::movement
