#include "ui/tools/registration_tool.h"

#include <gtest/gtest.h>

#include "core/film/faults.h"

namespace crosstick::tools {
namespace {

using Kind = Event::Kind;

geodesy::PlanePoint at(double east, double north) {
    return {Metres(east), Metres(north)};
}

plan::Registration window() {
    return {
        at(652500, 5096500), at(659500, 5105500), {at(653000, 5097000), at(658000, 5097000), at(653000, 5104000)}, {}};
}

/// A hand over a plan whose plane lies 100 m beside the printed grid, as on another datum.
class TicksAndWindow : public ::testing::Test {
  protected:
    static constexpr double kBeside = 100;
    plan::Plan plan = [] {
        plan::PlanBuilder builder{plan::Plan{}};
        builder.registration(window());
        return std::move(builder).build();
    }();
    RegistrationTool tool{{[](geodesy::PlanePoint p) { return moved(p, kBeside); },
                           [](geodesy::PlanePoint p) { return moved(p, -kBeside); }}};
    std::vector<std::string> captions;
    std::optional<Error> refused;
    bool done = false;
    plan::FilmId film;  ///< that is worked on

    static Result<geodesy::PlanePoint> moved(geodesy::PlanePoint p, double by) {
        return geodesy::PlanePoint{p.easting + Metres(by), p.northing};
    }
    /// @param onGrid  where the hand is on the printed grid
    void tell(Kind kind, geodesy::PlanePoint onGrid, bool held = false, bool second = false) {
        const Ground ground{plan, film, {}, {}, Metres(20), [] { return Uuid{}; }};
        const Reply reply = tool.take({kind, *moved(onGrid, -kBeside), held, second}, ground);
        if (reply.commit) {
            plan = reply.commit->plan;
            captions.push_back(reply.commit->caption);
        }
        refused = reply.refused;
        done = reply.done;
    }
    void drag(geodesy::PlanePoint from, geodesy::PlanePoint to) {
        tell(Kind::Press, from, true);
        tell(Kind::Move, to, true);
        tell(Kind::Release, to);
    }
    [[nodiscard]] plan::Registration now() const { return plan.registration().value(); }
};

TEST_F(TicksAndWindow, ATickGoesToTheCrossingNearestToTheHand) {
    drag(at(658008, 5096995), at(657100, 5098120));
    EXPECT_EQ(now().ticks[1], at(657000, 5098000));
    EXPECT_EQ(captions, std::vector<std::string>{"move a tick"});
}

TEST_F(TicksAndWindow, AnEdgeGoesByTenthsOfTheGridAlone) {
    drag(at(659495, 5101000), at(660730, 5100000));
    EXPECT_EQ(now().northEast, at(660700, 5105500));
    EXPECT_EQ(now().southWest, window().southWest);
    EXPECT_EQ(now().ticks, window().ticks);
    EXPECT_EQ(captions, std::vector<std::string>{"move the window"});
}

TEST_F(TicksAndWindow, ACornerTakesBothItsEdges) {
    drag(at(652505, 5096505), at(652105, 5096305));
    EXPECT_EQ(now().southWest, at(652100, 5096300));
    EXPECT_EQ(now().northEast, window().northEast);
}

TEST_F(TicksAndWindow, WithTheSecondKeyATickComesAndGoes) {
    tell(Kind::Press, at(658100, 5104100), true, true);
    ASSERT_EQ(now().ticks.size(), 4U);
    EXPECT_EQ(now().ticks.back(), at(658000, 5104000));
    tell(Kind::Press, at(658000, 5104000), true, true);
    EXPECT_EQ(now(), window());
    EXPECT_EQ(captions, (std::vector<std::string>{"set a tick", "take a tick off"}));
}

TEST_F(TicksAndWindow, WhatNoFilmCouldHoldToIsRefusedAndNothingMoves) {
    drag(at(658000, 5097000), at(653100, 5097000));
    ASSERT_TRUE(refused);
    EXPECT_EQ(refused->fault, film::kCrossingTaken);
    EXPECT_EQ(now(), window());
    EXPECT_TRUE(captions.empty());
    tell(Kind::Move, at(655000, 5100000));
    EXPECT_EQ(tool.wet().line.front(), *moved(window().southWest, -kBeside)) << "what holds is shown again";
}

TEST_F(TicksAndWindow, APressWithoutADragChangesNothing) {
    drag(at(658000, 5097000), at(658004, 5097003));
    EXPECT_TRUE(captions.empty());
}

TEST_F(TicksAndWindow, CancelLeavesTheDragFirstAndThenTheTool) {
    tell(Kind::Press, at(658000, 5097000), true);
    tell(Kind::Move, at(657000, 5098000), true);
    EXPECT_TRUE(tool.isBusy());
    tell(Kind::Cancel, at(657000, 5098000));
    EXPECT_FALSE(done);
    tell(Kind::Release, at(657000, 5098000));
    EXPECT_EQ(now(), window());
    tell(Kind::Cancel, at(657000, 5098000));
    EXPECT_TRUE(done);
}

TEST_F(TicksAndWindow, ShowsTheWindowAndAHandleOnEveryTickEdgeAndCorner) {
    tell(Kind::Move, at(655000, 5100000));
    const Wet wet = tool.wet();
    EXPECT_EQ(wet.line.size(), 4U);
    EXPECT_TRUE(wet.closes);
    EXPECT_EQ(wet.marks.size(), 4U + 4U + 3U);
    EXPECT_EQ(wet.belongs, Wet::Belongs::ToThePlan);
}

/// 1:5,000, where ticks stand on the 100 m grid.
class TicksOfAnInset : public TicksAndWindow {
  protected:
    void SetUp() override {
        plan::Film inset;
        inset.id = film = Uuid{{5}};
        inset.name = "WORKS";
        inset.scale = Scale{5000};
        inset.inset = plan::Inset{Uuid{{4}}, place(), {}};
        plan::PlanBuilder builder(plan);
        builder.put(std::move(inset));
        plan = std::move(builder).build();
    }
    static plan::Registration place() {
        return {at(656800, 5102700),
                at(657420, 5103350),
                {at(656900, 5102800), at(657300, 5102800), at(656900, 5103300)},
                {}};
    }
    [[nodiscard]] plan::Registration ownNow() const { return plan.film(film)->inset->place; }
};

TEST_F(TicksOfAnInset, GoFromCrossingToCrossingOfTheHundredMetreGridAndThePlansStay) {
    drag(at(657302, 5102801), at(657215, 5102890));
    EXPECT_EQ(ownNow().ticks[1], at(657200, 5102900));
    EXPECT_EQ(tool.wet().belongs, Wet::Belongs::ToTheFilm);
    EXPECT_EQ(now(), window());
    tell(Kind::Press, at(657330, 5103280), true, true);
    ASSERT_EQ(ownNow().ticks.size(), 4U);
    EXPECT_EQ(ownNow().ticks[3], at(657300, 5103300));
    tell(Kind::Press, at(656900, 5102800), true, true);
    EXPECT_EQ(ownNow().ticks.size(), 3U);
    EXPECT_EQ(now(), window());
}

TEST_F(TicksOfAnInset, ItsEdgeGoesByTensOfMetresAsFarAsThePaperHoldsIt) {
    drag(at(657420, 5103000), at(657634, 5103000));
    EXPECT_EQ(ownNow().northEast, at(657630, 5103350));
    EXPECT_EQ(plan.film(film)->scale, Scale{5000});
    const plan::Registration before = ownNow();
    drag(at(657630, 5103000), at(659000, 5103000));
    ASSERT_TRUE(refused.has_value()) << "2200 m at 1:5,000 are 440 mm";
    EXPECT_EQ(refused->fault, film::kInsetTooLarge);
    EXPECT_EQ(ownNow(), before);
}

}  // namespace
}  // namespace crosstick::tools
