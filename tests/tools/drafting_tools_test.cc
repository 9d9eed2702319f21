// Freehand, wiping, ending a line on another, ruler, fixes: by lists of events.
#include <cmath>

#include "core/drafting/faults.h"
#include "core/geodesy/plane_angles.h"
#include "tests/tools/at_the_table.h"
#include "ui/tools/fix_tool.h"
#include "ui/tools/freehand_tool.h"
#include "ui/tools/meeting_tool.h"
#include "ui/tools/ruler_tool.h"
#include "ui/tools/wipe_tool.h"

namespace crosstick::tools {
namespace {

class Drafting : public AtTheTable {
  protected:
    plan::Points points(const plan::ItemId& item) { return plan.measure(item)->points; }
    /// Along an arc, the button up.
    void along(Tool& tool) {
        for (int n = 0; n <= 200; ++n) {
            tell(tool, {Kind::Move, at(n * 5, 300 * std::sin(n * 3.14159265 / 200))});
        }
    }
};

TEST_F(Drafting, FreehandIsClickTraceClickAndTellsItsPoints) {
    FreehandTool tool(*measures::find("free-line"), Metres(5));
    click(tool, 0, 0);
    EXPECT_TRUE(tool.isBusy());
    along(tool);
    EXPECT_GT(tool.wet().line.size(), 150U);
    click(tool, 1000, 0);
    ASSERT_EQ(captions, (std::vector<std::string>{"draw freehand"}));
    const plan::Points kept = points(selection.front());
    EXPECT_LT(kept.size(), 20U);
    EXPECT_EQ(kept.front(), at(0, 0));
    EXPECT_EQ(kept.back(), at(1000, 0));
    for (int n = 0; n <= 200; ++n) {
        const auto place = at(n * 5, 300 * std::sin(n * 3.14159265 / 200));
        EXPECT_LE(geodesy::nearestOn(kept, geodesy::Ends::Open, place)->away, Metres(6));
    }
    EXPECT_NE(said.find(std::to_string(kept.size()) + " kept"), std::string::npos) << said;
    EXPECT_TRUE(done);
}

TEST_F(Drafting, FreehandByADragEndsWhereTheButtonIsLetGo) {
    FreehandTool tool(*measures::find("free-line"), Metres(5));
    tell(tool, {Kind::Press, at(0, 0), true});
    for (int n = 0; n <= 50; ++n) {
        tell(tool, {Kind::Move, at(n * 4, n), true});
    }
    tell(tool, {Kind::Release, at(200, 50)});
    EXPECT_EQ(points(selection.front()), (plan::Points{at(0, 0), at(200, 50)}));
}

TEST_F(Drafting, FreehandTwiceOnASpotDrawsNothingAndMayBeNamedOnTheWay) {
    FreehandTool tool(*measures::find("free-line"), Metres(5));
    click(tool, 0, 0);
    tell(tool, {Kind::Again, at(0, 0), true});
    EXPECT_TRUE(captions.empty());
    click(tool, 0, 0);
    along(tool);
    const auto reply = tool.endAs(*measures::find("phase-line"), ground());
    ASSERT_TRUE(reply && reply->commit);
    EXPECT_EQ(reply->commit->plan.measure(**reply->select)->kind, "phase-line");
    EXPECT_FALSE(tool.endAs(*measures::find("phase-line"), ground())) << "nothing is in hand any more";
}

TEST_F(Drafting, APartOfALineIsWipedBetweenTwoClicks) {
    const auto line = put("phase-line", {at(0, 0), at(1000, 0)});
    WipePartTool tool;
    click(tool, 600, 3);
    EXPECT_TRUE(tool.isBusy());
    tell(tool, {Kind::Move, at(800, -4)});
    ASSERT_EQ(tool.wet().others.size(), 1U);
    click(tool, 800, -4);
    EXPECT_EQ(points(line), (plan::Points{at(0, 0), at(600, 0)}));
    EXPECT_EQ(plan.measures().size(), 2U);
    EXPECT_EQ(captions, (std::vector<std::string>{"wipe a part of a line"}));
    click(tool, 300, 0);
    click(tool, 4, 4);
    EXPECT_EQ(points(line), (plan::Points{at(300, 0), at(600, 0)})) << "close to its end means the end";
}

TEST_F(Drafting, WhatHasNoPartsIsSaidAndOtherFilmsAreSafe) {
    put("checkpoint", {at(0, 0)}, "1");
    WipePartTool tool;
    click(tool, 0, 0);
    EXPECT_NE(said.find("CP 1"), std::string::npos);
    put("phase-line", {at(0, 500), at(1000, 500)});
    const plan::FilmId other = ids.next();
    plan = plan::withFilm(plan, other, "LOOK", {});
    film = other;
    click(tool, 500, 500);
    EXPECT_FALSE(tool.isBusy());
    EXPECT_NE(said.find("working film"), std::string::npos);
}

TEST_F(Drafting, ARegionIsToldBeforeItIsWiped) {
    put("checkpoint", {at(50, 50)}, "1");
    put("phase-line", {at(-500, 50), at(500, 50)});
    std::vector<drafting::Wiping> asked;
    WipeRegionTool tool([&](drafting::Wiping wiping) { asked.push_back(std::move(wiping)); });
    click(tool, 0, 0);
    click(tool, 100, 0);
    tell(tool, {Kind::Finish, at(100, 0)});
    EXPECT_TRUE(asked.empty()) << "two corners enclose nothing";
    click(tool, 100, 100);
    click(tool, 0, 100);
    tell(tool, {Kind::Again, at(0, 100), true});
    ASSERT_EQ(asked.size(), 1U);
    EXPECT_EQ(asked[0].whole, 1U);
    EXPECT_EQ(asked[0].partly, 1U);
    EXPECT_EQ(plan.measures().size(), 2U) << "nothing is done yet";
    EXPECT_TRUE(tool.isBusy());
    tell(tool, {Kind::Finish, at(0, 100)});
    EXPECT_EQ(asked.size(), 1U) << "asked once";
    drag(tool, at(-10, -10), at(60, 60));
    ASSERT_EQ(asked.size(), 2U) << "a box by one drag, in place of the region before";
    EXPECT_EQ(tool.wet().line.size(), 5U);
}

TEST_F(Drafting, ALineIsEndedOnAnotherAndOneThatPassesByIsRefused) {
    const auto line = put("phase-line", {at(0, 0), at(400, 100)});
    put("boundary", {at(1000, -500), at(1000, 500)});
    MeetingTool tool;
    click(tool, 390, 97);
    tell(tool, {Kind::Move, at(1000, 0)});
    EXPECT_EQ(tool.wet().others.size(), 1U);
    click(tool, 1000, 0);
    EXPECT_EQ(points(line), (plan::Points{at(0, 0), at(1000, 250)}));
    EXPECT_TRUE(done);
    const auto back = put("phase-line", {at(0, -900), at(-100, -900)});
    click(tool, -95, -900);
    click(tool, 1000, 0);
    ASSERT_TRUE(refused);
    EXPECT_EQ(refused->fault, drafting::kNeverMeets);
    EXPECT_EQ(points(back).size(), 2U);
    click(tool, 700, 700);
    EXPECT_NE(said.find("is to end on"), std::string::npos);
}

TEST_F(Drafting, TheRulerReadsThreeNorthsAndLeavesNothing) {
    geodesy::AngleUnit unit = geodesy::AngleUnit::Degrees;
    RulerTool tool(
        {[](geodesy::PlanePoint from, geodesy::PlanePoint to) -> std::optional<Reading> {
             const Degrees grid = geodesy::planeAzimuth(from, to);
             const Metres map = geodesy::planeDistance(from, to);
             return Reading{grid, fullCircle(grid - Degrees(11)), fullCircle(grid + Degrees(2)), map, map * 1.0004};
         },
         [&unit] { return unit; }, Scale{25000}});
    click(tool, 0, 0);
    tell(tool, {Kind::Move, at(0, 1000)});
    ASSERT_TRUE(tool.wet().told);
    EXPECT_EQ(tool.wet().told->first, "349\u00b0 M   1000 m");
    EXPECT_EQ(tool.wet().told->second, "grid 000\u00b0 \u00b7 true 002\u00b0 \u00b7 back 169\u00b0 M");
    EXPECT_EQ(tool.wet().told->third, "map 40.0 mm \u00b7 ground 1000 m");
    ASSERT_TRUE(tool.wet().rose);
    EXPECT_EQ(tool.wet().rose->toMagnetic, Degrees(11));
    click(tool, 0, 1000);
    tell(tool, {Kind::Move, at(500, 1000)});
    EXPECT_EQ(tool.wet().told->third, "map 20.0 mm \u00b7 all 60.0 mm, 1501 m \u00b7 bend 090\u00b0");
    unit = geodesy::AngleUnit::Mils;
    tell(tool, {Kind::Move, at(500, 1000)});
    EXPECT_EQ(tool.wet().told->first, "1400 mils M   500 m");
    tell(tool, {Kind::Cancel, {}});
    EXPECT_TRUE(plan.measures().isEmpty());
    EXPECT_FALSE(done);
    tell(tool, {Kind::Cancel, {}});
    EXPECT_TRUE(done);
}

TEST_F(Drafting, EnterKeepsTheRulersLine) {
    RulerTool tool(
        {[](auto, auto) { return std::optional<Reading>(); }, [] { return geodesy::AngleUnit::Degrees; }, Scale{}});
    click(tool, 0, 0);
    click(tool, 300, 0);
    tell(tool, {Kind::Again, at(300, 0), true});
    tell(tool, {Kind::Finish, at(900, 0)});
    EXPECT_EQ(points(selection.front()), (plan::Points{at(0, 0), at(300, 0)}));
}

class Fixes : public Drafting {
  protected:
    std::vector<FixTool::Then> asked;
    GridWays ways{[](geodesy::PlanePoint p) -> Result<geodesy::PlanePoint> { return p; },
                  [](geodesy::PlanePoint p) -> Result<geodesy::PlanePoint> { return p; }};
    FixTool tool{"intersection", *measures::find("waypoint"), ways,
                 [this](geodesy::PlanePoint, FixTool::Then then) { asked.push_back(std::move(then)); }};

