#include "core/plan/next_phase.h"

#include <algorithm>
#include <set>

#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/plan/random_plans.h"

namespace crosstick::plan {
namespace {

geodesy::PlanePoint at(double east, double north) {
    return {Metres(east), Metres(north)};
}

Uuid id(std::uint8_t number) {
    return Uuid{{number}};
}

Instant hour(int hours) {
    return Instant{std::chrono::hours(hours)};
}

/// Film 100 of phase 1 with a route from start point 1 to release point 2, onward to rally point 3, which crosses phase
/// line 5 and not phase line 6; units 10 near the start and 11 far from it.
class NextPhaseOf : public ::testing::Test {
  protected:
    static Measure thing(std::uint8_t number, const char* kind, std::vector<geodesy::PlanePoint> points) {
        Measure measure;
        measure.id = id(number);
        measure.kind = kind;
        measure.points = std::move(points);
        return measure;
    }
    static Measure unit(std::uint8_t number, const char* words, geodesy::PlanePoint place) {
        Measure measure = thing(number, "unit", {place});
        measure.fields["unit"] = words;
        return measure;
    }
    Plan plan = [] {
        PlanBuilder builder(withFilm(withFilm(Plan{}, id(99), "HIGHER", {1, 2}), id(100), "MOVE", {1}));
        builder.phases({{1, "Approach", hour(10), hour(20), {}}});
        Plan made = std::move(builder).build();
        Route route;
        route.id = id(50);
        route.name = "FERN";
        route.vertices = {at(0, 0), at(2000, 0)};
        route.stops = {{0, id(1), {}}, {1, id(2), {}}};
        route.onwardTo = id(3);
        made = withRoute(made, route, {thing(1, "start-point", {at(0, 0)}), thing(2, "release-point", {at(2000, 0)})},
                         id(100));
        for (Measure& measure : std::vector<Measure>{
                 thing(3, "objective-rally-point", {at(2300, 400)}),
                 thing(5, "phase-line", {at(1000, -500), at(1000, 500)}),
                 thing(6, "phase-line", {at(3000, -500), at(3000, 500)}),
                 thing(7, "assembly-area", {at(-300, -200), at(200, -200), at(200, 200), at(-300, 200)}),
                 thing(8, "direction-of-attack", {at(-2000, 900), at(-1500, 1500)}),
                 unit(10, "1/2 inf sqd", at(50, 60)), unit(11, "2/2 inf sqd", at(-1900, 800)),
                 unit(12, "3/2 inf sqd", at(900, 900)), thing(13, "boundary", {at(-100, -900), at(3000, -900)})}) {
            made = withMeasure(made, measure, id(100));
        }
        return withMeasure(made, thing(20, "objective", {at(4000, 0), at(4500, 0), at(4500, 500)}), id(99));
    }();
    std::uint8_t fresh = 200;
    std::function<Uuid()> newId = [this] { return id(fresh++); };

