#include "core/drawing/occupancy.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include <gtest/gtest.h>

#include "tests/drawing/random_lines.h"

namespace crosstick::drawing {
namespace {

using testing::kSeeds;
using testing::RandomLines;

TurnedBox randomBox(RandomLines& random, double spread) {
    const Point middle = random.point(spread);
    const double width = random.between(1, 25);
    const double height = random.between(1, 6);
    return {middle, width, height, Degrees(random.below(3) == 0 ? 0 : random.between(-90, 90))};
}

bool holds(const TurnedBox& box, Point p) {
    const double turn = radians(box.angle).value();
    const Vector along{std::cos(turn), -std::sin(turn)};
    const Vector d = p - box.middle;
    return std::abs(dot(d, along)) <= box.width / 2 && std::abs(cross(d, along)) <= box.height / 2;
}

/// Do two boxes share ground? Slow: a net of points over one asked of the other, both ways.
bool shareGround(const TurnedBox& a, const TurnedBox& b) {
    constexpr int kSteps = 40;
    for (const auto& [one, other] : {std::pair{a, b}, std::pair{b, a}}) {
        const auto corners = one.corners();
        for (int i = 0; i <= kSteps; ++i) {
            for (int j = 0; j <= kSteps; ++j) {
                const Point p = corners[0] + (corners[1] - corners[0]) * (static_cast<double>(i) / kSteps) +
                                (corners[3] - corners[0]) * (static_cast<double>(j) / kSteps);
                if (holds(other, p)) {
                    return true;
                }
            }
        }
    }
    return false;
}

bool runsThrough(const TurnedBox& box, Point a, Point b) {
    for (int n = 0; n <= 4000; ++n) {
        if (holds(box, a + (b - a) * (n / 4000.0))) {
            return true;
        }
    }
    return false;
}

// The oracle is coarse: it may miss a sliver, so each answer is held against a slightly larger and a smaller box.
TEST(TurnedBoxes, MeetWhereTheyShareGround) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const TurnedBox a = randomBox(random, 12);
        const TurnedBox b = randomBox(random, 12);
        EXPECT_EQ(a.meets(b), b.meets(a));
        if (shareGround(a, b)) {
            EXPECT_TRUE(a.grown(0.01).meets(b));
        } else {
            EXPECT_FALSE(a.grown(-0.3).meets(b.grown(-0.3)));
        }
    }
}

TEST(TurnedBoxes, MeetALineThatRunsThroughThem) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const TurnedBox box = randomBox(random, 12);
        const Point a = random.point(25);
        const Point b = random.point(25);
        EXPECT_EQ(box.meets(a, b), box.meets(b, a));
        if (runsThrough(box, a, b)) {
            EXPECT_TRUE(box.grown(0.01).meets(a, b));
        } else {
            EXPECT_FALSE(box.grown(-0.05).meets(a, b));
        }
    }
}

TEST(TurnedBoxes, ThatOnlyTouchDoNotMeet) {
    const TurnedBox a{{0, 0}, 4, 2, Degrees(0)};
    EXPECT_FALSE(a.meets(TurnedBox{{4, 0}, 4, 2, Degrees(0)}));
    EXPECT_FALSE(a.meets(TurnedBox{{0, 2}, 4, 2, Degrees(0)}));
    EXPECT_TRUE(a.meets(TurnedBox{{3.99, 0}, 4, 2, Degrees(0)}));
}

TEST(TurnedBoxes, CornersRunRoundFromTheLowerLeftOfTheLetters) {
    const auto level = TurnedBox{{0, 0}, 4, 2, Degrees(0)}.corners();
    EXPECT_EQ(level[0], (Point{-2, 1}));
    EXPECT_EQ(level[1], (Point{2, 1}));
    EXPECT_EQ(level[2], (Point{2, -1}));
    const Box upright = TurnedBox{{0, 0}, 4, 2, Degrees(90)}.bounds();
    EXPECT_NEAR(upright.width(), 2, 1e-9);
    EXPECT_NEAR(upright.height(), 4, 1e-9);
}

