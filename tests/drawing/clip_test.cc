#include "core/drawing/clip.h"

#include <string>

#include <gtest/gtest.h>

#include "core/drawing/path.h"
#include "tests/drawing/random_lines.h"

namespace crosstick::drawing {
namespace {

using testing::kSeeds;
using testing::RandomLines;

constexpr Box kBox{-20, -15, 20, 15};

Drawing drawingOf(const Mark& mark) {
    Drawing drawing;
    drawing.marks.push_back(mark);
    return drawing;
}

bool isInside(const Points& ring, Point p) {
    bool in = false;
    for (std::size_t n = 0; n < ring.size(); ++n) {
        const Point a = ring[n];
        const Point b = ring[(n + 1) % ring.size()];
        if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) {
            in = !in;
        }
    }
    return in;
}

// By hand: a square of 10 on the box's right edge keeps its left half.
TEST(ClippedDrawing, CutsFillsAndStrokesAndLeavesLettersAlone) {
    const Points square{{15, 0}, {25, 0}, {25, 10}, {15, 10}};
    Drawing drawing = drawingOf(Fill{{square}});
    drawing.marks.emplace_back(Stroke{{{{{0, 0}, {30, 0}}, false}}});
    drawing.marks.emplace_back(Text{"PL FLINT", {19, 0}, Degrees(0)});
    EXPECT_EQ(describe(clipped(drawing, kBox)),
              "fill black ring 15.000 0.000 20.000 0.000 20.000 10.000 15.000 10.000\n"
              "stroke black 0.400 miter butt open 0.000 0.000 20.000 0.000\n"
              "text black 19.000 0.000 0.000 2.000 regular \"PL FLINT\"\n");
}

TEST(ClippedDrawing, DropsWhatLiesOutsideAndKeepsWhatLiesInside) {
    const Drawing outside = drawingOf(Fill{{{{30, 0}, {40, 0}, {40, 9}}}});
    EXPECT_TRUE(clipped(outside, kBox).isEmpty());
    EXPECT_TRUE(clipped(drawingOf(Stroke{{{{{30, 0}, {40, 0}}, false}}}), kBox).isEmpty());
    const Drawing within = drawingOf(Fill{{{{0, 0}, {9, 0}, {9, 9}}}});
    EXPECT_EQ(clipped(within, kBox), within);
}

TEST(ClippedDrawing, FillsCoverWhatTheyCoveredInsideAndNothingElse) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const Points ring = random.ring();
        const Drawing cut = clipped(drawingOf(Fill{{ring}}), kBox);
        const Points left = cut.isEmpty() ? Points{} : std::get<Fill>(cut.marks.front()).rings.front();
        for (int n = 0; n < 200; ++n) {
            const Point p = random.point(30);
            if (kBox.grown(-1e-6).contains(p)) {
                EXPECT_EQ(isInside(left, p), isInside(ring, p));
            } else if (!kBox.grown(1e-6).contains(p)) {
                EXPECT_FALSE(isInside(left, p));
            }
        }
    }
}

// What lies on a drawing hides what is under it and nothing else: law over random lines.
TEST(CutAway, LeavesNoInkInTheBoxAndAllOfItOutside) {
    const Box box{40, 30, 90, 70};
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        testing::RandomLines random(seed);
        Points line;
        for (int n = 0; n < 8; ++n) {
            line.push_back({random.between(0, 130), random.between(0, 100)});
        }
        const double whole = Path(line).length();
        double covered = 0;
        for (const Stretch& stretch : inside(Path(line), box)) {
            covered += stretch.length();
        }
        const Drawing left = cutAway(Drawing{{Stroke{{{line, false}}}}}, box);
        double rest = 0;
        for (const Mark& mark : left.marks) {
            for (const Polyline& piece : std::get<Stroke>(mark).pieces) {
                rest += Path(piece.points).length();
                for (const Stretch& stretch : inside(Path(piece.points), box.grown(-1e-6))) {
                    EXPECT_LT(stretch.length(), 1e-5);
                }
            }
        }
        EXPECT_NEAR(rest, whole - covered, 0.06 * 8);  // pieces under 0.05 vanish
    }
}

TEST(CutAway, TakesFillsWhoseMiddleIsCoveredAndNoLetters) {
    const Box box{0, 0, 10, 10};
    const Drawing drawing{
        {Fill{{{{4, 4}, {6, 4}, {5, 6}}}}, Fill{{{{14, 4}, {16, 4}, {15, 6}}}}, Text{"A", {5, 5}, Degrees(0)}}};
    const Drawing left = cutAway(drawing, box);
    ASSERT_EQ(left.marks.size(), 2U);
    EXPECT_TRUE(std::holds_alternative<Text>(left.marks[1]));
}

}  // namespace
}  // namespace crosstick::drawing
