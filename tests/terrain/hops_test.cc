#include "core/terrain/hops.h"

#include <cmath>
#include <numbers>
#include <random>

#include <gtest/gtest.h>

namespace crosstick::terrain {
namespace {

constexpr PenSize kSize{12};

/// The cells of a way that is told by its places, in steps of a cell.
class Way {
  public:
    Way& to(double column, double row) {
        const double length = std::hypot(column - at_.column, row - at_.row);
        for (double along = 1; along <= length; ++along) {
            add(at_.column + (column - at_.column) * along / length, at_.row + (row - at_.row) * along / length);
        }
        at_ = {column, row};
        return *this;
    }
    [[nodiscard]] const std::vector<Cell>& cells() const { return cells_; }

  private:
    PicturePoint at_{};
    std::vector<Cell> cells_{{0, 0}};

    void add(double column, double row) {
        const Cell cell{static_cast<int>(std::lround(column)), static_cast<int>(std::lround(row))};
        if (!(cell == cells_.back())) {
            cells_.push_back(cell);
        }
    }
};

TEST(Hops, AStraightWayHasNoneInWhateverDirection) {
    for (int degrees = 0; degrees < 360; degrees += 7) {
        const double turn = degrees * std::numbers::pi / 180;
        EXPECT_TRUE(hopsOf(Way().to(200 * std::cos(turn), 200 * std::sin(turn)).cells(), kSize).empty()) << degrees;
    }
}

TEST(Hops, ABendOfTwoMillimetresRadiusIsNone) {
    Way way;
    constexpr double kRadius = 24;
    for (int degrees = 0; degrees <= 180; degrees += 5) {
        const double turn = degrees * std::numbers::pi / 180;
        way.to(100 + kRadius * std::sin(turn), kRadius - kRadius * std::cos(turn));
    }
    EXPECT_TRUE(hopsOf(way.to(0, 2 * kRadius).cells(), kSize).empty());
}

TEST(Hops, AStepAsideToTheNextContourIsOne) {
    for (const double aside : {10.0, 17.0, 24.0}) {
        const auto cells = Way().to(60, 0).to(60, aside).to(160, aside).cells();
        const auto hops = hopsOf(cells, kSize);
        ASSERT_EQ(hops.size(), 1U) << aside;
        EXPECT_LE(hops[0].from, 60U);
        EXPECT_GE(hops[0].to, 60U);
    }
}

TEST(Hops, BetweenTwoHopsTheWayHasStrayed) {
    const auto cells = Way().to(60, 0).to(60, 17).to(260, 17).to(260, 0).to(320, 0).cells();
    const auto hops = hopsOf(cells, kSize);
    ASSERT_EQ(hops.size(), 2U);
    const auto strayed = strayedStretches(cells, hops, kSize);
    EXPECT_GT(strayed.size(), 150U);
    for (const Cell cell : strayed) {
        EXPECT_GE(cell.row, 1) << "where it begins and ends it is right";
    }
}

// Whatever a path does: hops lie in order and within it, and what has strayed is a part of it.
TEST(Hops, LieWithinThePathInOrder) {
    for (std::uint32_t seed = 1; seed < 200; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        std::mt19937 random(seed);
        Way way;
        for (auto n = random() % 9; n > 0; --n) {
            way.to(static_cast<double>(random() % 120), static_cast<double>(random() % 120));
        }
        const auto& cells = way.cells();
        const auto hops = hopsOf(cells, kSize);
        std::size_t last = 0;
        for (const Hop hop : hops) {
            EXPECT_LE(last, hop.from);
            EXPECT_LE(hop.from, hop.to);
            last = hop.to;
        }
        EXPECT_LE(last, cells.size());
        const auto strayed = strayedStretches(cells, hops, kSize);
        EXPECT_EQ(strayed.empty(), hops.empty());
        EXPECT_LE(strayed.size(), cells.size());
    }
}

}  // namespace
}  // namespace crosstick::terrain
