#include "symbols/pole.h"

#include <cmath>
#include <numbers>
#include <random>

#include <gtest/gtest.h>

#include "core/drawing/path.h"

namespace crosstick::symbols {
namespace {

bool isInside(const Points& ring, Point p) {
    int winding = 0;
    for (std::size_t n = 0; n < ring.size(); ++n) {
        const Point a = ring[n];
        const Point b = ring[(n + 1) % ring.size()];
        if ((a.y <= p.y) != (b.y <= p.y)) {
            const double x = a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y);
            winding += x > p.x ? 1 : 0;
        }
    }
    return winding % 2 == 1;
}

double toEdge(const Points& ring, Point p) {
    double nearest = 1e9;
    for (std::size_t n = 0; n < ring.size(); ++n) {
        const Point a = ring[n];
        const Vector along = ring[(n + 1) % ring.size()] - a;
        const double square = dot(along, along);
        const double t = square > 0 ? std::clamp(dot(p - a, along) / square, 0.0, 1.0) : 0;
        nearest = std::min(nearest, drawing::length(p - (a + along * t)));
    }
    return nearest;
}

TEST(Pole, OfALongRectangleIsItsMiddle) {
    const Point pole = poleOf({{10, 20}, {70, 20}, {70, 32}, {10, 32}});
    EXPECT_NEAR(pole.x, 40, 1e-9);
    EXPECT_NEAR(pole.y, 26, 1e-9);
}

TEST(Pole, OfAHookLiesInItAndNotAtItsCentroid) {
    const Points hook{{0, 0}, {40, 0}, {40, 6}, {14, 6}, {14, 40}, {0, 40}};
    const Point pole = poleOf(hook);
    EXPECT_TRUE(isInside(hook, pole));
    EXPECT_GE(toEdge(hook, pole), 6.9);
}

TEST(Pole, OfARingThatCrossesItselfLiesInOneOfItsHalves) {
    const Points bow{{0, 0}, {30, 20}, {30, 0}, {0, 20}};
    const Point pole = poleOf(bow);
    EXPECT_TRUE(isInside(bow, pole));
    EXPECT_GT(toEdge(bow, pole), 3);
}

TEST(Pole, OfFewerThanThreePointsIsTheirMean) {
    EXPECT_EQ(poleOf({{4, 6}}), (Point{4, 6}));
    EXPECT_EQ(poleOf({{4, 6}, {8, 6}}), (Point{6, 6}));
}

TEST(Pole, OfWhatHasNoAreaIsFinite) {
    for (const Points& ring : {Points{{0, 0}, {10, 0}, {20, 0}}, Points{{5, 5}, {5, 5}, {5, 5}},
                               Points{{0, 0}, {4000, 4000}, {4000, 4000.01}}}) {
        EXPECT_TRUE(drawing::isFinite(poleOf(ring)));
    }
}

// Slow oracle: every point of a grid 0.25 mm apart; the depth may be less by what both leave out.
TEST(Pole, IsAsDeepAsTheDeepestPointOfAFineGrid) {
    const unsigned seed = std::random_device{}();
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> reach(4, 30);
    for (int round = 0; round < 30; ++round) {
        Points ring;
        const int corners = 3 + round % 9;
        for (int n = 0; n < corners; ++n) {
            const double turn = 2 * std::numbers::pi * n / corners;
            const double far = reach(random);
            ring.push_back({50 + far * std::cos(turn), 50 + far * std::sin(turn)});
        }
        double deepest = 0;
        for (int column = 0; column < 240; ++column) {
            for (int row = 0; row < 240; ++row) {
                const Point p{20 + column * 0.25, 20 + row * 0.25};
                deepest = isInside(ring, p) ? std::max(deepest, toEdge(ring, p)) : deepest;
            }
        }
        const Point pole = poleOf(ring);
        EXPECT_TRUE(isInside(ring, pole)) << round;
        EXPECT_GE(toEdge(ring, pole), deepest - 0.1) << round;
    }
}

}  // namespace
}  // namespace crosstick::symbols
