// A film stays as it is where nobody draws: moving a measure moves no label farther than 30 mm away. In films so full
// that labels push each other on in chains some break it, by a few millimetres: of 20 measures on 200 by 150 mm two
// films in 150, of 30 three in 200.
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "core/measures/catalogue.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/random_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using testing::Made;
using testing::MadeFilm;

constexpr double kFar = 30;

MadeFilm filmOf(const std::vector<Made>& all) {
    MadeFilm film;
    for (const Made& made : all) {
        film.add(made);
    }
    return film;
}

/// Letters of each shown thing, as many as the film has things.
std::vector<std::vector<drawing::Text>> lettersOf(const MadeFilm& film) {
    std::vector<std::vector<drawing::Text>> letters;
    for (const EngravedItem& item : film.engraved().items) {
        letters.push_back(testing::texts(item.drawing));
    }
    return letters;
}

TEST(Labels, StayWhereNobodyDraws) {
    constexpr int kChains = 3;  // in which labels push each other on
    int near = 0;
    int broken = 0;
    double farthest = 0;
    for (std::uint64_t seed = 1; seed <= 150; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        drawing::testing::RandomLines random(seed);
        std::vector<Made> all;
        const auto kinds = measures::catalogue();
        while (all.size() < 20) {
            const auto kind = static_cast<std::size_t>(random.below(static_cast<int>(kinds.size())));
            if (kinds[kind].lies == measures::Lies::OnTheGround) {  // a block takes room for twenty
                all.push_back(testing::randomMeasure(random, kinds[kind].kind));
            }
        }
        const Point from{random.between(20, 180), random.between(20, 130)};
        all.push_back({.kind = "checkpoint", .points = {from}, .number = "99"});
        const auto before = lettersOf(filmOf(all));
        const Point to = from + Point{random.between(-6, 6), random.between(-6, 6)};
        all.back().points = {to};
        const auto after = lettersOf(filmOf(all));
        ASSERT_EQ(before.size(), after.size());
        bool isBroken = false;
        for (std::size_t n = 0; n < before.size(); ++n) {
            for (std::size_t row = 0; row < before[n].size(); ++row) {
                const Point at = before[n][row].start;
                const bool stays = row < after[n].size() && after[n][row] == before[n][row];
                const double away = std::min(drawing::length(at - from), drawing::length(at - to));
                near += !stays && away <= kFar ? 1 : 0;
                isBroken = isBroken || (!stays && away > kFar);
                farthest = std::max(farthest, stays ? 0 : away);
            }
        }
        broken += isBroken ? 1 : 0;
    }
    EXPECT_LE(broken, kChains);
    EXPECT_LE(farthest, 45);
    EXPECT_GT(near, 50) << "labels nearby make room, or this test tests nothing";
}

}  // namespace
}  // namespace crosstick::symbols
