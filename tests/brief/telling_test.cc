#include "ui/brief/telling.h"

#include <algorithm>
#include <random>

#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/plan/random_plans.h"

namespace crosstick::brief {
namespace {

plan::FilmId film(std::uint8_t n) {
    return Uuid{{n}};
}

/// HIGHER lies in every phase, MOVE in 1 and 2, LOOK in 3; phase 4 has none of its own.
plan::Plan fourPhases() {
    plan::PlanBuilder builder(plan::Plan{});
    builder.phases(
        {{1, "Make ready", {}, {}, {}}, {2, "Approach", {}, {}, {}}, {3, "Look", {}, {}, {}}, {4, "Wait", {}, {}, {}}});
    plan::Plan plan = plan::withFilm(std::move(builder).build(), film(1), "HIGHER", {});
    plan = plan::withFilm(plan, film(2), "MOVE", {1, 2});
    return plan::withFilm(plan, film(3), "LOOK", {3});
}

plan::Plan withWhy(const plan::Plan& plan, std::uint8_t id, const char* why, std::uint8_t on) {
    plan::Measure measure;
    measure.id = Uuid{{id}};
    measure.kind = "checkpoint";
    measure.why = why;
    return plan::withMeasure(plan, measure, film(on));
}

TEST(Steps, BeginWithTheSheetAloneAndLayOneFilmAfterTheOther) {
    const auto steps = stepsOf(fourPhases());
    const std::vector<Step> wanted{{1, {}, {}},
                                   {1, {film(1)}, film(1)},
                                   {1, {film(1), film(2)}, film(2)},
                                   {2, {film(1), film(2)}, {}},
                                   {3, {film(1), film(3)}, film(3)},
                                   {4, {film(1)}, {}}};
    EXPECT_EQ(steps, wanted);
}

TEST(Steps, AFilmLaidUnderAnotherLiesInItsPlaceOfTheStack) {
    plan::PlanBuilder builder(plan::Plan{});
    builder.phases({{1, "", {}, {}, {}}, {2, "", {}, {}, {}}});
    plan::Plan plan = plan::withFilm(std::move(builder).build(), film(1), "LOWER", {2});
    plan = plan::withFilm(plan, film(2), "UPPER", {1, 2});
    const auto steps = stepsOf(plan);
    ASSERT_EQ(steps.size(), 3U);
    EXPECT_EQ(steps[2].lies, (std::vector<plan::FilmId>{film(1), film(2)}));
    EXPECT_EQ(steps[2].laid, film(1));
}

TEST(Steps, APlanOfNothingHasTheSheetAlone) {
    EXPECT_EQ(stepsOf(plan::Plan{}), (std::vector<Step>{{0, {}, {}}}));
}

TEST(Steps, APlanWithoutPhasesLaysAllItsFilms) {
    plan::Plan plan = plan::withFilm(plan::Plan{}, film(1), "A", {});
    plan = plan::withFilm(plan, film(2), "B", {});
    const auto steps = stepsOf(plan);
    ASSERT_EQ(steps.size(), 3U);
    EXPECT_EQ(steps.back().lies.size(), 2U);
}

TEST(Steps, LawEachLaysOneFilmAtMostAndOnlyFilmsOfItsPhaseLie) {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const plan::Plan plan = plan::testing::RandomPlans(seed).plan(20);
        const auto steps = stepsOf(plan);
        std::vector<plan::FilmId> seen;
        for (std::size_t n = 1; n < steps.size(); ++n) {
            const Step& step = steps[n];
            std::vector<plan::FilmId> fresh;
            for (const plan::FilmId& id : step.lies) {
                const auto& before = steps[n - 1].lies;
                if (std::find(before.begin(), before.end(), id) == before.end()) {
                    fresh.push_back(id);
                }
                const auto& phases = plan.film(id)->phases;
                EXPECT_TRUE(phases.empty() || step.phase == 0 || phases.contains(step.phase));
            }
            EXPECT_EQ(fresh, step.laid ? std::vector<plan::FilmId>{*step.laid} : std::vector<plan::FilmId>{});
            seen.insert(seen.end(), fresh.begin(), fresh.end());
        }
        for (const plan::FilmPtr& one : plan.films()) {
            const bool hasTurn = one->phases.empty() || plan.phases().empty() ||
                                 std::any_of(plan.phases().begin(), plan.phases().end(),
                                             [&](const plan::Phase& p) { return one->phases.contains(p.number); });
            EXPECT_EQ(std::find(seen.begin(), seen.end(), one->id) != seen.end(), hasTurn);
        }
    }
}

TEST(Telling, GoesOnAndBackAndStaysAtEitherEnd) {
    Telling telling(fourPhases());
    telling.take(Key::Back);
    EXPECT_EQ(telling.place(), 0U);
    EXPECT_TRUE(telling.lies().empty());
    for (int n = 0; n < 9; ++n) {
        telling.take(Key::Forward);
    }
    EXPECT_EQ(telling.place(), 5U);
    telling.take(Key::Back);
    EXPECT_EQ(telling.step().laid, film(3));
    telling.take(Key::First);
    EXPECT_EQ(telling.place(), 0U);
    telling.take(Key::Last);
    EXPECT_EQ(telling.place(), 5U);
    EXPECT_FALSE(telling.isOver());
    telling.take(Key::End);
    EXPECT_TRUE(telling.isOver());
}

TEST(Telling, GoesFromPhaseToPhase) {
    Telling telling(fourPhases());
    const auto placeAfter = [&](Key key) {
        telling.take(key);
        return telling.place();
    };
    EXPECT_EQ(placeAfter(Key::NextPhase), 1U);
    EXPECT_EQ(placeAfter(Key::NextPhase), 3U);
    EXPECT_EQ(placeAfter(Key::NextPhase), 4U);
    EXPECT_EQ(placeAfter(Key::NextPhase), 5U);
    EXPECT_EQ(placeAfter(Key::NextPhase), 5U) << "there is no more";
    EXPECT_EQ(placeAfter(Key::PhaseBefore), 4U);
    EXPECT_EQ(placeAfter(Key::PhaseBefore), 3U);
    EXPECT_EQ(placeAfter(Key::PhaseBefore), 1U);
    EXPECT_EQ(placeAfter(Key::Forward), 2U);
    EXPECT_EQ(placeAfter(Key::PhaseBefore), 1U) << "first to the beginning of its own";
    EXPECT_EQ(placeAfter(Key::PhaseBefore), 0U);
    EXPECT_EQ(placeAfter(Key::PhaseBefore), 0U);
    telling.turnTo(3);
    EXPECT_EQ(telling.place(), 4U);
    telling.turnTo(8);
    EXPECT_EQ(telling.place(), 4U) << "there is no phase 8";
}

TEST(Telling, TheSheetIsShownAloneAndFilmsComeBack) {
    Telling telling(fourPhases());
    telling.turnTo(2);
    telling.take(Key::SheetAlone);
    EXPECT_TRUE(telling.lies().empty());
    telling.take(Key::SheetAlone);
    EXPECT_EQ(telling.lies().size(), 2U);
    telling.take(Key::SheetAlone);
    telling.take(Key::Forward);
    EXPECT_EQ(telling.lies().size(), 2U) << "whoever goes on wants to see";
}

TEST(Telling, WhysAreThoseOfTheFilmThatWasLaidLast) {
    plan::Plan plan = withWhy(fourPhases(), 11, "", 2);
    plan = withWhy(plan, 12, "sees the yard", 2);
    plan = withWhy(plan, 13, "our way back", 2);
    plan = withWhy(plan, 14, "given by higher", 1);
    Telling telling(plan);
    EXPECT_TRUE(telling.reasons().empty());
    telling.take(Key::Forward);
    EXPECT_EQ(telling.reasons(), (std::vector<plan::ItemId>{Uuid{{14}}}));
    const auto silent = telling.unexplained();
    EXPECT_EQ(silent.size() + 1, telling.plan().film(*telling.step().laid)->shows.size()) << "each is one or the other";
    EXPECT_EQ(std::count(silent.begin(), silent.end(), Uuid{{14}}), 0);
    telling.take(Key::Forward);
    EXPECT_EQ(telling.reasons(), (std::vector<plan::ItemId>{Uuid{{12}}, Uuid{{13}}}));
    telling.take(Key::NextPhase);
    EXPECT_EQ(telling.reasons().size(), 3U) << "nothing was laid: of all that lies";
    EXPECT_FALSE(telling.showsWhys());
    telling.take(Key::Whys);
    EXPECT_TRUE(telling.showsWhys());
}

TEST(Telling, PointsAtOneWhyAfterTheOtherAndRoundAgain) {
    plan::Plan plan = withWhy(fourPhases(), 12, "sees the yard", 2);
    plan = withWhy(plan, 13, "our way back", 2);
    Telling telling(plan);
    telling.take(Key::NextWhy);
    EXPECT_FALSE(telling.pointed()) << "there is none on the bare sheet";
    telling.turnTo(1);
    telling.take(Key::Forward);
    EXPECT_FALSE(telling.pointed());
    telling.take(Key::NextWhy);
    EXPECT_EQ(telling.pointed(), Uuid{{12}});
    telling.take(Key::NextWhy);
    telling.take(Key::NextWhy);
    EXPECT_EQ(telling.pointed(), Uuid{{12}});
    telling.take(Key::WhyBefore);
    EXPECT_EQ(telling.pointed(), Uuid{{13}});
    telling.take(Key::Forward);
    EXPECT_FALSE(telling.pointed()) << "another film, another talk";
}

}  // namespace
}  // namespace crosstick::brief
