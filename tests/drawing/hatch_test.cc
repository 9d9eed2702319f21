#include "core/drawing/hatch.h"

#include <cmath>
#include <numbers>
#include <random>

#include <gtest/gtest.h>

#include "tests/drawing/random_lines.h"

namespace crosstick::drawing {
namespace {

Points star(std::mt19937& random, Point middle) {
    std::uniform_real_distribution<double> radius(5, 30);
    Points ring;
    for (int n = 0; n < 9; ++n) {
        const double turn = 2 * std::numbers::pi * n / 9;
        ring.push_back(middle + Vector{std::cos(turn), std::sin(turn)} * radius(random));
    }
    return ring;
}

double toEdge(const Points& ring, Point p) {
    Points closed = ring;
    closed.push_back(ring.front());
    return testing::distance(p, closed);
}

TEST(Hatch, LawStaysInsideClearOfTheEdgeAtEvenPlaces) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    for (int round = 0; round < 100; ++round) {
        const Points ring = star(random, {50.0, 40.0});
        for (const Polyline& line : hatched(ring, {.angle = Degrees(45)}, {})) {
            for (const Point p : line.points) {
                EXPECT_GE(toEdge(ring, p), 0.6 - 1e-6);
            }
            // Rising to the right through multiples of the pitch from the origin.
            const Vector u = unit(line.points[1] - line.points[0]);
            EXPECT_NEAR(std::abs(u.x), std::numbers::sqrt2 / 2, 1e-9);
            EXPECT_NEAR(u.x, -u.y, 1e-9);
            const double place = (line.points[0].x + line.points[0].y) / std::numbers::sqrt2 / 2.5;
            EXPECT_NEAR(place, std::round(place), 1e-6);
        }
    }
}

TEST(Hatch, LawMovedByWholePitchesItIsTheSame) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    const Vector by{5 * std::numbers::sqrt2 * 2.5 / 2, 5 * std::numbers::sqrt2 * 2.5 / 2};
    for (int round = 0; round < 30; ++round) {
        const Points ring = star(random, {20, 20});
        Points moved;
        for (const Point p : ring) {
            moved.push_back(p + by);
        }
        const auto a = hatched(ring, {.angle = Degrees(45)}, {});
        const auto b = hatched(moved, {.angle = Degrees(45)}, {});
        ASSERT_EQ(a.size(), b.size());
        for (std::size_t n = 0; n < a.size(); ++n) {
            EXPECT_LT(length(a[n].points[0] + by - b[n].points[0]), 1e-6);
        }
    }
}

TEST(Hatch, LeavesALabelClear) {
    const Points ring{{0, 0}, {60, 0}, {60, 40}, {0, 40}};
    const TurnedBox label{{30, 20}, 16, 6, Degrees(0)};
    for (const double angle : {45.0, 135.0}) {
        for (const Polyline& line : hatched(ring, {.angle = Degrees(angle)}, {label})) {
            EXPECT_FALSE(label.grown(-1e-6).meets(line.points[0], line.points[1]));
        }
    }
}

TEST(Hatch, ANarrowAreaHasALineThroughItsMiddle) {
    for (const double off : {0.0, 0.6, 1.3, 2.1}) {
        const Points ring{{off, off}, {30 + off, off - 30}, {32 + off, off - 28}, {2 + off, 2 + off}};
        EXPECT_FALSE(hatched(ring, {.angle = Degrees(45)}, {}).empty()) << off;
    }
}

TEST(Comb, TicksPointInwardAndStandClearOfCorners) {
    for (const bool backwards : {false, true}) {
        Points ring{{0, 0}, {60, 0}, {60, 40}, {0, 40}};
        if (backwards) {
            std::reverse(ring.begin(), ring.end());
        }
        const auto ticks = combed(ring, 1.5, 3.0);
        EXPECT_GT(ticks.size(), 50U);
        for (const Polyline& tick : ticks) {
            EXPECT_NEAR(length(tick.points[1] - tick.points[0]), 1.5, 1e-9);
            const Point end = tick.points[1];
            EXPECT_TRUE(end.x > 0 && end.x < 60 && end.y > 0 && end.y < 40);
            for (const Point corner : ring) {
                EXPECT_GE(length(tick.points[0] - corner), 2.2 - 1e-9);
            }
        }
    }
}

TEST(Ray, LeavesARingWhereItIsFarthest) {
    const Points ring{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
    const auto right = leaves(ring, {4, 5}, {1, 0});
    ASSERT_TRUE(right);
    EXPECT_NEAR(right->far, 6, 1e-9);
    EXPECT_NEAR(right->along, 15, 1e-9);
    EXPECT_FALSE(leaves(ring, {20, 5}, {1, 0}));
    EXPECT_NEAR(leaves(ring, {5, 5}, unit({1, 1}))->far, std::hypot(5, 5), 1e-9) << "through a corner";
}

}  // namespace
}  // namespace crosstick::drawing