TEST(Readable, IsNeverUpsideDownAndAlongTheLine) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const Vector u = unit(RandomLines(seed).point(1));
        const double angle = readable(u).value();
        EXPECT_GT(angle, -90);
        EXPECT_LE(angle, 90);
        const double turn = radians(Degrees(angle)).value();
        EXPECT_NEAR(std::abs(cross(u, {std::cos(turn), -std::sin(turn)})), 0, 1e-9);
        EXPECT_NEAR(readable(u * -1).value(), angle, 1e-9);
    }
}

// A3: a vertical line is lettered upward, whatever a rounding error says about which way it leans.
TEST(Readable, VerticalIsUpwardWhateverTheLastDigitSays) {
    for (const double lean : {0.0, 1e-12, -1e-12, 1e-9, -1e-9}) {
        for (const double way : {1.0, -1.0}) {
            EXPECT_NEAR(readable({lean, way}).value(), 90, 1e-6) << lean << ' ' << way;
            EXPECT_LE(readable({lean, way}).value(), 90) << lean << ' ' << way;
        }
    }
    EXPECT_EQ(readable({1, 0}).value(), 0);
    EXPECT_EQ(readable({-1, 0}).value(), 0);
    EXPECT_NEAR(readable({1, -1}).value(), 45, 1e-12);
}

TEST(Occupancy, AgreesWithAskingEveryBox) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        Occupancy taken;
        std::vector<TurnedBox> boxes;
        for (int n = random.below(60); n > 0; --n) {
            boxes.push_back(randomBox(random, 150));
            taken.take(boxes.back());
        }
        for (int n = 0; n < 30; ++n) {
            const TurnedBox wanted = randomBox(random, 170);
            const double clear = random.between(0, 3);
            const bool free = std::none_of(boxes.begin(), boxes.end(),
                                           [&](const TurnedBox& box) { return wanted.grown(clear).meets(box); });
            EXPECT_EQ(taken.isFree(wanted, clear), free);
        }
    }
}

TEST(Occupancy, FindsEveryBoxUnderASegment) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        Occupancy taken;
        std::vector<TurnedBox> boxes;
        for (int n = random.below(30); n > 0; --n) {
            boxes.push_back(randomBox(random, 150));
            taken.take(boxes.back());
        }
        for (int n = 0; n < 30; ++n) {
            const Point a = random.point(170);
            const Point b = a + random.point(60);
            const bool free =
                std::none_of(boxes.begin(), boxes.end(), [&](const TurnedBox& box) { return box.meets(a, b); });
            EXPECT_EQ(taken.isFree(a, b), free);
        }
    }
}

TEST(Occupancy, CountsEverySegmentOfOthersOnce) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        Occupancy taken;
        struct Drawn {
            Points points;
            std::size_t owner;
        };
        std::vector<Drawn> lines;
        for (std::size_t owner = 1; owner <= 6; ++owner) {
            const bool isRing = owner % 2 == 0;
            Points line = isRing ? random.ring() : random.line();
            taken.draw(line, owner, isRing);
            if (isRing) {
                line.push_back(line.front());
            }
            lines.push_back({line, owner});
        }
        for (int n = 0; n < 20; ++n) {
            const TurnedBox box = randomBox(random, 60);
            const std::size_t owner = 1 + static_cast<std::size_t>(random.below(6));
            int wanted = 0;
            for (const Drawn& line : lines) {
                for (std::size_t k = 1; line.owner != owner && k < line.points.size(); ++k) {
                    wanted += box.meets(line.points[k - 1], line.points[k]) ? 1 : 0;
                }
            }
            EXPECT_EQ(taken.crossings(box, owner), wanted);
        }
    }
}

