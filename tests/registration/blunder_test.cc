// Made sheets of which all is known: the right model, and of the marks exactly those that were misplaced.
#include <algorithm>
#include <cmath>
#include <iostream>

#include <gtest/gtest.h>

#include "core/registration/fit.h"
#include "core/registration/least_squares.h"
#include "tests/registration/drawn_marks.h"

namespace crosstick::registration {
namespace {

constexpr int kDraws = 50;

/// Over all true crossings, in pixels.
double truthRms(const Model& model, const testing::Truth& truth) {
    double squares = 0;
    const auto all = testing::allCrossings(truth);
    for (const Mark& crossing : all) {
        const auto at = model.pixel(crossing.place);
        squares += at ? std::pow(at->x - crossing.at.x, 2) + std::pow(at->y - crossing.at.y, 2) : 1e6;
    }
    return std::sqrt(squares / static_cast<double>(all.size()));
}

struct Tally {
    int rightModel = 0, rightBlunders = 0;
    double worstRatio = 0;
};

Tally tally(Kind kind, const testing::Truth& truth, unsigned seed) {
    Tally tally;
    std::mt19937 random(seed);
    for (int n = 0; n < kDraws; ++n) {
        auto marks = testing::drawn(truth, 40, 0.7, random);
        const std::vector sound(marks.begin() + 2, marks.end());
        testing::misplace(marks[0], 15, random);
        testing::misplace(marks[1], 15, random);
        const auto fit = fitMarks(marks);
        if (!fit) {
            continue;
        }
        tally.rightModel += fit->model.kind() == kind ? 1 : 0;
        bool isRight = true;
        for (std::size_t k = 0; k < marks.size(); ++k) {
            isRight = isRight && fit->residuals[k].isBlunder == (k < 2);
        }
        tally.rightBlunders += isRight ? 1 : 0;
        tally.worstRatio =
            std::max(tally.worstRatio, truthRms(fit->model, truth) / truthRms(solve(kind, sound)->model, truth));
    }
    std::cout << "right model " << tally.rightModel << " of " << kDraws << ", exactly the two blunders "
              << tally.rightBlunders << ", worst ratio to the right model's own fit " << tally.worstRatio << '\n';
    return tally;
}

class MadeSheet : public ::testing::TestWithParam<std::pair<Kind, testing::Truth>> {};

TEST_P(MadeSheet, GivesItsModelAndExactlyTheBlunders) {
    const unsigned seed = 20261126;
    std::cout << "seed " << seed << '\n';
    const Tally found = tally(GetParam().first, GetParam().second, seed);
    EXPECT_EQ(found.rightModel, kDraws);
    EXPECT_EQ(found.rightBlunders, kDraws);
    EXPECT_LE(found.worstRatio, 1.3);
}

INSTANTIATE_TEST_SUITE_P(Kinds, MadeSheet,
                         ::testing::Values(std::pair{Kind::Similarity, testing::similarTruth()},
                                           std::pair{Kind::Affine, testing::stretchedTruth()},
                                           std::pair{Kind::Projective, testing::aslantTruth()},
                                           std::pair{Kind::Quadratic, testing::bentTruth()}));

TEST(Blunders, AreAtMostAQuarterOfTheMarks) {
    std::mt19937 random(9);
    auto marks = testing::drawn(testing::similarTruth(), 12, 0.3, random);
    for (std::size_t n = 0; n < 5; ++n) {
        testing::misplace(marks[n], 40 + 25 * static_cast<double>(n), random);
    }
    const auto fit = fitMarks(marks);
    ASSERT_TRUE(fit.has_value());
    EXPECT_LE(
        std::count_if(fit->residuals.begin(), fit->residuals.end(), [](const Residual& r) { return r.isBlunder; }), 3);
}

// Two crossings beside each other, both named by the line next to theirs: the fit leans to them, and each alone is
// borne out by the other.
TEST(Blunders, TwoThatHideEachOtherAreFound) {
    std::mt19937 random(11);
    int found = 0;
    for (int n = 0; n < kDraws; ++n) {
        auto marks = testing::drawn(testing::similarTruth(), 12, 0.7, random);
        auto corner = testing::allCrossings(testing::similarTruth());
        marks[0] = corner[0];
        marks[1] = corner[1];
        std::erase_if(marks, [&, at = 0](const Mark& mark) mutable {
            return at++ > 1 && (mark.place == corner[0].place || mark.place == corner[1].place);
        });
        marks[0].at = {marks[0].at.x + 9, marks[0].at.y - 6};
        marks[1].at = {marks[1].at.x + 9, marks[1].at.y - 6};
        const auto fit = fitMarks(marks);
        ASSERT_TRUE(fit.has_value());
        const auto blunders =
            std::count_if(fit->residuals.begin(), fit->residuals.end(), [](const Residual& r) { return r.isBlunder; });
        found += fit->residuals[0].isBlunder && fit->residuals[1].isBlunder && blunders == 2 ? 1 : 0;
    }
    std::cout << "two that hide each other found " << found << " of " << kDraws << " times\n";
    EXPECT_GE(found, kDraws * 9 / 10);
}

// Of sound marks none is called a blunder, alone or in pairs, more often than the test owns to.
TEST(Blunders, SoundMarksAreLeftAlone) {
    std::mt19937 random(12);
    int accused = 0;
    for (int n = 0; n < 4 * kDraws; ++n) {
        const auto fit = fitMarks(testing::drawn(testing::stretchedTruth(), 16, 0.7, random));
        ASSERT_TRUE(fit.has_value());
        accused +=
            std::any_of(fit->residuals.begin(), fit->residuals.end(), [](const Residual& r) { return r.isBlunder; })
                ? 1
                : 0;
    }
    EXPECT_LE(accused, 2);
}

TEST(Blunders, OneOfFiveMarksIsFound) {
    std::mt19937 random(10);
    int found = 0;
    for (int n = 0; n < kDraws; ++n) {
        auto marks = testing::drawn(testing::similarTruth(), 5, 0.5, random);
        testing::misplace(marks[3], 400, random);  // a kilometre: the wrong line
        const auto fit = fitMarks(marks);
        ASSERT_TRUE(fit.has_value());
        found += fit->residuals[3].isBlunder ? 1 : 0;
    }
    std::cout << "a mark of five on the wrong line found " << found << " of " << kDraws << " times\n";
    EXPECT_GT(found, kDraws * 7 / 10);  // with five there is little to judge by
}

TEST(Blunders, ExactMarksHaveNone) {
    for (const auto& truth : {testing::similarTruth(), testing::stretchedTruth(), testing::aslantTruth()}) {
        const auto fit = fitMarks(testing::allCrossings(truth));
        ASSERT_TRUE(fit.has_value());
        for (const Residual& residual : fit->residuals) {
            EXPECT_FALSE(residual.isBlunder);
        }
    }
}

}  // namespace
}  // namespace crosstick::registration
