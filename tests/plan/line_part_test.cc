#include "core/plan/line_part.h"

#include <random>

#include <gtest/gtest.h>

namespace crosstick::plan {
namespace {

using Line = std::vector<geodesy::PlanePoint>;

geodesy::PlanePoint at(double east, double north) {
    return {Metres(east), Metres(north)};
}

// 3, 4, 5: the first piece is 500 m long, the second 700 m.
const Line& bent() {
    static const Line kBent{at(0, 0), at(300, 400), at(1000, 400)};
    return kBent;
}

TEST(LinePart, TheNearestPlaceIsTheFootOrACorner) {
    EXPECT_EQ(lengthOf(bent()), Metres(1200));
    const PlaceAlong foot = nearestAlong(bent(), at(650, 520));
    EXPECT_NEAR(foot.along.value(), 850, 1e-9);
    EXPECT_NEAR(foot.away.value(), 120, 1e-9);
    EXPECT_EQ(foot.at, at(650, 400));
    EXPECT_NEAR(nearestAlong(bent(), at(-30, -40)).away.value(), 50, 1e-9);
    EXPECT_EQ(nearestAlong(bent(), at(-30, -40)).along, Metres(0));
    EXPECT_NEAR(nearestAlong(bent(), at(2000, 400)).along.value(), 1200, 1e-9);
    EXPECT_FALSE(isFinite(nearestAlong({}, at(0, 0)).away));
}

TEST(LinePart, APartKeepsTheCornersBetweenItsEndsAndTheLinesDirection) {
    const Line part = partOf(bent(), Metres(1000), Metres(250));
    EXPECT_EQ(part, (Line{at(150, 200), at(300, 400), at(800, 400)}));
    EXPECT_EQ(partOf(bent(), Metres(500), Metres(900)), (Line{at(300, 400), at(700, 400)}));
    EXPECT_EQ(partOf(bent(), Metres(-50), Metres(99999)), bent());
    EXPECT_EQ(partOf({at(5, 5)}, Metres(0), Metres(10)), Line{at(5, 5)});
    EXPECT_EQ(partOf({at(5, 5), at(5, 5)}, Metres(0), Metres(10)), (Line{at(5, 5), at(5, 5)}));
}

// The laws in the header, over lines drawn at random, with corners that fall on each other among them.
TEST(LinePart, HoldsItsLaws) {
    const unsigned seed = 20270314;
    SCOPED_TRACE(seed);
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> metres(-3000, 3000);
    for (int round = 0; round < 300; ++round) {
        Line line;
        for (int n = 0; n < 2 + round % 9; ++n) {
            line.push_back(n % 4 == 3 ? line.back() : at(metres(random), metres(random)));
        }
        const Metres whole = lengthOf(line);
        std::uniform_real_distribution<double> along(0, whole.value());
        const Metres a(along(random));
        const Metres b(along(random));
        const Line part = partOf(line, a, b);
        for (const auto& end : {part.front(), part.back()}) {
            EXPECT_NEAR(nearestAlong(line, end).away.value(), 0, 1e-6);
        }
        EXPECT_NEAR(lengthOf(part).value(), std::abs(a.value() - b.value()), 1e-6);
        EXPECT_NEAR((lengthOf(partOf(line, Metres(0), a)) + lengthOf(partOf(line, a, whole))).value(), whole.value(),
                    1e-6);
        EXPECT_NEAR(farthestApart(line, partOf(line, Metres(0), whole)).value(), 0, 1e-9);
    }
}

// PL BODKIN's left end moves from 653700 5099900 to 653780 5100350 (scenario 6): 457.1 m.
TEST(LinePart, LinesLieApartByTheirFarthestCorner) {
    EXPECT_NEAR(farthestApart({at(653700, 5099900)}, {at(653780, 5100350)}).value(), 457.1, 0.05);
    EXPECT_EQ(farthestApart({}, bent()), Metres(0));
    EXPECT_NEAR(farthestApart(bent(), {at(0, 0), at(300, 400)}).value(), 700, 1e-9);
}

}  // namespace
}  // namespace crosstick::plan
