#include "core/drawing/dashes.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include <gtest/gtest.h>

#include "tests/drawing/random_lines.h"

namespace crosstick::drawing {
namespace {

using testing::kSeeds;
using testing::RandomLines;

constexpr double kTiny = 1e-9;
constexpr std::array<Dash, 3> kPatterns{kPlanned, kSmallOutline, kAlternateRoute};

double lengthOf(const Polyline& piece) {
    return Path(piece.points, piece.closed).length();
}

/// Is there ink on both sides of a vertex in one piece, so that the corner is mitred and not cut off?
bool isInkedThrough(const std::vector<Polyline>& pieces, Point corner) {
    for (const Polyline& piece : pieces) {
        const std::size_t first = piece.closed ? 0 : 1;
        const std::size_t last = piece.closed ? piece.points.size() : piece.points.size() - 1;
        for (std::size_t n = first; n < last; ++n) {
            if (length(piece.points[n] - corner) < 1e-7) {
                return true;
            }
        }
    }
    return false;
}

bool turnsSharply(Point before, Point at, Point after) {
    return std::abs(turn(at - before, after - at)) > std::numbers::pi / 6 + 1e-6;
}

/// Lengths of the ink and of the blanks along a line, found by walking it in steps of a hundredth of a millimetre.
struct Walk {
    std::vector<double> ink, blank;
};
Walk walk(const Path& path, const std::vector<Polyline>& pieces) {
    constexpr double kStep = 0.01;
    Walk found;
    bool inked = true;
    double since = 0;
    for (double s = 0; s <= path.length(); s += kStep) {
        const Point p = path.at(s);
        const bool on = std::any_of(pieces.begin(), pieces.end(),
                                    [&](const Polyline& piece) { return testing::distance(p, piece.points) < 1e-6; });
        if (on != inked) {
            (inked ? found.ink : found.blank).push_back(s - since);
            since = s;
            inked = on;
        }
    }
    (inked ? found.ink : found.blank).push_back(path.length() - since);
    return found;
}

// By hand: 12.0 = 3.0 + 1.5 + 3.0 + 1.5 + 3.0 exactly.
TEST(Dashes, FitALineThatHoldsThemExactly) {
    const auto pieces = dashed(Path({{0, 0}, {12, 0}}), kPlanned, CornerRule::UsersLine);
    ASSERT_EQ(pieces.size(), 3U);
    for (std::size_t n = 0; n < pieces.size(); ++n) {
        EXPECT_NEAR(pieces[n].points.front().x, 4.5 * static_cast<double>(n), kTiny);
        EXPECT_NEAR(pieces[n].points.back().x, 4.5 * static_cast<double>(n) + 3, kTiny);
    }
}

TEST(Dashes, OfAShortLineAreTheLineItself) {
    const Points shorter{{0, 0}, {4.4, 0}};
    EXPECT_EQ(dashed(Path(shorter), kPlanned, CornerRule::UsersLine), (std::vector{Polyline{shorter, false}}));
    const Points triangle{{0, 0}, {1, 0}, {0, 1}};
    EXPECT_EQ(dashed(Path(triangle, true), kPlanned, CornerRule::Outline), (std::vector{Polyline{triangle, true}}));
    EXPECT_TRUE(dashed(Path({}), kPlanned, CornerRule::UsersLine).empty());
}

TEST(Dashes, AreWithinTheScaleWhereTwoOfThemFit) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const Dash dash = kPatterns.at(seed % 3);
        const double size = random.between(2 * (dash.on + dash.off), 60);
        const auto pieces = dashed(Path({{0, 0}, {size, 0}}), dash, CornerRule::UsersLine);
        ASSERT_GE(pieces.size(), 2U);
        for (std::size_t n = 0; n < pieces.size(); ++n) {
            const double f = lengthOf(pieces[n]) / dash.on;
            EXPECT_GE(f, 0.7);
            EXPECT_LE(f, 1.4);
            EXPECT_NEAR(f, lengthOf(pieces[0]) / dash.on, kTiny);
            if (n > 0) {
                EXPECT_NEAR((pieces[n].points.front().x - pieces[n - 1].points.back().x) / dash.off, f, kTiny);
            }
        }
    }
}

TEST(Dashes, InkBothFreeEnds) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const Points line = RandomLines(seed).line();
        const auto pieces = dashed(Path(line), kPatterns.at(seed % 3), CornerRule::UsersLine);
        EXPECT_EQ(pieces.front().points.front(), line.front());
        EXPECT_EQ(pieces.back().points.back(), line.back());
    }
}

// Between bends a dash follows the line; a bend never shortens it.
TEST(Dashes, AreEvenRoundGentleBends) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const Path path(RandomLines(seed).bending(0.5));
        if (path.length() < 2 * (kPlanned.on + kPlanned.off)) {
            continue;
        }
        const auto pieces = dashed(path, kPlanned, CornerRule::UsersLine);
        for (const Polyline& piece : pieces) {
            EXPECT_NEAR(lengthOf(piece), lengthOf(pieces.front()), 1e-7);
        }
    }
}

