#include "core/film/placement.h"

#include <random>

#include <gtest/gtest.h>

namespace crosstick::film {
namespace {

using drawing::Box;

const Size kBlock{94, 36};
const Size kLevel{100.4, 5.2};
const Size kUpright{5.2, 100.4};
const Size kNorth{28, 30};

PiecesToPlace pieces(Size window) {
    return {window, kBlock, kLevel, kUpright, kNorth, {18, 3.75}, {25, 4}, {}};
}

std::vector<Box> furniture(const Places& places) {
    return {places.block,      places.levelBar,    places.uprightBar, places.north,
            places.topMarking, places.footMarking, places.notches};
}

void expectSound(const Places& places, const Paper& paper, Size window) {
    const Box usable{6, 6, paper.width.value() - 6, paper.height.value() - 6};
    EXPECT_TRUE(usable.contains(Box{places.windowAt.x, places.windowAt.y, places.windowAt.x + window.width,
                                    places.windowAt.y + window.height}));
    const auto boxes = furniture(places);
    for (std::size_t a = 0; a < boxes.size(); ++a) {
        EXPECT_TRUE(usable.contains(boxes[a])) << a;
        for (std::size_t b = a + 1; b < boxes.size(); ++b) {
            EXPECT_FALSE(boxes[a].meets(boxes[b])) << a << ' ' << b;
        }
    }
}

// Scenario 4: on A3 upright the block stands below the window of 268 x 332 mm.
TEST(Placement, BlockStandsBelowTheScenariosWindow) {
    const Size window{268, 332};
    const Occupancy drawn({0, 0, window.width, window.height}, {});
    const Paper a3{PaperMm(297), PaperMm(420)};
    const auto places = placeOn(a3, pieces(window), drawn);
    ASSERT_TRUE(places.has_value());
    expectSound(*places, a3, window);
    EXPECT_EQ(places->inside, 0);
    EXPECT_GT(places->block.top, places->windowAt.y + window.height);
    EXPECT_FALSE(placeOn({PaperMm(210), PaperMm(297)}, pieces(window), drawn).has_value());
    EXPECT_FALSE(placeOn({PaperMm(297), PaperMm(210)}, pieces(window), drawn).has_value());
}

TEST(Placement, BlockStandsBesideAWindowThatLeavesNoRoomBelow) {
    const Size window{250, 265};
    const Occupancy drawn({0, 0, window.width, window.height}, {});
    const Paper a3{PaperMm(420), PaperMm(297)};
    const auto places = placeOn(a3, pieces(window), drawn);
    ASSERT_TRUE(places.has_value());
    expectSound(*places, a3, window);
    EXPECT_EQ(places->inside, 0);
    EXPECT_GT(places->block.left, places->windowAt.x + window.width);
}

TEST(Placement, BlockInsideGoesToTheFreeCorner) {
    const Size window{280, 390};
    // Everything is drawn in the right half.
    std::vector<std::vector<drawing::Point>> lines;
    for (double y = 0; y <= 390; y += 2) {
        lines.push_back({{150, y}, {280, y}});
    }
    const Occupancy drawn({0, 0, window.width, window.height}, lines);
    const Paper a3{PaperMm(297), PaperMm(420)};
    const auto places = placeOn(a3, pieces(window), drawn);
    ASSERT_TRUE(places.has_value());
    expectSound(*places, a3, window);
    EXPECT_EQ(places->clashes, 0);
    EXPECT_LT(places->block.right, places->windowAt.x + 150);
}

TEST(Placement, LeastPaperHoldsTheWindowAndNothingLessDoes) {
    const unsigned seed = 3;
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> side(120, 400);
    for (int n = 0; n < 20; ++n) {
        const Size window{side(random), side(random)};
        const Occupancy drawn({0, 0, window.width, window.height}, {});
        const Paper least = leastPaperFor(window);
        const auto places = placeOn(least, pieces(window), drawn);
        ASSERT_TRUE(places.has_value()) << window.width << ' ' << window.height;
        expectSound(*places, least, window);
        EXPECT_FALSE(placeOn({least.width - PaperMm(1), least.height}, pieces(window), drawn).has_value());
        EXPECT_FALSE(placeOn({least.width, least.height - PaperMm(1)}, pieces(window), drawn).has_value());
    }
}

TEST(Occupancy, CountsCellsThatLinesRunThrough) {
    const Occupancy drawn({0, 0, 100, 50}, {{{10.5, 10.5}, {19.5, 10.5}}, {{-500, 40.2}, {500, 40.2}}});
    EXPECT_EQ(drawn.within({0, 0, 100, 30}), 10);
    EXPECT_EQ(drawn.within({0, 30, 100, 50}), 100);
    EXPECT_EQ(drawn.within({12, 10, 14, 11}), 2);
    EXPECT_EQ(drawn.within({50, 0, 100, 30}), 0);
    EXPECT_EQ(drawn.within({}), 0);
    EXPECT_EQ(drawn.within({-100, -100, 300, 300}), 110);
}

}  // namespace
}  // namespace crosstick::film