// A line of the ground may run on for hundreds of metres of film; only the cells under it may cost anything.
TEST(Occupancy, BearsALineFarLongerThanTheFilm) {
    Occupancy taken;
    taken.draw({{-300000, -250000}, {310000, 270000}}, 1);
    const Point on = Path({{-300000, -250000}, {310000, 270000}}).at(390000);
    EXPECT_EQ(taken.crossings({on, 4, 2, Degrees(0)}, 2), 1);
    EXPECT_EQ(taken.crossings({on, 4, 2, Degrees(0)}, 1), 0);
    EXPECT_EQ(taken.crossings({on + Vector{30, 0}, 4, 2, Degrees(0)}, 2), 0);
}

TEST(Occupancy, KnowsWhoseTruePlaceABoxCovers) {
    Occupancy taken;
    taken.mark({10, 10}, 1);
    const TurnedBox box{{12, 10}, 4, 4, Degrees(0)};
    EXPECT_TRUE(taken.coversSpot(box, {30, 30}, 2));
    EXPECT_FALSE(taken.coversSpot(box, {30, 30}, 1)) << "its own";
    EXPECT_FALSE(taken.coversSpot(box, {10, 10.05}, 2)) << "the same place";
    EXPECT_FALSE(taken.coversSpot({{14, 10}, 4, 4, Degrees(0)}, {30, 30}, 2)) << "1.2 clear of the 2 mm half width";
    EXPECT_TRUE(taken.coversSpot({{12.7, 10}, 4, 4, Degrees(0)}, {30, 30}, 2)) << "0.7 clear";
}

TEST(Occupancy, CountsWhatALineCrossesButNotWhatItsEndsTouch) {
    Occupancy taken;
    taken.draw({{0, 0}, {10, 0}}, 1);
    EXPECT_EQ(taken.crossings({5, -5}, {5, 5}, 2), 1);
    EXPECT_EQ(taken.crossings({5, -5}, {5, 5}, 1), 0);
    EXPECT_EQ(taken.crossings({5, -5}, {5, -0.1}, 2), 0);
    EXPECT_EQ(taken.crossings({5, -5}, {5, -5}, 2), 0);
}

TEST(Occupancy, LetsNoTieCrossAnotherOrRunThroughABox) {
    Occupancy taken;
    taken.tie({0, 0}, {20, 0}, 1);
    EXPECT_FALSE(taken.couldTie({10, -5}, {10, 5}));
    EXPECT_TRUE(taken.couldTie({20, 0}, {30, 10})) << "both end on one place";
    EXPECT_FALSE(taken.isFree({{10, 0}, 6, 3, Degrees(0)})) << "nothing is placed on a tie";
    EXPECT_TRUE(taken.isFree({{10, 5}, 6, 3, Degrees(0)}));
    taken.take({{40, 0}, 6, 6, Degrees(0)});
    EXPECT_FALSE(taken.couldTie({30, 0}, {50, 0}));
    EXPECT_TRUE(taken.couldTie({30, 8}, {50, 8}));
}

TEST(Occupancy, ForgetsATrialAndTakesItAgainAsItWas) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        Occupancy taken;
        const auto takeSome = [&] {
            for (int n = 0; n < 5; ++n) {
                taken.take(randomBox(random, 60));
                taken.tie(random.point(60), random.point(60), 1);
                taken.draw(random.line(), 2);
            }
        };
        takeSome();
        std::vector<TurnedBox> asked;
        for (int n = 0; n < 20; ++n) {
            asked.push_back(randomBox(random, 60));
        }
        const auto answers = [&] {
            std::vector<int> all;
            for (const TurnedBox& box : asked) {
                all.push_back(taken.isFree(box) ? 1 : 0);
                all.push_back(taken.crossings(box, 1));
                all.push_back(taken.couldTie(box.middle, {0, 0}) ? 1 : 0);
            }
            return all;
        };
        const auto before = answers();
        const Occupancy::Level level = taken.level();
        takeSome();
        const auto during = answers();
        const Occupancy::Taken trial = taken.takeBack(level);
        EXPECT_EQ(answers(), before);
        taken.put(trial);
        EXPECT_EQ(answers(), during);
        EXPECT_FALSE(taken.isFree(trial));
    }
}

}  // namespace
}  // namespace crosstick::drawing
