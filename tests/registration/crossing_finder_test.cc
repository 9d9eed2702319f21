// Crossings found on made sheets of which all is known.
#include "core/registration/crossing_finder.h"

#include <cmath>
#include <iostream>

#include <fmt/format.h>
#include <gtest/gtest.h>

#include "core/registration/faults.h"
#include "core/registration/least_squares.h"
#include "core/worker/faults.h"
#include "tests/registration/drawn_sheet.h"

namespace crosstick::registration {
namespace {

using testing::drawnSheet;
using testing::DrawnSheet;
using testing::SheetLook;

std::vector<Mark> threeNear(const DrawnSheet& sheet) {
    return {sheet.near(0.3, 0.3), sheet.near(0.5, 0.3), sheet.near(0.3, 0.45)};
}

std::vector<Mark> threeApart(const DrawnSheet& sheet) {
    return {sheet.near(0.1, 0.1), sheet.near(0.9, 0.12), sheet.near(0.15, 0.9)};
}

/// What was found for sure, against the truth.
struct Score {
    int within05 = 0, within1 = 0, beyond2 = 0, onEdge = 0, invented = 0;
};

Score scoreOf(const DrawnSheet& sheet, const std::vector<Crossing>& crossings) {
    Score score;
    for (const Crossing& crossing : crossings) {
        const auto isIt = [&](const Mark& mark) { return mark.place == crossing.place; };
        const auto inner = std::find_if(sheet.inner.begin(), sheet.inner.end(), isIt);
        if (crossing.confidence < kSure) {
            continue;
        }
        if (inner == sheet.inner.end()) {
            const bool isEdge = std::any_of(sheet.edge.begin(), sheet.edge.end(), isIt);
            (isEdge ? score.onEdge : score.invented) += 1;
            continue;
        }
        const double off = std::hypot(crossing.at.x - inner->at.x, crossing.at.y - inner->at.y);
        score.within05 += off <= 0.5 ? 1 : 0;
        score.within1 += off <= 1 ? 1 : 0;
        score.beyond2 += off > 2 ? 1 : 0;
    }
    return score;
}

Score found(const char* name, const SheetLook& look, bool marksAreApart = false) {
    const DrawnSheet sheet = drawnSheet(look);
    const auto crossings =
        findCrossings(sheet.picture(), gridLattice(Metres(1000)), marksAreApart ? threeApart(sheet) : threeNear(sheet));
    EXPECT_TRUE(crossings.has_value());
    const Score score = scoreOf(sheet, *crossings);
    std::cout << name << ": of " << sheet.inner.size() << " inner crossings " << score.within05 << " within 0.5 pixel, "
              << score.within1 << " within 1\n";
    EXPECT_EQ(score.beyond2, 0);
    EXPECT_EQ(score.invented, 0);
    EXPECT_EQ(score.onEdge, 0) << "the frame draws them aside";
    return score;
}

constexpr int kMost95 = 60, kMost90 = 57;  // of 63

TEST(CrossingFinder, FindsThemOnACleanScan) {
    EXPECT_GE(found("1:25,000 at 150", {}).within05, kMost95);
    EXPECT_GE(found("1:50,000 at 150", {.denominator = 50000}).within05, kMost95);
    EXPECT_GE(found("1:50,000 at 300", {.denominator = 50000, .dotsPerInch = 300}, true).within05, kMost95);
    EXPECT_GE(found("1:50,000 at 200, on its side", {.denominator = 50000, .dotsPerInch = 200, .turn = 90}).within05,
              kMost90);
}

// Its lines are 10 mm apart and names and contours as large as on other sheets.
TEST(CrossingFinder, FindsThemWhereDetailCrowdsTheGrid) {
    constexpr int kInner = 63;
    for (const double dotsPerInch : {150.0, 200.0, 300.0}) {
        int within05 = 0;
        int sheets = 0;
        for (const unsigned seed : {41U, 42U, 43U, 44U}) {
            const SheetLook look{
                .denominator = 100000, .dotsPerInch = dotsPerInch, .seed = seed, .ground = static_cast<int>(seed)};
            within05 +=
                found(fmt::format("1:100,000 at {}, seed {}", dotsPerInch, seed).c_str(), look, ++sheets % 2 == 0)
                    .within05;
        }
        EXPECT_GE(within05, 0.95 * sheets * kInner) << dotsPerInch;
    }
}

TEST(CrossingFinder, FindsThemOnAPhoto) {
    const SheetLook photo{
        .denominator = 50000, .dotsPerInch = 200, .blur = 2, .noise = 6, .shade = 60, .turn = -2, .aslant = 0.06};
    EXPECT_GE(found("photo of 1:50,000", photo).within1, kMost90);
    EXPECT_GE(found("the same, marks at three corners", photo, true).within1, kMost90);
}

TEST(CrossingFinder, InventsNoneWhereThereIsNoGrid) {
    for (const unsigned seed : {1U, 2U, 3U}) {
        const DrawnSheet sheet = drawnSheet({.denominator = 50000, .grid = testing::GridLines::None, .seed = seed});
        for (const auto& marks : {threeNear(sheet), threeApart(sheet)}) {
            const auto crossings = findCrossings(sheet.picture(), gridLattice(Metres(1000)), marks);
            ASSERT_TRUE(crossings.has_value());
            EXPECT_TRUE(crossings->empty());
        }
    }
}

TEST(CrossingFinder, StopsWhenNobodyWaits) {
    const DrawnSheet sheet = drawnSheet({.denominator = 100000, .dotsPerInch = 200});
    const auto crossings =
        findCrossings(sheet.picture(), gridLattice(Metres(1000)), threeNear(sheet), [] { return true; });
    ASSERT_FALSE(crossings.has_value());
    EXPECT_EQ(crossings.error().fault, worker::kStopped);
}

TEST(CrossingFinder, NeedsThreeMarks) {
    const DrawnSheet sheet = drawnSheet({.denominator = 100000, .dotsPerInch = 150});
    auto marks = threeNear(sheet);
    marks.pop_back();
    EXPECT_EQ(findCrossings(sheet.picture(), gridLattice(Metres(1000)), marks).error().fault, kTooFewMarks);
}

TEST(Lattice, IsOfKilometresWhereTheyAreWideEnough) {
    const auto at = [](double metresPerPixel, double step) {
        std::vector<Mark> marks;
        for (const auto& [e, n] : {std::pair{0.0, 0.0}, {2.0, 0.0}, {0.0, 3.0}}) {
            marks.push_back({{e * step / metresPerPixel, -n * step / metresPerPixel},
                             {Metres(600000 + e * step), Metres(5000000 + n * step)}});
        }
        const auto intervals = intervalsOf(marks, solve(Kind::Similarity, marks)->model);
        return intervals.empty() ? std::optional<Metres>() : intervals.front();
    };
    EXPECT_EQ(at(4, 1000), Metres(1000));
    EXPECT_EQ(at(4, 3000), Metres(1000));
    EXPECT_EQ(at(80, 10000), Metres(10000));
    EXPECT_EQ(at(1, 500), Metres(500));
    EXPECT_FALSE(at(4, 777).has_value());
}

}  // namespace
}  // namespace crosstick::registration
