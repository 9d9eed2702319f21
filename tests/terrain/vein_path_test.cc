#include "core/terrain/vein_path.h"

#include <cmath>
#include <iostream>
#include <map>
#include <random>

#include <gtest/gtest.h>

#include <queue>

#include "core/terrain/faults.h"
#include "tests/terrain/printed_paper.h"

namespace crosstick::terrain {
namespace {

using namespace testing;

constexpr int kSide = 70;

/// Black strokes and dots at random.
sheets::Pixels scribbled(std::mt19937& random) {
    sheets::Pixels pixels{kSide, kSide, {}};
    for (int n = 0; n < kSide * kSide; ++n) {
        const bool isDark = (n / kSide + n % kSide) % 11 < 2 || random() % 4 == 0;
        pixels.rgb.push_back(isDark ? 0xff202020U : 0xffF8F8F0U);
    }
    return pixels;
}

Vein blackVein() {
    Vein vein;
    vein.ink = {32, 32, 32};
    vein.left = vein.right = {248, 248, 240};
    vein.halfWidth = 1;
    return vein;
}

int costOf(VeinField& field, const std::vector<Cell>& path) {
    int cost = 0;
    for (std::size_t n = 1; n < path.size(); ++n) {
        const bool isAslant = path[n].column != path[n - 1].column && path[n].row != path[n - 1].row;
        cost += (isAslant ? 14 : 10) * field.costAt(path[n]).value();
    }
    return cost;
}

/// Slow and plain: a heap over all cells.
int leastCost(VeinField& field, Cell from, Cell to) {
    std::map<std::pair<int, int>, int> best;
    using Waiting = std::pair<int, std::pair<int, int>>;
    std::priority_queue<Waiting, std::vector<Waiting>, std::greater<>> queue;
    queue.push({0, {from.column, from.row}});
    while (!queue.empty()) {
        const auto [cost, at] = queue.top();
        queue.pop();
        if (best.contains(at)) {
            continue;
        }
        best[at] = cost;
        for (int n = 0; n < 9; ++n) {
            const Cell next{at.first + n % 3 - 1, at.second + n / 3 - 1};
            if (const auto over = field.costAt(next)) {
                queue.push({cost + (n % 2 == 0 ? 14 : 10) * *over, {next.column, next.row}});
            }
        }
    }
    return best.at({to.column, to.row});
}

TEST(VeinPath, CostsWhatAPlainSearchOfAllCellsFinds) {
    constexpr std::uint32_t kSeed = 4711;
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    for (int round = 0; round < 6; ++round) {
        const HeldPixels picture(scribbled(random));
        VeinField field(picture, 1, {blackVein()}, {12});
        const auto any = [&] { return Cell{static_cast<int>(random() % kSide), static_cast<int>(random() % kSide)}; };
        const Cell from = any();
        const Cell to = any();
        const auto path = leastCostPath(field, from, to);
        ASSERT_TRUE(path.has_value());
        ASSERT_FALSE(path->empty());
        EXPECT_EQ(path->front(), from);
        EXPECT_EQ(path->back(), to);
        EXPECT_EQ(costOf(field, *path), leastCost(field, from, to)) << "round " << round;
    }
}

TEST(VeinPath, StepsFromNeighbourToNeighbour) {
    std::mt19937 random(1);
    const HeldPixels picture(scribbled(random));
    VeinField field(picture, 1, {blackVein()}, {12});
    const auto path = leastCostPath(field, {2, 3}, {66, 60});
    ASSERT_TRUE(path.has_value());
    for (std::size_t n = 1; n < path->size(); ++n) {
        EXPECT_LE(std::abs((*path)[n].column - (*path)[n - 1].column), 1);
        EXPECT_LE(std::abs((*path)[n].row - (*path)[n - 1].row), 1);
    }
}

/// Fails to be read, as a damaged copy does.
class Torn final : public Picture {
  public:
    [[nodiscard]] int columns() const override { return 100; }
    [[nodiscard]] int rows() const override { return 100; }
    [[nodiscard]] Result<sheets::Pixels> read(sheets::PixelWindow /*window*/, int /*columns*/,
                                              int /*rows*/) const override {
        return fail(FaultId{"sheets/damaged"});
    }
};

TEST(VeinPath, HandsOnWhatThePictureMet) {
    const Torn torn;
    VeinField field(torn, 1, {blackVein()}, {12});
    const auto path = leastCostPath(field, {1, 1}, {50, 50});
    ASSERT_FALSE(path.has_value());
    EXPECT_EQ(path.error().fault.name, "sheets/damaged");
}

/// Paper without end, lined in black.
class Endless final : public Picture {
  public:
    [[nodiscard]] int columns() const override { return 400000; }
    [[nodiscard]] int rows() const override { return 400000; }
    [[nodiscard]] Result<sheets::Pixels> read(sheets::PixelWindow /*window*/, int columns, int rows) const override {
        sheets::Pixels pixels{columns, rows, {}};
        for (int n = 0; n < columns * rows; ++n) {
            pixels.rgb.push_back(n / columns % 20 < 2 ? 0xff202020U : 0xffffffffU);
        }
        return pixels;
    }
};

TEST(VeinPath, AWayTooFarIsGivenUpWithBoundedMemory) {
    const Endless paper;
    VeinField field(paper, 1, {blackVein()}, {12});
    const auto path = leastCostPath(field, {1000, 1000}, {300000, 200000});
    ASSERT_FALSE(path.has_value());
    EXPECT_EQ(path.error().fault, kTooFar);
}

}  // namespace
}  // namespace crosstick::terrain