TEST(Dashes, InkEveryCornerOfAnOutline) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const Points ring = RandomLines(seed).ring();
        const auto pieces = dashed(Path(ring, true), kSmallOutline, CornerRule::Outline);
        for (std::size_t n = 0; n < ring.size(); ++n) {
            const Point before = ring[(n + ring.size() - 1) % ring.size()];
            if (turnsSharply(before, ring[n], ring[(n + 1) % ring.size()])) {
                EXPECT_TRUE(isInkedThrough(pieces, ring[n])) << "corner " << n;
            }
        }
    }
}

// Sides of 1.6 to 2.4 are too short for two half dashes and a gap: the ring is solid, and stays a ring.
TEST(Dashes, SmallSquaresKeepAllTheirCorners) {
    for (const double side : {1.6, 1.9, 2.07, 2.1, 2.4, 3.3}) {
        const Points square{{0, 0}, {side, 0}, {side, side}, {0, side}};
        const auto pieces = dashed(Path(square, true), kSmallOutline, CornerRule::Outline);
        for (const Point corner : square) {
            EXPECT_TRUE(isInkedThrough(pieces, corner)) << side << ": " << corner.x << ' ' << corner.y;
        }
    }
}

// A6.1: a user's corner counts where a dash and a gap lie before and behind it.
TEST(Dashes, InkAUsersCornerThatHasRoom) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const double turned = random.between(0.6, 2.5);
        const Point corner{random.between(5, 40), 0};
        const Point end = corner + Vector{std::cos(turned), std::sin(turned)} * random.between(5, 40);
        const auto pieces = dashed(Path({{0, 0}, corner, end}), kPlanned, CornerRule::UsersLine);
        EXPECT_TRUE(isInkedThrough(pieces, corner));
    }
}

TEST(Dashes, NeitherOverlapNorRunTogether) {
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const Path path(RandomLines(seed).bending(0.5));
        const auto pieces = dashed(path, kPlanned, CornerRule::UsersLine);
        const Walk found = walk(path, pieces);
        EXPECT_EQ(found.ink.size(), pieces.size());
        EXPECT_EQ(found.blank.size() + 1, found.ink.size());
    }
}

TEST(Dashes, OfARingWithoutCornersJoinAtTheFirstVertex) {
    Points circle;
    for (int n = 0; n < 48; ++n) {
        circle.push_back({20 * std::sin(n * std::numbers::pi / 24), 20 * std::cos(n * std::numbers::pi / 24)});
    }
    const auto pieces = dashed(Path(circle, true), kPlanned, CornerRule::UsersLine);
    ASSERT_GT(pieces.size(), 10U);
    EXPECT_TRUE(isInkedThrough(pieces, circle.front()));
    for (const Polyline& piece : pieces) {
        EXPECT_NEAR(lengthOf(piece), lengthOf(pieces.front()), 1e-7);
        EXPECT_NEAR(lengthOf(piece), 3, 0.2);
    }
}

// The same ink, whichever way a line was drawn: the same pieces, turned round.
TEST(Dashes, AreTheSameDrawnBackwards) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        Points line = RandomLines(seed).line();
        const auto there = dashed(Path(line), kPlanned, CornerRule::UsersLine);
        std::reverse(line.begin(), line.end());
        const auto back = dashed(Path(line), kPlanned, CornerRule::UsersLine);
        ASSERT_EQ(there.size(), back.size());
        for (std::size_t n = 0; n < there.size(); ++n) {
            const Polyline& other = back[back.size() - 1 - n];
            ASSERT_EQ(there[n].points.size(), other.points.size());
            EXPECT_LT(length(there[n].points.front() - other.points.back()), 1e-7);
            EXPECT_LT(length(there[n].points.back() - other.points.front()), 1e-7);
        }
    }
}

TEST(Dots, StandAtBothEndsAndAtAnEvenPitch) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const Path path(RandomLines(seed).bending(0.3));
        const auto dots = dotted(path, 1.2);
        EXPECT_LT(length(dots.front().points.front() - path.points().front()), kTiny);
        EXPECT_LT(length(dots.back().points.front() - path.points().back()), kTiny);
        const double pitch = path.length() / static_cast<double>(dots.size() - 1);
        EXPECT_NEAR(pitch, 1.2, 0.6);
        for (std::size_t n = 0; n < dots.size(); ++n) {
            EXPECT_LT(length(dots[n].points.front() - path.at(pitch * static_cast<double>(n))), 1e-7);
            EXPECT_EQ(dots[n].points.front(), dots[n].points.back());
        }
    }
}

TEST(Dots, OfNoLengthAreOneAndOfNothingNone) {
    EXPECT_EQ(dotted(Path({{2, 3}}), 1.2).size(), 1U);
    EXPECT_TRUE(dotted(Path({}), 1.2).empty());
}

}  // namespace
}  // namespace crosstick::drawing
