#include <random>

#include <gtest/gtest.h>

#include "core/plan/film.h"

namespace crosstick::plan {
namespace {

TEST(OrderBetween, LiesStrictlyBetweenItsNeighbours) {
    const std::uint64_t seed = 42;
    SCOPED_TRACE(seed);
    std::mt19937_64 chance(seed);
    std::vector<std::string> keys;
    for (int n = 0; n < 2000; ++n) {
        const std::size_t at = chance() % (keys.size() + 1);
        const std::string before = at == 0 ? "" : keys[at - 1];
        const std::string after = at == keys.size() ? "" : keys[at];
        const std::string key = orderBetween(before, after);
        EXPECT_LT(before, key);
        if (!after.empty()) {
            EXPECT_LT(key, after);
        }
        keys.insert(keys.begin() + static_cast<std::ptrdiff_t>(at), key);
    }
    EXPECT_TRUE(std::is_sorted(keys.begin(), keys.end()));
}

TEST(OrderBetween, StaysShortWhenThingsAreAddedAtTheEnd) {
    std::string last;
    for (int n = 0; n < 1000; ++n) {
        last = orderBetween(last, "");
    }
    EXPECT_LT(last.size(), 210U);  // one place opens about every five: the price of halving the gap
}

TEST(OrderBetween, FindsRoomInFrontOfAnyKeyItMade) {
    std::string first = orderBetween("", "");
    for (int n = 0; n < 1000; ++n) {
        const std::string next = orderBetween("", first);
        ASSERT_LT(next, first);
        ASSERT_NE(next.back(), '0');
        first = next;
    }
}

}  // namespace
}  // namespace crosstick::plan
