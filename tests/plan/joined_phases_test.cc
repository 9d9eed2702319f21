#include "core/plan/joined_phases.h"

#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "core/plan/next_phase.h"
#include "tests/plan/random_plans.h"

namespace crosstick::plan {
namespace {

Uuid id(std::uint8_t number) {
    return Uuid{{number}};
}

Measure thing(std::uint8_t number, const char* kind) {
    Measure measure;
    measure.id = id(number);
    measure.kind = kind;
    measure.points = {{Metres(number * 100.0), Metres(0)}, {Metres(number * 100.0), Metres(500)}};
    return measure;
}

std::set<ItemId> itemsOf(const Film& film) {
    std::set<ItemId> items;
    for (const Showing& showing : film.shows) {
        items.insert(showing.item);
    }
    return items;
}

/// Phases 1 to 3; film 100 of phase 1 shows a boundary and an arrow, film 101 of phase 2 the boundary and a post.
class JoinedPhases : public ::testing::Test {
  protected:
    Plan plan = [] {
        PlanBuilder builder(withFilm(withFilm(Plan{}, id(100), "MOVE", {1}), id(101), "LOOK", {2}));
        builder.phases({{1, "Move", {}, {}, {}}, {2, "Look", {}, {}, {}}, {3, "Take", {}, {}, {}}});
        Plan made = std::move(builder).build();
        made = withMeasure(made, thing(1, "boundary"), id(100));
        made = withMeasure(made, thing(2, "direction-of-attack"), id(100));
        made = shownOn(made, id(1), id(101));
        return withMeasure(made, thing(3, "observation-post"), id(101));
    }();
};

TEST_F(JoinedPhases, OneFilmServesBothAndShowsWhatEitherShowed) {
    const Plan joined = joinedWithNextPhase(plan, id(100));
    EXPECT_EQ(joined.films().size(), 1U);
    EXPECT_EQ(joined.film(id(100))->phases, (std::set<int>{1, 2}));
    EXPECT_EQ(itemsOf(*joined.film(id(100))), (std::set<ItemId>{id(1), id(2), id(3)}));
    EXPECT_EQ(&joined.measures().chunks(), &plan.measures().chunks());
}

TEST_F(JoinedPhases, WithoutAFilmOfTheNextPhaseTheFilmIsShared) {
    const Plan joined = joinedWithNextPhase(plan, id(101));
    EXPECT_EQ(joined.films().size(), 2U);
    EXPECT_EQ(joined.film(id(101))->phases, (std::set<int>{2, 3}));
    EXPECT_TRUE(joinedWithNextPhase(joined, id(101)) == joined) << "no phase follows the third";
}

TEST_F(JoinedPhases, AnInsetGoesWithItsFilmAndIsJoinedWithNothingItself) {
    Film inset;
    inset.id = id(102);
    inset.phases = {2};
    inset.inset = Inset{id(101), {}, {}};
    PlanBuilder builder(plan);
    builder.put(inset);
    const Plan with = std::move(builder).build();
    EXPECT_TRUE(joinedWithNextPhase(with, id(102)) == with);
    EXPECT_EQ(joinedWithNextPhase(with, id(100)).film(id(102))->inset->parent, id(100));
}

TEST_F(JoinedPhases, PartedAgainTheLaterFilmStartsWithWhatLivesOn) {
    const Plan parted = partedAfterPhase(joinedWithNextPhase(plan, id(100)), id(100), 1, id(103), "LOOK");
    EXPECT_EQ(parted.film(id(100))->phases, std::set<int>{1});
    EXPECT_EQ(parted.film(id(103))->phases, std::set<int>{2});
    EXPECT_TRUE(isShownOn(*parted.film(id(100)), id(2)));
    EXPECT_FALSE(isShownOn(*parted.film(id(103)), id(2))) << "the arrow served the first phase";
    EXPECT_TRUE(isShownOn(*parted.film(id(103)), id(1)));
    EXPECT_TRUE(isShownOn(*parted.film(id(103)), id(3)));
    EXPECT_EQ(parted.films()[1]->id, id(103)) << "next above it";
    EXPECT_TRUE(partedAfterPhase(plan, id(100), 1, id(103), "LOOK") == plan) << "it has no other phase";
}

// A phase that was begun from another one, joined with it and parted again, shows what it showed.
TEST_F(JoinedPhases, BegunJoinedAndPartedShowsTheSame) {
    Measure unit = thing(9, "unit");
    unit.points.resize(1);
    unit.fields["unit"] = "1/2 inf sqd";
    Plan one = withMeasure(plan, unit, id(100));
    PlanBuilder builder(one);
    builder.removeFilm(id(101));
    one = std::move(builder).build();
    std::uint8_t fresh = 200;
    const Plan begun = withNextPhase(one, *proposedNextPhase(one, 1), id(104), [&fresh] { return id(fresh++); });
    const Plan back = partedAfterPhase(joinedWithNextPhase(begun, id(100)), id(100), 1, id(105), "PHASE 2");
    EXPECT_EQ(itemsOf(*back.film(id(105))), itemsOf(*begun.film(id(104))));
    EXPECT_TRUE(isShownOn(*back.film(id(100)), id(2)));
    EXPECT_TRUE(isShownOn(*back.film(id(100)), id(9)));
}

// The laws in the header, over plans drawn at random.
TEST(JoinedPhasesAtRandom, LoseNothing) {
    for (std::uint64_t seed = 1; seed <= 60; ++seed) {
        SCOPED_TRACE(seed);
        testing::RandomPlans random(seed);
        const Plan plan = random.plan(20);
        for (const FilmPtr& film : plan.films()) {
            const Plan joined = joinedWithNextPhase(plan, film->id);
            EXPECT_EQ(&joined.measures().chunks(), &plan.measures().chunks());
            std::set<ItemId> before = itemsOf(*film);
            for (const FilmPtr& other : plan.films()) {
                if (!joined.film(other->id)) {
                    before.merge(itemsOf(*other));
                }
            }
            EXPECT_EQ(itemsOf(*joined.film(film->id)), before);
            if (film->phases.size() < 2) {
                continue;
            }
            const Plan parted = partedAfterPhase(plan, film->id, *film->phases.begin(), Uuid{{1, 2, 3}}, "LATER");
            if (const FilmPtr later = parted.film(Uuid{{1, 2, 3}})) {
                std::set<ItemId> both = itemsOf(*parted.film(film->id));
                both.merge(itemsOf(*later));
                EXPECT_EQ(both, itemsOf(*film));
            }
        }
    }
}

}  // namespace
}  // namespace crosstick::plan
