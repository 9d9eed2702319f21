#include "core/drawing/path.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include <gtest/gtest.h>

#include "tests/drawing/random_lines.h"

namespace crosstick::drawing {
namespace {

using testing::kSeeds;
using testing::RandomLines;

constexpr double kTiny = 1e-9;

double lengthOf(const Points& points) {
    double sum = 0;
    for (std::size_t n = 1; n < points.size(); ++n) {
        sum += length(points[n] - points[n - 1]);
    }
    return sum;
}

void expectNear(Point got, Point wanted, double tolerance) {
    EXPECT_NEAR(got.x, wanted.x, tolerance);
    EXPECT_NEAR(got.y, wanted.y, tolerance);
}

// By hand: right 3, then down 4.
TEST(Path, HasTheArcLengthsOfItsVertices) {
    const Path path({{0, 0}, {3, 0}, {3, 4}});
    EXPECT_EQ(path.length(), 7);
    EXPECT_EQ(path.position(1), 3);
    EXPECT_EQ(path.at(5), (Point{3, 2}));
    EXPECT_EQ(path.chord(3, 4), unit(Point{3, 2} - Point{1, 0}));
    EXPECT_NEAR(path.turning(0, 7), std::numbers::pi / 2, kTiny);
}

TEST(Path, ClosedOneReturnsToItsFirstPointOnce) {
    EXPECT_EQ(Path({{0, 0}, {3, 0}, {3, 4}}, true).length(), 12);
    EXPECT_EQ(Path({{0, 0}, {3, 0}, {3, 4}, {0, 0}}, true).points().size(), 4U);
}

TEST(Path, WithoutPointsOrLengthAnswersStill) {
    EXPECT_EQ(Path({}).length(), 0);
    EXPECT_EQ(Path({}).at(3), (Point{0, 0}));
    EXPECT_EQ(Path({{2, 1}}).at(3), (Point{2, 1}));
    EXPECT_EQ(Path({{2, 1}}).chord(0, 2), (Vector{0, 0}));
    EXPECT_TRUE(inside(Path({{2, 1}}), {0, 0, 5, 5}).empty());
}

TEST(Path, PlacesOutsideAreTheNearerEnd) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const Path path(random.line());
        EXPECT_EQ(path.at(-random.between(0, 9)), path.points().front());
        EXPECT_EQ(path.at(path.length() + random.between(0, 9)), path.points().back());
    }
}

TEST(Path, EveryPlaceLiesOnTheLineAtItsLength) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const Path path(random.line());
        const double s = random.between(0, path.length());
        EXPECT_LT(testing::distance(path.at(s), path.points()), kTiny);
        EXPECT_NEAR(lengthOf(path.between(0, s)), s, kTiny);
        EXPECT_NEAR(length(path.chord(s, 2)), 1, kTiny);
    }
}

TEST(Path, PiecesBetweenAddUpToTheWhole) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const Path path(random.line());
        const double s = random.between(0, path.length());
        const Points first = path.between(0, s);
        const Points second = path.between(s, path.length());
        EXPECT_EQ(first.back(), second.front());
        EXPECT_NEAR(lengthOf(first) + lengthOf(second), path.length(), kTiny);
        EXPECT_NEAR(path.turning(0, s) + path.turning(s, path.length()), path.turning(0, path.length()), kTiny);
    }
}

TEST(Path, BackwardsItHasTheSamePlacesAndTurns) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        Points line = random.line();
        const Path path(line);
        std::reverse(line.begin(), line.end());
        const Path back(line);
        const double s = random.between(0, path.length());
        expectNear(back.at(path.length() - s), path.at(s), kTiny);
        EXPECT_NEAR(back.turning(0, back.length()), path.turning(0, path.length()), kTiny);
    }
}

TEST(Cleaned, KeepsNoPointThatIsNotFiniteOrNearerThanTheLeast) {
    constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
    const Points given{{kNone, 0}, {0, 0}, {0.04, 0}, {0.049, 0}, {0.06, 0}, {1, kNone}, {1, 0}, {1, 0}};
    EXPECT_EQ(cleaned(given), (Points{{0, 0}, {0.06, 0}, {1, 0}}));
    EXPECT_TRUE(cleaned(Points{{kNone, kNone}}).empty());
}

TEST(Turn, IsLeftNegativeOnThePageThatRunsDown) {
    EXPECT_NEAR(turn({1, 0}, leftOf({1, 0})), -std::numbers::pi / 2, kTiny);
    EXPECT_EQ(leftOf({1, 0}), (Vector{0, -1}));  // up
}

// A place is inside when the oracle, which samples the line, says so.
TEST(Inside, AgreesWithSamplingTheLine) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const Path path(random.line());
        const Box box = Box{0, 0, 0, 0}.grown(random.between(10, 50));
        const auto stretches = inside(path, box);
        for (int n = 0; n <= 500; ++n) {
            const double s = path.length() * n / 500;
            const bool found = std::any_of(stretches.begin(), stretches.end(),
                                           [&](const Stretch& one) { return s >= one.from && s <= one.to; });
            if (found) {
                EXPECT_TRUE(box.grown(1e-6).contains(path.at(s))) << s;
            } else {
                EXPECT_FALSE(box.grown(-1e-6).contains(path.at(s))) << s;
            }
        }
        for (std::size_t n = 1; n < stretches.size(); ++n) {
            EXPECT_LT(stretches[n - 1].to, stretches[n].from);
        }
    }
}

