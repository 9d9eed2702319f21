// The choice of the model and what a fit refuses.
#include "core/registration/fit.h"

#include <cmath>
#include <iostream>

#include <gtest/gtest.h>

#include "core/registration/faults.h"
#include "tests/registration/drawn_marks.h"

namespace crosstick::registration {
namespace {

using testing::drawn;

Mark mark(double x, double y, double easting, double northing) {
    return {{x, y}, {Metres(easting), Metres(northing)}};
}

TEST(Fit, TwoMarksGiveASimilarityThatCannotBeChecked) {
    const auto fit = fitMarks(std::vector{mark(100, 900, 654000, 5102000), mark(900, 100, 656000, 5104000)});
    ASSERT_TRUE(fit.has_value());
    EXPECT_EQ(fit->model.kind(), Kind::Similarity);
    EXPECT_EQ(fit->choice, Choice::TooFew);
    EXPECT_EQ(fit->spare, 0);
    EXPECT_FALSE(fit->leaveOneOut.has_value());
    EXPECT_NEAR(fit->rmsGround.value(), 0, 1e-6);
}

TEST(Fit, RefusesMarksThatDetermineNothing) {
    const auto faultOf = [](const std::vector<Mark>& marks, std::optional<Kind> wish = std::nullopt) {
        const auto fit = fitMarks(marks, wish);
        return fit ? FaultId{"none"} : fit.error().fault;
    };
    EXPECT_EQ(faultOf({}), kTooFewMarks);
    EXPECT_EQ(faultOf({mark(1, 1, 1, 1)}), kTooFewMarks);
    EXPECT_EQ(faultOf({mark(1, 1, 0, 0), mark(1, 1, 5, 5)}), kSamePlace);
    EXPECT_EQ(faultOf({mark(1, 1, 5, 5), mark(3, 2, 5, 5)}), kSamePlace);
    const std::vector line{mark(0, 0, 0, 0), mark(10, 0, 10, 0), mark(20, 0, 20, 0), mark(30, 0.01, 30, 0)};
    EXPECT_EQ(faultOf(line, Kind::Affine), kOneLine);
    EXPECT_EQ(faultOf(line, Kind::Projective), kOneLine);
    EXPECT_EQ(faultOf(line), FaultId{"none"}) << "a similarity is determined by marks on a line";
    EXPECT_EQ(faultOf({mark(0, 0, 0, 0), mark(9, 0, 9, 0), mark(0, 9, 0, -9)}, Kind::Quadratic), kTooFewMarks);
    // Northing that grows downward: columns exchanged, or y counted upward.
    const std::vector mirrored{mark(0, 0, 0, 0), mark(9, 0, 9, 0), mark(0, 9, 0, 9), mark(9, 9, 9, 9)};
    EXPECT_EQ(faultOf(mirrored, Kind::Affine), kContrary);
    EXPECT_EQ(faultOf(std::vector<Mark>(kMostMarks + 1)), kTooManyMarks);
}

TEST(Fit, SixMarksOnTwoLinesAreNoQuadratic) {
    // Two lines are a conic, and through the points of a conic goes more than one.
    std::vector<Mark> marks;
    for (int n = 0; n < 4; ++n) {
        marks.push_back(mark(n * 300, 0, n * 1000, 0));
        marks.push_back(mark(n * 300, 300, n * 1000, -1000));
    }
    const auto fit = fitMarks(marks, Kind::Quadratic);
    ASSERT_FALSE(fit.has_value());
    EXPECT_EQ(fit.error().fault, kOneLine);
}

TEST(Fit, ModelsThatCannotBeToldApartGiveTheSmaller) {
    std::mt19937 random(3);
    int unsure = 0;
    for (int n = 0; n < 60; ++n) {
        const auto fit = fitMarks(drawn(testing::similarTruth(), 6, 0.7, random));
        ASSERT_TRUE(fit.has_value());
        ASSERT_TRUE(fit->runnerUp.has_value());
        const auto mine = std::find_if(fit->candidates.begin(), fit->candidates.end(),
                                       [&](const Candidate& c) { return c.kind == fit->model.kind(); });
        const bool isNear = std::abs(*fit->runnerUp->bic - *mine->bic) < kClear;
        EXPECT_EQ(fit->choice, isNear ? Choice::CannotTell : Choice::Clear);
        EXPECT_TRUE(!isNear || parametersOf(fit->model.kind()) < parametersOf(fit->runnerUp->kind) ||
                    *mine->bic < *fit->runnerUp->bic);
        unsure += isNear ? 1 : 0;
    }
    EXPECT_GT(unsure, 0);
    EXPECT_LT(unsure, 60);
}

TEST(Fit, OnlyModelsWithFourSpareObservationsHaveACriterion) {
    std::mt19937 random(4);
    const auto fit = fitMarks(drawn(testing::similarTruth(), 5, 0.5, random));
    ASSERT_TRUE(fit.has_value());
    for (const Candidate& candidate : fit->candidates) {
        EXPECT_EQ(candidate.bic.has_value(), 10 >= parametersOf(candidate.kind) + 4);
    }
}

TEST(Fit, ResidualsAreOneInPixelsAndOnTheGround) {
    std::mt19937 random(6);
    const auto marks = drawn(testing::similarTruth(), 20, 0.7, random);
    const auto fit = fitMarks(marks);
    ASSERT_TRUE(fit.has_value());
    double squares = 0;
    for (const Residual& residual : fit->residuals) {
        EXPECT_NEAR(residual.ground().value(), residual.size() * 2.5, 0.01);  // 2.5 m a pixel
        squares += residual.size() * residual.size();
    }
    EXPECT_NEAR(fit->rmsPixels, std::sqrt(squares / 20), 1e-9);
    EXPECT_GT(*fit->leaveOneOutPixels, fit->rmsPixels);
}

}  // namespace
}  // namespace crosstick::registration
