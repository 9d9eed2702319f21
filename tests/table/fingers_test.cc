#include "ui/table/fingers.h"

#include <cmath>
#include <random>

#include <gmock/gmock.h>

namespace crosstick::table {
namespace {

using Deed = Fingers::Deed;
using Kind = Fingers::Deed::Kind;
using ::testing::ElementsAre;
using ::testing::IsEmpty;

TEST(Fingers, ATapPressesAndLetsGoAtOneSpot) {
    Fingers fingers;
    EXPECT_THAT(fingers.take({{1, {100, 50}}}), IsEmpty()) << "a second finger may still come";
    EXPECT_THAT(fingers.take({{1, {103, 52}}}), IsEmpty());
    EXPECT_THAT(fingers.take({}), ElementsAre(Deed{Kind::Press, {100, 50}}, Deed{Kind::Release, {100, 50}}));
}

TEST(Fingers, ADragPressesWhereTheFingerCameDown) {
    Fingers fingers;
    (void)fingers.take({{1, {100, 50}}});
    EXPECT_THAT(fingers.take({{1, {130, 50}}}), ElementsAre(Deed{Kind::Press, {100, 50}}, Deed{Kind::Move, {130, 50}}));
    EXPECT_THAT(fingers.take({{1, {140, 60}}}), ElementsAre(Deed{Kind::Move, {140, 60}}));
    EXPECT_THAT(fingers.rested(), IsEmpty());
    EXPECT_THAT(fingers.take({}), ElementsAre(Deed{Kind::Release, {140, 60}}));
}

TEST(Fingers, AFingerThatRestsAsksForTheMenuAndForNothingElse) {
    Fingers fingers;
    (void)fingers.take({{1, {100, 50}}});
    EXPECT_TRUE(fingers.isResting());
    EXPECT_THAT(fingers.rested(), ElementsAre(Deed{Kind::Menu, {100, 50}}));
    EXPECT_THAT(fingers.take({{1, {160, 50}}}), IsEmpty());
    EXPECT_THAT(fingers.take({}), IsEmpty());
}

TEST(Fingers, TwoPushAndSpreadTheSheetAndLeaveNoStrayPoint) {
    Fingers fingers;
    EXPECT_THAT(fingers.take({{1, {100, 100}}}), IsEmpty());
    EXPECT_THAT(fingers.take({{1, {100, 100}}, {2, {200, 100}}}), IsEmpty());
    EXPECT_THAT(fingers.take({{1, {90, 110}}, {2, {240, 110}}}),
                ElementsAre(Deed{Kind::Slide, {150, 100}, {165, 110}, 1.5}));
    EXPECT_THAT(fingers.take({{2, {240, 110}}}), IsEmpty()) << "the finger that stays draws nothing";
    EXPECT_THAT(fingers.take({{2, {400, 110}}}), IsEmpty());
    EXPECT_THAT(fingers.take({}), IsEmpty());
}

TEST(Fingers, ASecondOneEndsADragWhereItIs) {
    Fingers fingers;
    (void)fingers.take({{1, {100, 100}}});
    (void)fingers.take({{1, {150, 100}}});
    EXPECT_THAT(fingers.take({{1, {150, 100}}, {2, {300, 100}}}), ElementsAre(Deed{Kind::Release, {150, 100}}));
}

TEST(Fingers, LawEveryPressIsLetGoOnceWhateverComes) {
    std::mt19937 chance(2027);
    std::uniform_real_distribution<double> place(0, 400);
    Fingers fingers;
    int held = 0;
    int presses = 0;
    for (int n = 0; n < 20000; ++n) {
        std::vector<Finger> down;
        for (int f = 0; f < static_cast<int>(chance() % 4); ++f) {
            down.push_back({f, {place(chance), place(chance)}});
        }
        auto deeds = fingers.take(down);
        if (chance() % 5 == 0) {
            const auto more = fingers.rested();
            deeds.insert(deeds.end(), more.begin(), more.end());
        }
        for (const Deed& deed : deeds) {
            held += deed.kind == Kind::Press ? 1 : deed.kind == Kind::Release ? -1 : 0;
            presses += deed.kind == Kind::Press ? 1 : 0;
            ASSERT_TRUE(held == 0 || held == 1) << "step " << n << " of seed 2027";
            ASSERT_TRUE(deed.kind != Kind::Move || held == 1);
            ASSERT_TRUE(deed.kind != Kind::Menu || held == 0);
            ASSERT_TRUE(std::isfinite(deed.factor));
        }
        if (down.empty()) {
            ASSERT_EQ(held, 0);
        }
    }
    EXPECT_GT(presses, 500);
}

}  // namespace
}  // namespace crosstick::table
