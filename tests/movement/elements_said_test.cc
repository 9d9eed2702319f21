#include "core/movement/elements_said.h"

#include <gtest/gtest.h>

namespace crosstick::movement {
namespace {

TEST(ElementsSaid, AreAColumnInOneLine) {
    const auto all = elementsSaid("1/2/C inf sqd 9, hq 2/C inf plt 3,  WPN/2/C inf sqd 8 ,Porters 4, guide");
    ASSERT_EQ(all.size(), 5U);
    EXPECT_EQ(all[0].unit, "1/2/C inf sqd");
    EXPECT_EQ(all[0].name, "1 Sqd");
    EXPECT_EQ(all[0].people, 9);
    EXPECT_EQ(all[1].unit, "hq 2/C inf plt");
    EXPECT_EQ(all[1].name, "HQ");
    EXPECT_EQ(all[1].people, 3);
    EXPECT_EQ(all[2].name, "WPN Sqd");
    EXPECT_EQ(all[3].unit, kUsualElement);
    EXPECT_EQ(all[3].name, "Porters");
    EXPECT_EQ(all[3].people, 4);
    EXPECT_EQ(all[4].name, "guide");
    EXPECT_EQ(all[4].people, 0) << "not said";
}

TEST(ElementsSaid, NothingIsReadWhereNothingIsSaidAndMuchIsBounded) {
    EXPECT_TRUE(elementsSaid("").empty());
    EXPECT_TRUE(elementsSaid(" , ,, ").empty());
    EXPECT_EQ(elementsSaid("7").front().people, 0) << "a number alone is a name";
    EXPECT_EQ(elementsSaid("7").front().name, "7");
    EXPECT_EQ(elementsSaid("Porters 123456").front().people, 0) << "no strength has six figures";
    std::string many;
    for (int n = 0; n < 1000; ++n) {
        many += "inf sqd 9,";
    }
    EXPECT_EQ(elementsSaid(many).size(), 60U);
}

}  // namespace
}  // namespace crosstick::movement
