#include "core/drawing/drawing.h"

#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include "core/drawing/text_ruler.h"
#include "tests/drawing/random_lines.h"

namespace crosstick::drawing {
namespace {

using testing::kSeeds;
using testing::RandomLines;

Drawing randomDrawing(RandomLines& random) {
    Drawing drawing;
    for (int n = 1 + random.below(6); n > 0; --n) {
        switch (random.below(3)) {
            case 0:
                drawing.marks.emplace_back(Stroke{{{random.line(), false}, {random.ring(), true}},
                                                  random.between(0.25, 0.7),
                                                  Ink::Blue,
                                                  Join::Round,
                                                  Cap::Butt});
                break;
            case 1:
                drawing.marks.emplace_back(Fill{{random.ring(), random.ring()}, Ink::Red});
                break;
            default:
                drawing.marks.emplace_back(
                    Text{"PL FLINT", random.point(40), Degrees(random.between(-90, 90)), random.between(1.8, 3)});
        }
    }
    return drawing;
}

void expectNear(const Box& got, const Box& wanted) {
    EXPECT_NEAR(got.left, wanted.left, 1e-9);
    EXPECT_NEAR(got.top, wanted.top, 1e-9);
    EXPECT_NEAR(got.right, wanted.right, 1e-9);
    EXPECT_NEAR(got.bottom, wanted.bottom, 1e-9);
}

TEST(Drawing, MovedTwiceIsMovedByTheSum) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        // Eighths of a millimetre and binary places add exactly, so that the two can be compared as they are.
        const Vector a{static_cast<double>(random.below(400)) / 8, static_cast<double>(random.below(400)) / 8};
        const Vector b{-static_cast<double>(random.below(400)) / 8, static_cast<double>(random.below(400)) / 8};
        const Drawing drawing = randomDrawing(random);
        expectNear(extent(moved(moved(drawing, a), b)), extent(moved(drawing, a + b)));
        EXPECT_EQ(moved(drawing, {0, 0}), drawing);
    }
}

TEST(Drawing, ExtentMovesWithItAndHoldsWhatWasAppended) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        Drawing drawing = randomDrawing(random);
        const Box box = extent(drawing);
        const Vector by = random.point(100);
        expectNear(extent(moved(drawing, by)), {box.left + by.x, box.top + by.y, box.right + by.x, box.bottom + by.y});
        const Drawing more = randomDrawing(random);
        drawing.append(more);
        expectNear(extent(drawing), box.joined(extent(more)));
        EXPECT_TRUE(extent(drawing).contains(box));
    }
}

// By hand: half a pen of 0.4 round the line; the row's advances along and the capital's height above the base line.
TEST(Drawing, ExtentIsThatOfTheInk) {
    Drawing line;
    line.marks.emplace_back(Stroke{{{{{1, 2}, {5, 2}}, false}}, 0.4});
    expectNear(extent(line), {0.8, 1.8, 5.2, 2.2});
    Drawing level;
    level.marks.emplace_back(Text{"CCP", {10, 20}, Degrees(0), 2.0});
    expectNear(extent(level), {10, 18, 10 + textWidth("CCP", 2.0), 20.5});
    Drawing upward;
    upward.marks.emplace_back(Text{"CCP", {10, 20}, Degrees(90), 2.0});
    expectNear(extent(upward), {8, 20 - textWidth("CCP", 2.0), 10.5, 20});
    EXPECT_TRUE(extent({}).isEmpty());
    Drawing nothing;
    nothing.marks.emplace_back(Stroke{});
    EXPECT_TRUE(extent(nothing).isEmpty());
}

// The form that the goldens are kept in.
TEST(Drawing, IsDescribedInOneLineAMark) {
    Drawing drawing;
    drawing.marks.emplace_back(
        Stroke{{{{{0, 0}, {1.25, -2}}, false}, {{{0, 0}, {1, 0}, {0, 1}}, true}}, 0.4, Ink::Blue, Join::Round});
    drawing.marks.emplace_back(Fill{{{{0, 0}, {1, 0}, {0, 1}}}, Ink::Red});
    drawing.marks.emplace_back(Text{"PL \"A\"", {3, 4}, Degrees(-12.3456), 2.0, Weight::Bold, Ink::Black, Halo::Paper});
    EXPECT_EQ(describe(drawing),
              "stroke blue 0.400 round butt open 0.000 0.000 1.250 -2.000 closed 0.000 0.000 1.000 0.000 0.000 1.000\n"
              "fill red ring 0.000 0.000 1.000 0.000 0.000 1.000\n"
              "text black 3.000 4.000 -12.346 2.000 bold halo \"PL \"A\"\"\n");
    EXPECT_EQ(describe({}), "");
}

TEST(Drawing, DescriptionHasNoNegativeNothing) {
    Drawing drawing;
    drawing.marks.emplace_back(Fill{{{{-1e-9, 0}, {-0.0, -0.0004}}}, Ink::Black});
    EXPECT_EQ(describe(drawing), "fill black ring 0.000 0.000 0.000 0.000\n");
}

TEST(Box, EmptyOneAddsNothingAndStaysEmpty) {
    const Box some{1, 2, 3, 4};
    EXPECT_EQ(some.joined({}), some);
    EXPECT_EQ(Box{}.joined(some), some);
    EXPECT_TRUE(Box{}.grown(5).isEmpty());
    EXPECT_TRUE(some.contains(Box{}));
    EXPECT_FALSE(some.meets(Box{}));
    EXPECT_TRUE(some.grown(-1.5).isEmpty());
}

TEST(Box, JoinedHoldsBothAndMeetingIsMutual) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const auto box = [&] {
            const Point p = random.point(10);
            return Box{p.x, p.y, p.x + random.between(0, 8), p.y + random.between(0, 8)};
        };
        const Box a = box();
        const Box b = box();
        EXPECT_TRUE(a.joined(b).contains(a));
        EXPECT_TRUE(a.joined(b).contains(b));
        EXPECT_EQ(a.meets(b), b.meets(a));
        EXPECT_EQ(a.meets(b), a.grown(-1e-12).meets(b));
        EXPECT_TRUE(a.grown(1).contains(a));
    }
}

TEST(Gauge, ThinPenIsNeverUnderAQuarter) {
    EXPECT_EQ((Gauge{.pen = 0.25}.thin()), 0.25);
    EXPECT_EQ((Gauge{.pen = 0.40}.thin()), 0.25);
    EXPECT_NEAR((Gauge{.pen = 0.70}.thin()), 0.42, 1e-12);
}

}  // namespace
}  // namespace crosstick::drawing
