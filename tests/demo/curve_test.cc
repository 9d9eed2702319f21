#include "sample-data/ground/curve.h"

#include <algorithm>
#include <random>

#include <gtest/gtest.h>

namespace crosstick::demo {
namespace {

constexpr unsigned kSeed = 20270313;

PegLine anyLine(std::mt19937& chance) {
    std::uniform_real_distribution<double> place(0, 1000);
    std::uniform_int_distribution<int> count(2, 9);
    PegLine pegs;
    for (int n = count(chance); n > 0; --n) {
        pegs.push_back({{place(chance), place(chance)}, place(chance)});
    }
    return pegs;
}

bool passes(const PegLine& curve, const Peg& peg) {
    return std::any_of(curve.begin(), curve.end(),
                       [&](const Peg& p) { return length(p.at - peg.at) < 1e-9 && p.height == peg.height; });
}

TEST(Curve, PassesThroughEveryListedPoint) {
    SCOPED_TRACE(kSeed);
    std::mt19937 chance(kSeed);
    for (int round = 0; round < 200; ++round) {
        const PegLine pegs = anyLine(chance);
        for (const Ends ends : {Ends::Open, Ends::Closed}) {
            const PegLine curve = smoothed(pegs, Metres(5), ends);
            EXPECT_TRUE(std::all_of(pegs.begin(), pegs.end(), [&](const Peg& peg) { return passes(curve, peg); }));
        }
    }
}

TEST(Curve, NeverRisesWhereItsListFalls) {
    SCOPED_TRACE(kSeed);
    std::mt19937 chance(kSeed);
    for (int round = 0; round < 200; ++round) {
        PegLine pegs = anyLine(chance);
        std::vector<double> heights;
        for (const Peg& peg : pegs) {
            heights.push_back(peg.height);
        }
        std::sort(heights.rbegin(), heights.rend());
        for (std::size_t n = 0; n < pegs.size(); ++n) {
            pegs[n].height = heights[n];
        }
        const PegLine curve = smoothed(pegs, Metres(5));
        EXPECT_TRUE(
            std::is_sorted(curve.begin(), curve.end(), [](const Peg& a, const Peg& b) { return a.height > b.height; }));
    }
}

TEST(Curve, LeavesAPointAndNothingAsTheyAre) {
    EXPECT_TRUE(smoothed(Line{}, Metres(5)).empty());
    EXPECT_EQ(smoothed(Line{{1, 2}}, Metres(5)), (Line{{1, 2}}));
}

}  // namespace
}  // namespace crosstick::demo
