// What a fit says of the paper, and its proof.
#include "core/registration/figures.h"

#include <cmath>
#include <numbers>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/registration/least_squares.h"
#include "tests/registration/drawn_marks.h"

namespace crosstick::registration {
namespace {

using ::testing::HasSubstr;

// 300 dots to the inch at 1:25,000 are 2.11667 m a pixel: 0.0254 / 300 * 25000.
constexpr double kDotsPerMetre = 300 / 0.0254;
constexpr double kPixel = 25000 / kDotsPerMetre;

/// Three marks of a sheet that is turned clockwise, longer eastward and leaning, by so much.
Model laid(Degrees turn, double eastPerCent, double northPerCent, Degrees skew = {}) {
    const auto at = [&](double east, double north) {
        const double t = radians(turn).value();
        const double lean = radians(turn + skew).value();
        const double right = east * (1 + eastPerCent / 100) / kPixel;
        const double up = north * (1 + northPerCent / 100) / kPixel;
        return PixelPoint{2000 + right * std::cos(t) + up * std::sin(lean),
                          2000 + right * std::sin(t) - up * std::cos(lean)};
    };
    std::vector<Mark> marks;
    for (const auto& [east, north] : {std::pair{0.0, 0.0}, {3000.0, 0.0}, {0.0, 4000.0}}) {
        marks.push_back({at(east, north), {Metres(600000 + east), Metres(5000000 + north)}});
    }
    return solve(Kind::Affine, marks)->model;
}

TEST(Figures, StretchIsAgainstTheScansDots) {
    const auto figures = figuresOf(laid(Degrees(1.5), 0.4, -0.1), {2000, 2000}, Scale{25000}, kDotsPerMetre);
    EXPECT_TRUE(figures.isAbsolute);
    EXPECT_NEAR(figures.stretchEast, 0.4, 1e-6);
    EXPECT_NEAR(figures.stretchNorth, -0.1, 1e-6);
    EXPECT_NEAR(figures.rotation.value(), 1.5, 1e-6);
    EXPECT_NEAR(figures.skew.value(), 0, 1e-6);
}

TEST(Figures, WithoutDotsThatCanBeTrueStretchIsAgainstTheMean) {
    // 1.004 / sqrt(1.004 * 0.999) = 1.0024994.
    for (const auto dots : {std::optional<double>{}, std::optional(72 / 0.0254)}) {
        const auto figures = figuresOf(laid(Degrees(0), 0.4, -0.1), {2000, 2000}, Scale{25000}, dots);
        EXPECT_FALSE(figures.isAbsolute);
        EXPECT_NEAR(figures.stretchEast, 0.24994, 1e-4);
        EXPECT_NEAR(figures.stretchNorth, -0.24932, 1e-4);
    }
}

TEST(Figures, ATurnAndALeanAreClockwise) {
    for (const double turn : {-179.0, -90.0, -3.0, 0.0, 45.0, 90.0, 180.0}) {
        const auto figures = figuresOf(laid(Degrees(turn), 0, 0, Degrees(0.2)), {2000, 2000});
        EXPECT_NEAR(std::remainder(figures.rotation.value() - turn, 360), 0, 1e-6);
        EXPECT_NEAR(figures.skew.value(), -0.2, 1e-6) << "north leans toward east: the angle between them is less";
    }
}

TEST(Proof, IsOneSentenceOnPaperAndOnTheGround) {
    // Four corners of a square of 1000 pixels, 2.5 m each; one corner is off. A similarity leaves half of it there.
    std::vector<Mark> marks;
    for (const auto& [x, y] : {std::pair{0.0, 0.0}, {1000.0, 0.0}, {1000.0, 1000.0}, {0.0, 1000.0}}) {
        marks.push_back({{x, y}, {Metres(650000 + x * 2.5), Metres(5100000 - y * 2.5)}});
    }
    marks[0].place.easting += Metres(20);
    const auto fit = fitMarks(marks, Kind::Similarity);
    ASSERT_TRUE(fit.has_value());
    const Proof proof = proofOf(*fit, Scale{25000});
    EXPECT_EQ(proof.worst, 0U);
    EXPECT_NEAR(proof.ground.value(), 10, 0.2);
    EXPECT_NEAR(proof.paper->value(), 0.4, 0.01);
    EXPECT_THAT(proofText(*fit, proof), HasSubstr("Worst mark 0.4 mm = 10 m on the ground (mark 1); good for "));
    EXPECT_THAT(proofText(*fit, proof, 0, "52 00"), HasSubstr("(the crossing 52 00)")) << "nobody set a mark there";
    EXPECT_THAT(proofText(*fit, proof, 0), HasSubstr("(a crossing that was found)"));
    EXPECT_THAT(proofText(*fit, proofOf(*fit)), HasSubstr("4.0 pixels = 10 m"));
}

TEST(Proof, SaysWhatCannotBeChecked) {
    std::mt19937 random(1);
    auto marks = testing::drawn(testing::similarTruth(), 3, 0.5, random);
    const auto three = fitMarks(marks, Kind::Affine);
    EXPECT_THAT(proofText(*three, proofOf(*three)), HasSubstr("cannot be checked"));
    marks.resize(2);
    const auto two = fitMarks(marks);
    EXPECT_EQ(proofText(*two, proofOf(*two)), "Two marks cannot be checked: add a third.");
}

}  // namespace
}  // namespace crosstick::registration
