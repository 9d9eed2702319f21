#include "core/plan/difference.h"

#include <gtest/gtest.h>

#include "tests/plan/random_plans.h"

namespace crosstick::plan {
namespace {

// The laws of difference.h, over random chains of edits.
class DifferenceLaws : public ::testing::TestWithParam<std::uint64_t> {};

TEST_P(DifferenceLaws, HoldOverRandomEdits) {
    SCOPED_TRACE(GetParam());
    testing::RandomPlans random(GetParam());
    const Plan before = random.plan(random.below(700));
    Plan after = before;
    for (std::size_t n = random.below(12); n-- > 0;) {
        after = random.edited(after);
    }
    EXPECT_TRUE(difference(before, before).isEmpty());
    const Difference d = difference(before, after);
    EXPECT_EQ(d.isEmpty(), before == after);
    EXPECT_TRUE(apply(before, d) == after);
    const Difference back = difference(after, before);
    EXPECT_TRUE(apply(after, back) == before);
    ASSERT_EQ(d.measures.size(), back.measures.size());
    for (std::size_t n = 0; n < d.measures.size(); ++n) {
        EXPECT_EQ(d.measures[n].before, back.measures[n].after);
        EXPECT_EQ(d.measures[n].after, back.measures[n].before);
    }
}

INSTANTIATE_TEST_SUITE_P(Seeds, DifferenceLaws, ::testing::Range<std::uint64_t>(100, 160));

TEST(Difference, FindsEqualValuesInOtherPlaceOfMemoryEqual) {
    const Plan a = testing::RandomPlans(5).plan(400);
    const Plan b = testing::RandomPlans(5).plan(400);
    EXPECT_TRUE(difference(a, b).isEmpty());
}

TEST(Difference, NamesJustTheOneMeasureThatMoved) {
    testing::RandomPlans random(6);
    const Plan before = random.plan(1000);
    MeasurePtr some = before.measures().chunks()[3]->at(5);
    Measure moved = *some;
    moved.points.push_back({Metres(1), Metres(2)});
    PlanBuilder builder(before);
    builder.put(moved);
    const Difference d = difference(before, std::move(builder).build());
    ASSERT_EQ(d.measures.size(), 1U);
    EXPECT_EQ(d.measures.front().before, some);
    EXPECT_EQ(*d.measures.front().after, moved);
    EXPECT_TRUE(d.films.empty());
    EXPECT_TRUE(d.heading.isNone());
}

TEST(Difference, SeesAnotherOrderOfTheStack) {
    testing::RandomPlans random(7);
    const Plan before = random.plan(3);
    PlanBuilder builder(before);
    builder.order({}, {before.films().back()->id}, {});
    const Plan after = std::move(builder).build();
    const Difference d = difference(before, after);
    EXPECT_TRUE(d.films.empty());
    ASSERT_FALSE(d.filmOrder.isNone());
    EXPECT_EQ(d.filmOrder.after->front(), before.films().back()->id);
}

}  // namespace
}  // namespace crosstick::plan
