#include "core/plan/chunked_list.h"

#include <map>

#include <gtest/gtest.h>

#include "core/plan/measure.h"
#include "tests/plan/random_plans.h"

namespace crosstick::plan {
namespace {

using List = ChunkedList<Measure>;

MeasurePtr fresh(testing::RandomPlans& random) {
    return std::make_shared<const Measure>(random.measure());
}

void expectSame(const List& list, const std::map<Uuid, MeasurePtr>& oracle) {
    ASSERT_EQ(list.size(), oracle.size());
    auto expected = oracle.begin();
    list.forEach([&](const MeasurePtr& value) { EXPECT_EQ(value, (expected++)->second); });
    for (const auto& chunk : list.chunks()) {
        EXPECT_FALSE(chunk->empty());
        EXPECT_LE(chunk->size(), List::kFull);
    }
}

TEST(ChunkedList, HoldsWhatAMapWouldHoldAfterAnyEdits) {
    const std::uint64_t seed = 20270313;
    SCOPED_TRACE(seed);
    testing::RandomPlans random(seed);
    List list;
    std::map<Uuid, MeasurePtr> oracle;
    for (int step = 0; step < 3000; ++step) {
        const bool grow = oracle.empty() || random.below(3) != 0;
        if (grow) {
            const MeasurePtr value = fresh(random);
            list = list.with(value);
            oracle[value->id] = value;
        } else {
            auto victim = oracle.begin();
            std::advance(victim, static_cast<std::ptrdiff_t>(random.below(oracle.size())));
            list = list.without(victim->first);
            oracle.erase(victim);
        }
    }
    expectSame(list, oracle);
    for (const auto& [id, value] : oracle) {
        EXPECT_EQ(list.find(id), value);
    }
}

TEST(ChunkedList, OfTwoWithOneIdentityTheLaterCounts) {
    testing::RandomPlans random(7);
    const Measure first = random.measure();
    Measure second = random.measure();
    second.id = first.id;
    const List list({std::make_shared<const Measure>(first), std::make_shared<const Measure>(second)});
    ASSERT_EQ(list.size(), 1U);
    EXPECT_EQ(*list.find(first.id), second);
}

TEST(ChunkedList, OneEditLeavesAllOtherChunksShared) {
    testing::RandomPlans random(8);
    std::vector<MeasurePtr> many;
    for (int n = 0; n < 10000; ++n) {
        many.push_back(fresh(random));
    }
    const List before(many);
    const List after = before.with(std::make_shared<const Measure>(*many[4711]));
    ASSERT_EQ(before.chunks().size(), after.chunks().size());
    std::size_t other = 0;
    for (std::size_t n = 0; n < before.chunks().size(); ++n) {
        other += before.chunks()[n] == after.chunks()[n] ? 0U : 1U;
    }
    EXPECT_EQ(other, 1U);
}

TEST(ChunkedList, RemovingWhatIsNotThereChangesNothing) {
    testing::RandomPlans random(9);
    const List list({fresh(random), fresh(random)});
    EXPECT_EQ(&list.without(fresh(random)->id).chunks(), &list.chunks());
}

}  // namespace
}  // namespace crosstick::plan
