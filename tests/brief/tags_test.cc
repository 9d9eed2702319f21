#include "ui/brief/tags.h"

#include <random>

#include <gtest/gtest.h>

namespace crosstick::brief {
namespace {

const QRectF kRoom(18, 18, 1348, 690);

TEST(Tags, LieRightAndBelowWhereThereIsRoom) {
    const auto laid = layTags({{{400, 300}, {200, 50}}}, kRoom);
    ASSERT_TRUE(laid.front().has_value());
    EXPECT_EQ(*laid.front(), QRectF(420, 320, 200, 50));
}

TEST(Tags, FlipBeforeAnEdge) {
    const auto laid = layTags({{{1350, 700}, {200, 50}}}, kRoom);
    ASSERT_TRUE(laid.front().has_value());
    EXPECT_TRUE(kRoom.contains(*laid.front()));
}

TEST(Tags, NoneForASpotOutOfSight) {
    EXPECT_FALSE(layTags({{{-5, 300}, {200, 50}}}, kRoom).front().has_value());
}

TEST(Tags, LawInsideTheRoomAndClearOfEachOtherAndOfEverySpot) {
    std::mt19937 chance(4711);
    std::uniform_real_distribution<double> x(0, 1366), y(0, 720), wide(60, 280), high(30, 90);
    std::size_t laidInAll = 0;
    for (int round = 0; round < 200; ++round) {
        SCOPED_TRACE("round " + std::to_string(round) + " of seed 4711");
        std::vector<TagWish> wishes;
        for (int n = 0; n < 12; ++n) {
            wishes.push_back({{x(chance), y(chance)}, {wide(chance), high(chance)}});
        }
        const auto laid = layTags(wishes, kRoom);
        ASSERT_EQ(laid.size(), wishes.size());
        for (std::size_t a = 0; a < laid.size(); ++a) {
            if (!laid[a]) {
                continue;
            }
            ++laidInAll;
            EXPECT_TRUE(kRoom.contains(*laid[a]));
            EXPECT_EQ(laid[a]->size(), wishes[a].size);
            for (std::size_t b = 0; b < laid.size(); ++b) {
                EXPECT_FALSE(laid[a]->contains(wishes[b].spot));
                EXPECT_TRUE(a == b || !laid[b] || !laid[a]->intersects(*laid[b]));
            }
        }
    }
    EXPECT_GT(laidInAll, 200U * 8) << "of 12 most find room";
}

}  // namespace
}  // namespace crosstick::brief
