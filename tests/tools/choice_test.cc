#include "tests/tools/at_the_table.h"
#include "ui/tools/hand_tool.h"

namespace crosstick::tools {
namespace {

class Choice : public AtTheTable {
  protected:
    plan::ItemId one = put("checkpoint", {at(0, 0)}, "1");
    plan::ItemId two = put("checkpoint", {at(100, 0)}, "2");
    plan::ItemId line = put("phase-line", {at(0, 300), at(400, 300)});
    HandTool hand;
    using Items = std::vector<plan::ItemId>;
};

TEST_F(Choice, ControlAddsAndTakesAway) {
    click(hand, 0, 0);
    click(hand, 100, 0, Key::Control);
    EXPECT_EQ(selection, (Items{one, two}));
    click(hand, 200, 300, Key::Control);
    EXPECT_EQ(selection, (Items{one, two, line}));
    click(hand, 0, 0, Key::Control);
    EXPECT_EQ(selection, (Items{two, line}));
    EXPECT_TRUE(captions.empty());
}

TEST_F(Choice, ABoxFromBareSheetTakesWhatLiesInItWholly) {
    drag(hand, at(-50, -50), at(150, 310), Key::Shift);
    EXPECT_EQ(selection, (Items{one, two})) << "the line reaches beyond";
    drag(hand, at(450, 250), at(-50, 350), Key::Control);
    EXPECT_EQ(selection, (Items{one, two, line}));
    drag(hand, at(900, 900), at(950, 950), Key::Shift);
    EXPECT_TRUE(selection.empty());
}

TEST_F(Choice, ABoxLiesAsTheTableIsTurned) {
    const Box upright{at(-10, -10), at(110, 10), Degrees(0)};
    EXPECT_TRUE(upright.holds(at(100, 0)));
    const Box turned{at(0, -20), at(100, 80), Degrees(45)};  // its corners lie along the diagonal: it has no width
    EXPECT_FALSE(turned.holds(at(100, -20)));
    const Box wide{at(0, 0), at(100, 0), Degrees(45)};
    EXPECT_TRUE(wide.holds(at(50, 20)));
    EXPECT_FALSE(wide.holds(at(50, 60)));
    const plan::Points corners = wide.corners();
    EXPECT_NEAR((corners[1].easting - corners[0].easting).value(), 50, 1e-6);
    EXPECT_NEAR((corners[1].northing - corners[0].northing).value(), 50, 1e-6);
}

TEST_F(Choice, APinnedFilmKeepsWhatItHasOutOfTheBox) {
    plan::Film pinned = *plan.film(film);
    pinned.pinned = true;
    plan = std::move(plan::PlanBuilder(plan).put(pinned)).build();
    drag(hand, at(-50, -50), at(150, 310), Key::Shift);
    EXPECT_TRUE(selection.empty());
}

TEST_F(Choice, DraggingOneOfSeveralMovesAllInOneStep) {
    selection = {one, two, line};
    drag(hand, at(100, 0), at(150, 40));
    EXPECT_EQ(captions, (std::vector<std::string>{"move several"}));
    EXPECT_EQ(plan.measure(one)->points.front(), at(50, 40));
    EXPECT_EQ(plan.measure(two)->points.front(), at(150, 40));
    EXPECT_EQ(plan.measure(line)->points.back(), at(450, 340));
    EXPECT_EQ(selection, (Items{one, two, line}));
    EXPECT_FALSE(draft);
}

TEST_F(Choice, AClickOnOneOfSeveralChoosesItAlone) {
    selection = {one, two, line};
    click(hand, 100, 0);
    EXPECT_EQ(selection, (Items{two}));
    EXPECT_TRUE(captions.empty());
}

TEST_F(Choice, KeysNudgeAll) {
    selection = {one, line};
    tell(hand, {Kind::Nudge, {Metres(5), Metres(-2)}});
    EXPECT_EQ(plan.measure(one)->points.front(), at(5, -2));
    EXPECT_EQ(plan.measure(line)->points.front(), at(5, 298));
    EXPECT_EQ(captions, (std::vector<std::string>{"nudge several"}));
}

TEST_F(Choice, APressAgainGoesToTheNextOneUnderneath) {
    const auto under = put("phase-line", {at(-200, 2), at(200, 2)});
    click(hand, 0, 1);
    EXPECT_EQ(selection, (Items{one}));
    click(hand, 0, 1);
    EXPECT_EQ(selection, (Items{under}));
    tell(hand, {Kind::Move, at(0, 1)});
    EXPECT_EQ(hand.hint(), "PL, 2 of 2 here");
    click(hand, 0, 1);
    EXPECT_EQ(selection, (Items{one})) << "and round again";
}

TEST_F(Choice, TabGoesUnderneathWhereTheHandPressedLast) {
    const auto under = put("phase-line", {at(-200, 2), at(200, 2)});
    EXPECT_FALSE(hand.underneath(ground(), 1));
    click(hand, 0, 1);
    EXPECT_EQ(hand.underneath(ground(), 1), under);
    EXPECT_EQ(hand.underneath(ground(), -1), under);
    tell(hand, {Kind::Move, at(60, 60)});
    EXPECT_FALSE(hand.underneath(ground(), 1)) << "the hand has gone elsewhere";
}

TEST_F(Choice, TheMenusPressDisturbsNothingThatIsChosen) {
    selection = {one, two};
    tell(hand, {Kind::Press, at(100, 0)});
    tell(hand, {Kind::Release, at(100, 0)});
    EXPECT_EQ(selection, (Items{one, two}));
    selection = {one};
    put("phase-line", {at(-200, 2), at(200, 2)});
    tell(hand, {Kind::Press, at(0, 1)});
    tell(hand, {Kind::Release, at(0, 1)});
    EXPECT_EQ(selection, (Items{one}));
}

TEST_F(Choice, ADraggedPointLiesOnWhatItWasSnappedTo) {
    click(hand, 100, 0);
    tell(hand, {Kind::Press, at(103, 2), true});
    ASSERT_TRUE(hand.snaps());
    EXPECT_EQ(hand.snaps()->inHand->item, two);
    tell(hand, {Kind::Move, at(400, 300), true, false, false, true});
    EXPECT_EQ(draft->measure(two)->points.front(), at(400, 300));
    tell(hand, {Kind::Move, at(403, 302), true});
    EXPECT_EQ(draft->measure(two)->points.front(), at(400, 300)) << "else as far on as the hand went";
    tell(hand, {Kind::Cancel, {}});
    EXPECT_FALSE(hand.snaps());
}

TEST_F(Choice, CancelGivesABoxUp) {
    selection = {line};
    tell(hand, {Kind::Press, at(-50, -50), true, true});
    EXPECT_TRUE(hand.isBusy());
    tell(hand, {Kind::Move, at(150, 50), true, true});
    EXPECT_EQ(hand.wet().line.size(), 5U);
    tell(hand, {Kind::Cancel, {}});
    EXPECT_FALSE(hand.isBusy());
    EXPECT_EQ(selection, (Items{line}));
}

}  // namespace
}  // namespace crosstick::tools