    [[nodiscard]] NextPhase next() const { return *proposedNextPhase(plan, 1); }
    [[nodiscard]] Offer of(std::uint8_t number) const {
        const NextPhase all = next();
        const auto found = std::find_if(all.offers.begin(), all.offers.end(),
                                        [&](const Offer& offer) { return offer.item == id(number); });
        EXPECT_NE(found, all.offers.end()) << int{number};
        return found == all.offers.end() ? Offer{} : *found;
    }
    void change(std::uint8_t number, const std::function<void(Measure&)>& how) {
        Measure measure = *plan.measure(id(number));
        how(measure);
        PlanBuilder builder(plan);
        builder.put(std::move(measure));
        plan = std::move(builder).build();
    }
};

TEST_F(NextPhaseOf, WaysAndWhatStandsOnThemAreWalked) {
    for (const std::uint8_t number : {std::uint8_t{50}, std::uint8_t{1}, std::uint8_t{2}}) {
        EXPECT_EQ(of(number).because, Because::Walked) << int{number};
        EXPECT_FALSE(of(number).taken) << int{number};
    }
    EXPECT_TRUE(of(3).taken) << "where the way goes on to is no point of it";
}

TEST_F(NextPhaseOf, ALineIsBehindOnceTheWayHasCrossedIt) {
    EXPECT_EQ(of(5).because, Because::Crossed);
    EXPECT_EQ(of(5).way, id(50));
    EXPECT_FALSE(of(5).taken);
    EXPECT_EQ(of(6).because, Because::LivesOn);
    EXPECT_TRUE(of(6).taken);
    EXPECT_TRUE(of(13).taken) << "a boundary lives on";
}

TEST_F(NextPhaseOf, AnAreaThatTheWayLeavesIsLeftBehind) {
    EXPECT_EQ(of(7).because, Because::LeftBehind);
    EXPECT_FALSE(of(7).taken);
}

TEST_F(NextPhaseOf, UnitsAreProposedWhereTheirWayEnds) {
    EXPECT_EQ(of(10).passage, Passage::Proposed);
    EXPECT_EQ(of(10).because, Because::Marched);
    EXPECT_EQ(of(10).stands, at(2300, 400)) << "the way goes on to the rally point";
    EXPECT_EQ(of(11).stands, at(-1500, 1500)) << "along the arrow that begins beside it";
    EXPECT_EQ(of(12).because, Because::Stood);
    EXPECT_EQ(of(12).stands, at(900, 900));
}

TEST_F(NextPhaseOf, AnEnemysUnitDoesNotGoAlongOurWay) {
    change(10, [](Measure& m) { m.fields["unit"] = "eny inf plt"; });
    EXPECT_EQ(of(10).because, Because::Stood);
    EXPECT_EQ(of(10).stands, at(50, 60));
}

TEST_F(NextPhaseOf, AMeasuresOwnTimesComeFirst) {
    change(6, [](Measure& m) { m.until = hour(20); });
    EXPECT_EQ(of(6).because, Because::Expired);
    EXPECT_FALSE(of(6).taken);
    change(5, [](Measure& m) { m.until = hour(21); });
    EXPECT_EQ(of(5).because, Because::StillToCome);
    EXPECT_TRUE(of(5).taken) << "it is crossed, and yet in force";
    change(12, [](Measure& m) { m.until = hour(12); });
    EXPECT_FALSE(of(12).taken);
}

TEST_F(NextPhaseOf, WhatIsPlannedIsStillToComeAndArrowsServedThePhase) {
    EXPECT_EQ(of(8).because, Because::OfThePhase);
    EXPECT_FALSE(of(8).taken);
    change(8, [](Measure& m) { m.standing = Standing::Planned; });
    EXPECT_EQ(of(8).because, Because::StillToCome);
    EXPECT_TRUE(of(8).taken);
}

TEST_F(NextPhaseOf, WhatAFilmOfTheNextPhaseShowsAloneIsNotOffered) {
    const NextPhase all = next();
    EXPECT_TRUE(std::none_of(all.offers.begin(), all.offers.end(), [](const Offer& o) { return o.item == id(20); }));
    EXPECT_FALSE(proposedNextPhase(plan, 7));
}

TEST_F(NextPhaseOf, TheNewPhaseBeginsWhereTheLastOneEnds) {
    EXPECT_EQ(next().phase.number, 2);
    EXPECT_EQ(next().phase.from, hour(20));
    EXPECT_EQ(next().film, "PHASE 2");
    const Plan begun = withNextPhase(plan, next(), id(101), newId);
    ASSERT_EQ(begun.phases().size(), 2U);
    EXPECT_EQ(begun.phases()[1].number, 2);
    EXPECT_EQ(begun.films().back()->id, id(101));
    EXPECT_EQ(begun.films().back()->phases, std::set<int>{2});
}

TEST_F(NextPhaseOf, ATakenUnitIsAnotherOneAndAssumedUntilItIsMoved) {
    const Plan begun = withNextPhase(plan, next(), id(101), newId);
    MeasurePtr first;
    for (const Showing& showing : begun.film(id(101))->shows) {
        const MeasurePtr measure = begun.measure(showing.item);
        if (measure && measure->kind == "unit" && measure->fields.at("unit") == "1/2 inf sqd") {
            first = measure;
        }
    }
    ASSERT_TRUE(first);
    EXPECT_NE(first->id, id(10));
    EXPECT_EQ(first->state, PlaceState::Assumed);
    EXPECT_EQ(first->points, std::vector{at(2300, 400)});
    EXPECT_EQ(begun.measure(id(10)), plan.measure(id(10))) << "where it was, there it stays on the film before";
    EXPECT_EQ(withPoint(begun, first->id, 0, at(2400, 500)).measure(first->id)->state, PlaceState::Confirmed);
    EXPECT_EQ(movedBy(begun, first->id, Metres(1), Metres(1)).measure(first->id)->state, PlaceState::Confirmed);
}

TEST_F(NextPhaseOf, ARallyPointThatIsAssumedStaysSoWhenItIsMoved) {
    change(3, [](Measure& m) { m.state = PlaceState::Assumed; });
    EXPECT_EQ(withPoint(plan, id(3), 0, at(2400, 500)).measure(id(3))->state, PlaceState::Assumed);
}

TEST_F(NextPhaseOf, UnitsInARowStayInTheirRow) {
    Film film = *plan.film(id(100));
    for (Showing& showing : film.shows) {
        if (showing.item == id(11)) {
            showing.standsWith = id(12);
        }
    }
    PlanBuilder builder(plan);
    builder.put(std::move(film));
    plan = std::move(builder).build();
    const Plan begun = withNextPhase(plan, next(), id(101), newId);
    const auto& shows = begun.film(id(101))->shows;
    const auto follower = std::find_if(shows.begin(), shows.end(), [](const Showing& s) { return s.standsWith; });
    ASSERT_NE(follower, shows.end());
    EXPECT_EQ(begun.measure(*follower->standsWith)->fields.at("unit"), "3/2 inf sqd");
    EXPECT_NE(*follower->standsWith, id(12));
}

// Laws of both functions, over plans drawn at random.
TEST(NextPhase, HoldsItsLawsForPlansAtRandom) {
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        SCOPED_TRACE(seed);
        testing::RandomPlans random(seed);
        const Plan plan = random.plan(30);
        if (plan.phases().empty()) {
            continue;
        }
        const int phase = plan.phases()[random.below(plan.phases().size())].number;
        const NextPhase next = *proposedNextPhase(plan, phase);
        std::set<ItemId> expected;
        for (const FilmPtr& film : plan.films()) {
            for (const Showing& showing : film->shows) {
                if (film->phases.contains(phase) && !film->phases.contains(phase + 1) &&
                    (plan.measure(showing.item) || plan.route(showing.item))) {
                    expected.insert(showing.item);
                }
            }
        }
        std::multiset<ItemId> offered;
        std::size_t taken = 0;
        for (const Offer& offer : next.offers) {
            offered.insert(offer.item);
            taken += offer.taken ? 1 : 0;
        }
        EXPECT_EQ(offered, std::multiset<ItemId>(expected.begin(), expected.end()));
        IdSource ids(seed + 1000);
        const FilmId film = ids.next();
        const Plan begun = withNextPhase(plan, next, film, [&ids] { return ids.next(); });
        plan.measures().forEach([&](const MeasurePtr& held) { EXPECT_EQ(begun.measure(held->id), held); });
        for (const FilmPtr& held : plan.films()) {
            EXPECT_EQ(begun.film(held->id), held);
        }
        std::set<ItemId> shown;
        for (const Showing& showing : begun.film(film)->shows) {
            EXPECT_TRUE(shown.insert(showing.item).second);
        }
        EXPECT_EQ(shown.size(), taken);
        EXPECT_TRUE(std::is_sorted(begun.phases().begin(), begun.phases().end(),
                                   [](const Phase& a, const Phase& b) { return a.number < b.number; }) ||
                    !std::is_sorted(plan.phases().begin(), plan.phases().end(),
                                    [](const Phase& a, const Phase& b) { return a.number < b.number; }));
    }
}

}  // namespace
}  // namespace crosstick::plan