    void sight(double east, double north, double azimuth) {
        click(tool, east, north);
        asked.back()(Degrees(azimuth));
        tell(tool, {Kind::Move, at(east, north)});
    }
};

TEST_F(Fixes, TwoAzimuthsMakeAPoint) {
    sight(0, 0, 45);
    EXPECT_FALSE(tool.wet().told);
    sight(1000, 0, 315);
    ASSERT_TRUE(tool.wet().told);
    EXPECT_EQ(tool.wet().others.size(), 2U);
    tell(tool, {Kind::Finish, {}});
    EXPECT_NEAR((points(selection.front())[0].easting - at(500, 500).easting).value(), 0, 1e-6);
    EXPECT_EQ(plan.measure(selection.front())->kind, "waypoint");
    EXPECT_NE(said.find("90"), std::string::npos) << said;
    EXPECT_TRUE(done);
}

TEST_F(Fixes, ThreeTellTheTriangleOfError) {
    sight(0, 0, 45);
    sight(1000, 0, 315);
    sight(500, 1500, 182);
    EXPECT_EQ(tool.wet().told->first, "triangle of error 70 m");
    click(tool, 900, 900);
    EXPECT_NE(said.find("Three"), std::string::npos);
    tell(tool, {Kind::TakeBack, {}});
    EXPECT_EQ(tool.wet().told->first, "two lines: nothing checks them");
}

TEST_F(Fixes, AnAzimuthThatPartsIsRefusedAndForgotten) {
    sight(0, 0, 315);
    click(tool, 1000, 0);
    asked.back()(Degrees(45));
    tell(tool, {Kind::Move, at(1000, 0)});
    ASSERT_TRUE(refused);
    EXPECT_EQ(refused->fault, drafting::kSightsPart);
    EXPECT_EQ(tool.wet().others.size(), 1U);
    tell(tool, {Kind::Finish, {}});
    EXPECT_TRUE(captions.empty());
}

TEST_F(Fixes, ALateAnswerHarmsNobody) {
    auto gone = std::make_unique<FixTool>(
        "resection", *measures::find("waypoint"), ways,
        [this](geodesy::PlanePoint, FixTool::Then then) { asked.push_back(std::move(then)); });
    click(*gone, 0, 0);
    gone.reset();
    asked.back()(Degrees(12));
}

}  // namespace
}  // namespace crosstick::tools
