// Where cards stand on the rail rolled down.
#include "ui/phases/board_layout.h"

#include <random>

#include <gtest/gtest.h>

namespace crosstick::phases {
namespace {

TEST(BoardLayout, AtTheLaptopsWidthFourPhasesStandAsDrawn) {
    const BoardLayout layout(1366, 4, 0);
    EXPECT_TRUE(layout.hasRoom());
    EXPECT_EQ(layout.seen(), 4);
    EXPECT_EQ(layout.head(0).left(), 126);
    EXPECT_EQ(layout.card({0, 3}, 0).right() + 1, 1174);
    EXPECT_EQ(layout.card({1, 1}, 1).top(), BoardLayout::kCard + BoardLayout::kApart);
}

TEST(BoardLayout, SixFitAndOfMoreWholeColumnsAreSeen) {
    EXPECT_EQ(BoardLayout(1366, 6, 0).seen(), 6);
    const BoardLayout more(1366, 9, 99);
    EXPECT_EQ(more.seen(), 6);
    EXPECT_EQ(more.first(), 3) << "the last ones";
    EXPECT_TRUE(more.head(2).isNull());
    EXPECT_TRUE(more.card({0, 2}, 0).isNull());
    EXPECT_EQ(more.card({0, 4}, 0).left(), more.head(3).left()) << "cut where the columns begin";
    EXPECT_EQ(BoardLayout(683, 5, 0).seen(), 4) << "a narrow one shows fewer, and none too narrow to be read";
    EXPECT_EQ(BoardLayout(10, 5, 0).seen(), 1);
}

TEST(BoardLayout, AColumnIsFoundWhereItsHeadStands) {
    for (const int width : {683, 1000, 1366, 1920}) {
        const BoardLayout layout(width, 5, 1);
        for (int column = layout.first(); column < layout.first() + layout.seen(); ++column) {
            EXPECT_EQ(layout.columnAt(layout.head(column).center().x()), column);
            EXPECT_EQ(layout.columnAt(layout.head(column).right()), column);
        }
        EXPECT_EQ(layout.columnAt(-500), layout.first());
        EXPECT_EQ(layout.columnAt(99999), layout.first() + layout.seen() - 1);
    }
}

TEST(BoardRows, FilmsThatNeverLieTogetherShareARow) {
    EXPECT_EQ(rowsOf({{0, 3}, {0, 1}, {2, 2}, {3, 3}}), (std::vector{0, 1, 1, 1}));
    EXPECT_EQ(rowsOf({{0, 1}, {2, 3}, {0, 3}}), (std::vector{0, 0, 1}));
    EXPECT_EQ(rowsOf({}), std::vector<int>{});
}

TEST(BoardRows, SpanFromTheFirstToTheLastOfItsPhasesAndOverAllWithoutAny) {
    EXPECT_EQ(spanOf({2, 4}, {1, 2, 3, 4, 5}), (Span{1, 3}));
    EXPECT_EQ(spanOf({}, {1, 2, 3}), (Span{0, 2}));
    EXPECT_EQ(spanOf({9}, {1, 2, 3}), (Span{0, 2})) << "a phase that the plan has no more";
    EXPECT_EQ(spanOf({}, {}), (Span{0, 0}));
}

std::vector<Span> randomStack(std::mt19937& random) {
    std::vector<Span> stack(1 + random() % 8);
    for (Span& span : stack) {
        span.first = static_cast<int>(random() % 5);
        span.last = span.first + static_cast<int>(random() % 3);
    }
    return stack;
}

TEST(BoardRows, CardsOfARowShareNoColumnAndTheStackGoesUpward) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    for (int round = 0; round < 500; ++round) {
        const std::vector<Span> stack = randomStack(random);
        const std::vector<int> rows = rowsOf(stack);
        for (std::size_t a = 0; a < stack.size(); ++a) {
            for (std::size_t b = a + 1; b < stack.size(); ++b) {
                if (stack[a].meets(stack[b])) {
                    EXPECT_LT(rows[a], rows[b]);
                }
            }
        }
    }
}

TEST(BoardRows, ACardLetGoInItsOwnRowStaysAndOneLetGoFarOffGoesToTheEnd) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    for (int round = 0; round < 500; ++round) {
        const std::vector<Span> stack = randomStack(random);
        const std::size_t card = random() % stack.size();
        const auto meeting = [&](std::size_t place) {  // how many that it meets lie under it there
            std::vector<Span> others = stack;
            others.erase(others.begin() + static_cast<std::ptrdiff_t>(card));
            int count = 0;
            for (std::size_t n = 0; n < place; ++n) {
                count += others[n].meets(stack[card]) ? 1 : 0;
            }
            return count;
        };
        const int all = meeting(stack.size() - 1);
        EXPECT_EQ(meeting(placeOver(stack, card, 99)), all);
        EXPECT_EQ(meeting(placeOver(stack, card, -1)), 0);
        EXPECT_LE(placeOver(stack, card, static_cast<int>(random() % 9)), stack.size() - 1);
    }
    EXPECT_EQ(placeOver({{0, 3}, {0, 1}, {2, 2}}, 1, 1), 1U) << "its own row";
    EXPECT_EQ(placeOver({{0, 3}, {0, 1}, {2, 2}}, 0, 2), 2U) << "over both that it meets";
    EXPECT_EQ(placeOver({{0, 3}, {0, 1}, {2, 2}}, 1, 0), 0U);
    EXPECT_EQ(placeOver({{0, 0}, {1, 1}, {2, 2}}, 1, 5), 1U) << "it meets none: nothing changes";
}

}  // namespace
}  // namespace crosstick::phases
