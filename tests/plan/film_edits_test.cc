#include "core/plan/film_edits.h"

#include <algorithm>
#include <random>

#include <gtest/gtest.h>

#include "core/plan/edits.h"

namespace crosstick::plan {
namespace {

Plan stackOf(int films) {
    Plan plan;
    for (int n = 0; n < films; ++n) {
        plan = withFilm(plan, Uuid{{static_cast<std::uint8_t>(n + 1)}}, std::string(1, static_cast<char>('A' + n)), {});
    }
    return plan;
}

std::string namesOf(const Plan& plan) {
    std::string names;
    for (const FilmPtr& film : plan.films()) {
        names += film->name;
    }
    return names;
}

TEST(FilmEdits, AFilmGoesToAPlaceAndTheOthersCloseUp) {
    const Plan plan = stackOf(4);
    EXPECT_EQ(namesOf(restackedTo(plan, Uuid{{1}}, 2)), "BCAD");
    EXPECT_EQ(namesOf(restackedTo(plan, Uuid{{4}}, 0)), "DABC");
    EXPECT_EQ(namesOf(restackedTo(plan, Uuid{{2}}, 99)), "ACDB");
    EXPECT_TRUE(restackedTo(plan, Uuid{{2}}, 1) == plan);
    EXPECT_TRUE(restackedTo(plan, Uuid{{77}}, 0) == plan);
}

TEST(FilmEdits, RestackingKeepsTheOthersInTheirOrderAndGoesBack) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    for (int round = 0; round < 100; ++round) {
        const Plan plan = stackOf(6);
        const auto from = random() % 6;
        const auto to = random() % 6;
        const Uuid film = plan.films()[from]->id;
        const Plan next = restackedTo(plan, film, to);
        EXPECT_EQ(next.films()[to]->id, film);
        std::string others = namesOf(next);
        std::erase(others, plan.films()[from]->name[0]);
        EXPECT_TRUE(std::is_sorted(others.begin(), others.end())) << others;
        EXPECT_TRUE(restackedTo(next, film, from) == plan);
    }
}

TEST(FilmEdits, AFilmHasThePhasesItIsGiven) {
    const Plan plan = stackOf(2);
    const Plan next = withPhasesOf(plan, Uuid{{1}}, {1, 2});
    EXPECT_EQ(next.film(Uuid{{1}})->phases, (std::set<int>{1, 2}));
    EXPECT_EQ(next.film(Uuid{{2}}), plan.film(Uuid{{2}})) << "shared";
    EXPECT_TRUE(withPhasesOf(next, Uuid{{1}}, {}) == plan);
}

}  // namespace
}  // namespace crosstick::plan
