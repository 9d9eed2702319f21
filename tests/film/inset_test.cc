#include "core/film/inset.h"

#include <algorithm>
#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "core/film/faults.h"
#include "core/film/page.h"
#include "core/film/registration.h"
#include "core/film/set_layout.h"
#include "core/plan/edits.h"
#include "tests/film/printed_plan.h"

namespace crosstick::film {
namespace {

using movement::at;
using movement::kettleId;

/// Round OBJ COBNUT, which lies at 656880 to 657260, 5102860 to 5103200.
InsetPlace worksPlace(const plan::Plan& plan) {
    return *proposeInset(plan, *plan.filmNamed("MOVE"), at(656800, 5103350), at(657420, 5102700));
}

plan::Plan withWorks(const plan::Plan& plan) {
    return withInset(plan, *plan.filmNamed("MOVE"), worksPlace(plan), kettleId("works"), "WORKS");
}

// 620 x 650 m at 1:2,500 are 248 x 260 mm, at 1:5,000 124 x 130 mm: the first that goes onto A4 beside its furniture.
TEST(Inset, TakesTheLargestScaleThatFitsThePaper) {
    const plan::Plan plan = printedPlan();
    const InsetPlace place = worksPlace(plan);
    EXPECT_EQ(place.scale, Scale{5000});
    EXPECT_EQ(place.registration.southWest, at(656800, 5102700));
    EXPECT_EQ(place.registration.northEast, at(657420, 5103350));
    const auto scaleOf = [&](double wide, double high) {
        return insetScale(plan, *plan.filmNamed("MOVE"), at(655000, 5100000), at(655000 + wide, 5100000 + high));
    };
    EXPECT_EQ(scaleOf(180, 220), Scale{1000});
    EXPECT_EQ(scaleOf(2700, 1400), Scale{10000});
    EXPECT_EQ(scaleOf(5000, 4500), Scale{20000}) << "on A3";
    EXPECT_EQ(scaleOf(9000, 9000), std::nullopt);
    EXPECT_EQ(proposeInset(plan, *plan.filmNamed("MOVE"), at(651000, 5096000), at(660000, 5105000)).error().fault,
              kInsetTooLarge);
}

TEST(Inset, ItsTicksStandOnCrossingsOfTheHundredMetreGridClearOfItsFrame) {
    const unsigned seed = 20270315;
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> east(653000, 658000);
    std::uniform_real_distribution<double> north(5097000, 5104000);
    std::uniform_real_distribution<double> size(5, 3000);
    const plan::Plan plan = printedPlan();
    for (int round = 0; round < 60; ++round) {
        const geodesy::PlanePoint a = at(east(random), north(random));
        const geodesy::PlanePoint b = {a.easting + Metres(size(random)), a.northing - Metres(size(random))};
        const auto place = proposeInset(plan, *plan.filmNamed("MOVE"), a, b);
        ASSERT_TRUE(place.has_value()) << place.error().fault.name;
        EXPECT_LT(place->scale, Scale{25000});
        EXPECT_EQ(place->registration.ticks.size(), 4U);
        const Metres inset = onGround(kTickInset, place->scale);
        for (const geodesy::PlanePoint tick : place->registration.ticks) {
            EXPECT_EQ(std::fmod(tick.easting.value(), 100), 0);
            EXPECT_EQ(std::fmod(tick.northing.value(), 100), 0);
            EXPECT_GE(tick.easting, place->registration.southWest.easting + inset);
            EXPECT_LE(tick.northing, place->registration.northEast.northing - inset);
        }
        EXPECT_LE(place->registration.southWest.easting, a.easting) << "all of the part is in it";
        EXPECT_GE(place->registration.northEast.easting, b.easting);
        EXPECT_LE(place->registration.southWest.northing, b.northing);
    }
}

// 600 m east and 500 m north at 1:5,000 are 120 mm and 100 mm.
TEST(Inset, ItsFrameHasItsOwnWindowAndScale) {
    const plan::Plan plan = withWorks(printedPlan());
    const Frame frame = *Frame::of(plan, *plan.filmNamed("WORKS"));
    EXPECT_EQ(frame.scale(), Scale{5000});
    EXPECT_NEAR(frame.window().width(), 124, 1e-9);
    EXPECT_NEAR(frame.window().height(), 130, 1e-9);
    const drawing::Point p = frame.onFilm(at(657400, 5102850));
    EXPECT_NEAR(p.x, 120, 1e-6);
    EXPECT_NEAR(p.y, 100, 1e-6);
    EXPECT_FALSE(sharesRegistration(plan, *plan.filmNamed("WORKS")));
    plan::PlanBuilder bare(plan);
    bare.registration(std::nullopt);
    const plan::Plan without = std::move(bare).build();
    EXPECT_NEAR(Frame::of(without, *without.filmNamed("WORKS"))->window().width(), 124, 1e-9)
        << "also where the plan has no window";
}

TEST(Inset, ShowsTheParentsThingsThatTouchItAndNoOthers) {
    const plan::Plan plan = withWorks(printedPlan());
    const plan::Film& works = *plan.filmNamed("WORKS");
    EXPECT_TRUE(plan::isShownOn(works, kettleId("OBJ COBNUT")));
    EXPECT_FALSE(plan::isShownOn(works, kettleId("AA HASSOCK")));
    EXPECT_FALSE(plan::isShownOn(works, kettleId("CP 1")));
    EXPECT_EQ(works.phases, plan.filmNamed("MOVE")->phases);
    const plan::Plan moved = movedInset(
        plan, works.id, *proposeInset(plan, *plan.filmNamed("MOVE"), at(653700, 5097400), at(654400, 5098200)));
    EXPECT_TRUE(plan::isShownOn(*moved.filmNamed("WORKS"), kettleId("AA HASSOCK")));
    EXPECT_TRUE(plan::isShownOn(*moved.filmNamed("WORKS"), kettleId("OBJ COBNUT"))) << "nothing is taken off";
}

// An area that holds all of the inset, and a line that only passes through it, touch it.
TEST(Inset, WhatSurroundsItOrPassesThroughTouchesIt) {
    plan::Plan plan = printedPlan();
    plan::Measure round;
    round.id = kettleId("round");
    round.kind = "area-of-operations";
    round.points = {at(656000, 5102000), at(658500, 5102000), at(658500, 5104000), at(656000, 5104000)};
    plan::Measure through;
    through.id = kettleId("through");
    through.kind = "phase-line";
    through.points = {at(655000, 5103000), at(658500, 5103100)};
    const plan::FilmId move = plan.filmNamed("MOVE")->id;
    plan = withWorks(plan::withMeasure(plan::withMeasure(plan, round, move), through, move));
    EXPECT_TRUE(plan::isShownOn(*plan.filmNamed("WORKS"), round.id));
    EXPECT_TRUE(plan::isShownOn(*plan.filmNamed("WORKS"), through.id));
}

TEST(Inset, ItsPageIsLaidOutAtItsScaleWithItsOwnTicks) {
    const plan::Plan plan = withWorks(printedPlan());
    const plan::FilmPtr film = plan.filmNamed("WORKS");
    const Frame frame = *Frame::of(plan, *film);
    const auto page = layOut({plan, *film, frame});
    ASSERT_TRUE(page.has_value()) << page.error().fault.name;
    EXPECT_EQ(page->paper, (Paper{PaperMm(210), PaperMm(297)}));
    ASSERT_EQ(page->ticks.size(), 4U);
    for (const TickMark& tick : page->ticks) {
        const drawing::Point p = frame.gridToFilm(tick.at) + page->windowAt;
        EXPECT_NEAR(tick.onPage.x, p.x, 1e-9);
        EXPECT_NEAR(tick.onPage.y, p.y, 1e-9);
    }
    const auto says = [&](const std::string& words) {
        return std::any_of(page->furniture.marks.begin(), page->furniture.marks.end(), [&](const drawing::Mark& mark) {
            const auto* text = std::get_if<drawing::Text>(&mark);
            return text != nullptr && text->text.find(words) != std::string::npos;
        });
    };
    EXPECT_TRUE(says("INSET OF MOVE"));
    EXPECT_TRUE(says("1:5 000"));
    EXPECT_TRUE(says("SIDE 20.0 mm")) << "a hundred metres at 1:5,000";
}

// Its corners 656800 5103350 and 657420 5102700 on MOVE, whose window begins at 652300 5104500: 180 mm, 46 mm and
// 204.8 mm, 72 mm.
TEST(Inset, ItsParentShowsItsFrameWithNameAndScale) {
    const plan::Plan plan = withWorks(printedPlan());
    const plan::Film& move = *plan.filmNamed("MOVE");
    const auto frames = insetFrames(plan, move, *Frame::of(plan, move));
    ASSERT_TRUE(frames.has_value());
    const auto* stroke = std::get_if<drawing::Stroke>(&frames->drawing.marks.front());
    ASSERT_NE(stroke, nullptr);
    const drawing::Box box = drawing::extent({{*stroke}}).grown(-stroke->width / 2);
    EXPECT_NEAR(box.left, 180, 0.01);
    EXPECT_NEAR(box.top, 46, 0.01);
    EXPECT_NEAR(box.right, 204.8, 0.01);
    EXPECT_NEAR(box.bottom, 72, 0.01);
    const auto* letters = std::get_if<drawing::Text>(&frames->drawing.marks.back());
    ASSERT_NE(letters, nullptr);
    EXPECT_EQ(letters->text, "WORKS 1:5 000");
    EXPECT_EQ(frames->labels.size(), 1U);
    EXPECT_TRUE(
        insetFrames(plan, *plan.filmNamed("LOOK"), *Frame::of(plan, *plan.filmNamed("LOOK")))->drawing.isEmpty());
}

}  // namespace
}  // namespace crosstick::film
