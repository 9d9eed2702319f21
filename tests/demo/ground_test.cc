#include "sample-data/ground/ground.h"

#include <cmath>
#include <limits>

#include <gtest/gtest.h>

#include "sample-data/ground/surface.h"
#include "tests/places.h"

namespace crosstick::demo {
namespace {

Island island() {
    const auto lists = readIsland(places::share() / "demo/island.json");
    EXPECT_TRUE(lists.has_value());
    return lists.value_or(Island{});
}

double heightOfCell(const Ground& ground, Spot at) {
    const Lattice& lattice = ground.heights.lattice;
    return static_cast<double>(ground.heights(lattice.nearestColumn(at), lattice.nearestRow(at)));
}

/// The four laws that stand at makeGround, on the island's own lists.
TEST(Ground, MeetsItsListsAndNoBrookRises) {
    const Island lists = island();
    const Ground ground = makeGround(lists);
    for (const SpotHeight& spot : lists.spotHeights) {
        EXPECT_EQ(sampled(ground.heights, spot.peg.at), spot.peg.height);
    }
    for (const auto* lines : {&lists.ridges, &lists.brooks}) {
        for (const NamedPegs& line : *lines) {
            for (const Peg& peg : line.pegs) {
                EXPECT_NEAR(sampled(ground.heights, peg.at), peg.height, 2.5) << line.name;
            }
        }
    }
    for (const NamedPegs& brook : ground.brooks) {
        double above = std::numeric_limits<double>::infinity();
        for (const Peg& peg : brook.pegs) {
            const double here = heightOfCell(ground, peg.at);
            EXPECT_LE(here, above) << brook.name << " at " << peg.at.east << ' ' << peg.at.north;
            above = here;
        }
    }
    const Lattice& lattice = ground.heights.lattice;
    for (std::size_t n = 0; n < lattice.size(); ++n) {
        ASSERT_TRUE(std::isfinite(ground.heights.values[n]));
        if (ground.cover.values[n] == Cover::Sea) {
            ASSERT_EQ(ground.heights.values[n], 0.0F) << "cell " << n;
        }
    }
}

// Geometry check of the scenario: the island's area was computed by another program (shapely) as 54.56 square
// kilometres, of which the islets, 0.04, are no part.
TEST(Ground, IsAsLargeAsTheIsland) {
    const Ground ground = makeGround(island());
    double cells = 0;
    for (const Cover cover : ground.cover.values) {
        cells += cover == Cover::Land || cover == Cover::Lake ? 1 : 0;
    }
    EXPECT_NEAR(cells * 1e-4, 54.56, 0.1);
}

/// Between two walls of heights 0 and 90 a membrane and a plate both lie straight.
TEST(Surface, IsAPlaneBetweenTwoStraightWalls) {
    const Lattice lattice{{0, 0}, 80, 19, 60};
    Pinned given{Field<float>(lattice), Field<std::uint8_t>(lattice)};
    for (int row = 0; row < lattice.rows; ++row) {
        for (int column = 0; column < lattice.columns; ++column) {
            const bool edge = row == 0 || column == 0 || row == lattice.rows - 1 || column == lattice.columns - 1;
            given.pinned(column, row) = edge ? 1 : 0;
            given.heights(column, row) = edge ? static_cast<float>(5 * column) : 0.0F;
        }
    }
    const Field<float> solved = surface(given, 1.5);
    for (int row = 0; row < lattice.rows; ++row) {
        for (int column = 0; column < lattice.columns; ++column) {
            EXPECT_NEAR(static_cast<double>(solved(column, row)), 5.0 * column, 0.05) << column << ' ' << row;
        }
    }
}

}  // namespace
}  // namespace crosstick::demo