// By hand.
TEST(Without, CutsGapsOutAndDropsCrumbs) {
    const auto left = without({{0, 10}, {20, 30}}, {{4, 6}, {9.97, 21}, {29.96, 40}});
    ASSERT_EQ(left.size(), 3U);
    EXPECT_EQ(left[0].to, 4);
    EXPECT_EQ(left[1].from, 6);
    EXPECT_EQ(left[1].to, 9.97);
    EXPECT_EQ(left[2].from, 21);
    EXPECT_TRUE(without({{0, 0.04}}, {}).empty());
    EXPECT_TRUE(without({{1, 2}}, {{0, 3}}).empty());
}

TEST(Without, LeavesNeitherGapNorOverlapAndForgetsNothing) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        std::vector<Stretch> gaps;
        for (int n = random.below(5); n > 0; --n) {
            const double from = random.between(-10, 100);
            gaps.push_back({from, from + random.between(0.1, 20)});
        }
        const auto left = without({{0, 100}}, gaps);
        for (int n = 0; n <= 1000; ++n) {
            const double s = n / 10.0;
            const auto holds = [&](const Stretch& one) { return s > one.from + 0.05 && s < one.to - 0.05; };
            const auto touches = [&](const Stretch& one) { return s >= one.from - 0.05 && s <= one.to + 0.05; };
            const bool gone = std::any_of(gaps.begin(), gaps.end(), holds);
            EXPECT_FALSE(gone && std::any_of(left.begin(), left.end(), holds)) << s;
            EXPECT_TRUE(std::any_of(gaps.begin(), gaps.end(), touches) ||
                        std::any_of(left.begin(), left.end(), touches))
                << s;
        }
    }
}

TEST(Clipped, StaysInsideAndLosesNothingThatIsInside) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const bool isRing = random.below(2) == 0;
        const Polyline line{isRing ? random.ring() : random.line(), isRing};
        const Box box = Box{0, 0, 0, 0}.grown(random.between(8, 40));
        double kept = 0;
        for (const Polyline& part : clipped(line, box)) {
            for (const Point p : part.points) {
                EXPECT_TRUE(box.grown(1e-9).contains(p));
            }
            kept += Path(part.points, part.closed).length();
        }
        double wanted = 0;
        for (const Stretch& one : inside(Path(line.points, line.closed), box)) {
            wanted += one.length();
        }
        EXPECT_NEAR(kept, wanted, 1e-6);
    }
}

TEST(Clipped, WhatIsWhollyInsideComesBackAsItWas) {
    const Polyline ring{{{1, 1}, {5, 1}, {3, 4}}, true};
    EXPECT_EQ(clipped(ring, {0, 0, 9, 9}), std::vector{ring});
    EXPECT_TRUE(clipped(ring, {20, 20, 29, 29}).empty());
}

// The corner at a ring's first vertex must stay one piece, or its mitre is lost where only another side is cut.
TEST(Clipped, ClosedLineKeepsTheCornerAtItsFirstVertex) {
    const auto parts = clipped({{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, true}, {-5, -5, 20, 5});
    ASSERT_EQ(parts.size(), 1U);
    EXPECT_EQ(parts.front().points, (Points{{0, 5}, {0, 0}, {10, 0}, {10, 5}}));
    EXPECT_FALSE(parts.front().closed);
}

// By hand: right angle, mitre at (1 + 1, 1 + 1) outside a left turn.
TEST(Offset, RunsParallelWithMitres) {
    EXPECT_EQ(offset({{0, 0}, {4, 0}}, 1), (Points{{0, -1}, {4, -1}}));
    const Points corner = offset({{0, 0}, {4, 0}, {4, 4}}, 1);
    ASSERT_EQ(corner.size(), 3U);
    expectNear(corner[1], {5, -1}, kTiny);
    expectNear(corner[2], {5, 4}, kTiny);
    const Points ring = offset({{0, 0}, {4, 0}, {4, 4}, {0, 4}}, 1, true);
    expectNear(ring[0], {-1, -1}, kTiny);
    expectNear(ring[2], {5, 5}, kTiny);
}

TEST(Offset, NeverReachesFartherThanTheMitreLimit) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const Points line = random.line();
        const double by = random.between(-3, 3);
        const Points beside = offset(line, by);
        EXPECT_GE(beside.size(), line.size());
        for (const Point p : beside) {
            EXPECT_LE(testing::distance(p, line), 2.85 * std::abs(by) + kTiny);
        }
    }
}

TEST(Offset, OfAGentleLineIsEverywhereAtItsDistance) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const Points line = random.bending(0.4);
        const double by = random.between(-0.4, 0.4);
        const Path beside(offset(line, by));
        for (std::size_t n = 0; n + 1 < line.size(); ++n) {
            const Point middle = (beside.points()[n] + beside.points()[n + 1]) * 0.5;
            const Vector u = unit(line[n + 1] - line[n]);
            EXPECT_NEAR(dot(middle - line[n], leftOf(u)), by, kTiny);
        }
    }
}

TEST(Offset, BackwardsToTheOtherSideIsTheSameLine) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        Points line = random.line();
        const Points there = offset(line, 0.6);
        std::reverse(line.begin(), line.end());
        Points back = offset(line, -0.6);
        std::reverse(back.begin(), back.end());
        ASSERT_EQ(there.size(), back.size());
        for (std::size_t n = 0; n < there.size(); ++n) {
            expectNear(there[n], back[n], 1e-7);
        }
    }
}

}  // namespace
}  // namespace crosstick::drawing
