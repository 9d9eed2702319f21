// Marks of echelons and the names on both sides of a boundary (engraving C2, B2).
#include "symbols/echelons.h"

#include <array>
#include <cmath>
#include <map>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/drawing/path.h"
#include "tests/symbols/ink.h"
#include "tests/symbols/made_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using drawing::Vector;
using ::testing::ElementsAre;
using testing::Made;
using testing::MadeFilm;
using ::testing::UnorderedElementsAre;

constexpr std::array<const char*, 9> kWords{"tm", "sqd", "sec", "plt", "coy", "bn", "rgt", "bde", "div"};

drawing::Drawing markOf(const char* word, Vector u, double e) {
    drawing::Drawing sheet;
    Pencil pencil(sheet, {}, {});
    drawEchelon(pencil, *echelonOf(word), {0, 0}, u, e);
    return sheet;
}

// C2: k dots (k-1) 0.87 e + 0.53 e; k bars (k-1) 0.5 e + w; k X (k-1) 1.15 e + e; e = 2.4, w = 0.4.
TEST(Echelons, HaveTheWidthsOfTheTable) {
    const std::array<double, 9> widths{1.16 * 2.4,      0.53 * 2.4, 1.40 * 2.4, 2.27 * 2.4,      0.4,
                                       0.5 * 2.4 + 0.4, 2.4 + 0.4,  2.4,        1.15 * 2.4 + 2.4};
    for (std::size_t n = 0; n < kWords.size(); ++n) {
        EXPECT_NEAR(echelonWidth(*echelonOf(kWords.at(n)), 2.4, 0.4), widths.at(n), 1e-9) << kWords.at(n);
    }
    EXPECT_FALSE(echelonOf("army").has_value());
    EXPECT_FALSE(echelonOf("").has_value());
}

TEST(Echelons, RiseByRankFromTeamToDivision) {
    for (std::size_t n = 1; n < kWords.size(); ++n) {
        EXPECT_LT(echelonOf(kWords.at(n - 1))->rank, echelonOf(kWords.at(n))->rank);
    }
}

// The ink takes the width it is said to take, and its height is e: that is what the break in the line is made for.
TEST(Echelons, AreDrawnAsWideAsTheySayAndAsHighAsE) {
    for (const char* word : kWords) {
        for (const Vector u : {Vector{1, 0}, Vector{0, 1}, drawing::unit(Vector{2, -1})}) {
            const drawing::Drawing mark = markOf(word, u, 2.4);
            const double half = echelonWidth(*echelonOf(word), 2.4, 0.4) / 2;
            const double slack = std::string(word) == "tm" ? 0.12 : 0.2;  // a pen's own corners
            EXPECT_NEAR(testing::reach(mark, {0, 0}, u, 20), half, slack) << word;
            EXPECT_NEAR(testing::reach(mark, {0, 0}, u * -1, 20), half, slack) << word;
            EXPECT_LE(testing::reach(mark, {0, 0}, drawing::leftOf(u), 20), 1.2 + 0.35) << word;
        }
    }
}

std::vector<std::string> wordsOn(const std::map<std::string, std::string>& fields) {
    Made made = testing::sample("boundary", {100, 75});
    made.fields = fields;
    MadeFilm film;
    film.add(made);
    std::vector<std::string> words;
    for (const drawing::Text& text : testing::texts(film.drawn())) {
        words.push_back(text.text);
    }
    return words;
}

TEST(Boundary, OfUnlikeUnitsWritesTheLowerOneOut) {
    EXPECT_THAT(wordsOn({{"left_unit", "2/C"}, {"right_unit", "A"}, {"left_echelon", "plt"}, {"right_echelon", "coy"}}),
                UnorderedElementsAre("2 PLT/C", "A"));
    EXPECT_THAT(
        wordsOn({{"left_unit", "2/C"}, {"right_unit", "3/C"}, {"left_echelon", "plt"}, {"right_echelon", "plt"}}),
        UnorderedElementsAre("2/C", "3/C"));
}

TEST(Boundary, OfOneKnownSideNamesThatSide) {
    EXPECT_THAT(wordsOn({{"left_unit", "2/C"}, {"left_echelon", "plt"}}), ElementsAre("2/C"));
}

// A11: a mark for each 120 of length, every stretch of 40 inside the window has one.
TEST(Boundary, IsMarkedOnceForEveryHundredAndTwentyMillimetres) {
    for (const auto& [length, marks] : {std::pair{50.0, 1U}, std::pair{170.0, 1U}, std::pair{185.0, 2U}}) {
        Made made = testing::sample("boundary", {100, 75});
        made.points = {{8, 75}, {8 + length, 75}};
        MadeFilm film;
        film.add(made);
        EXPECT_EQ(testing::texts(film.drawn()).size(), 2 * marks) << length;
    }
}

TEST(Boundary, IsMarkedOnItsStraightestPlace) {
    Made made = testing::sample("boundary", {100, 75});
    made.points = {{60, 75}, {98, 75}, {100, 71}, {102, 75}, {140, 75}};  // a kink in the middle
    MadeFilm film;
    film.add(made);
    for (const auto& box : testing::letterBoxes(film.drawn())) {
        EXPECT_GT(std::abs(box.middle.x - 100), 6);
    }
}

// Ties go to the western place: the same one whichever way the line was drawn.
TEST(Boundary, TakesTheWesternOfTwoEqualPlaces) {
    Made made = testing::sample("boundary", {100, 75});
    made.points = {{60, 75}, {98, 75}, {100, 71}, {102, 75}, {140, 75}};
    MadeFilm film;
    film.add(made);
    for (const auto& box : testing::letterBoxes(film.drawn())) {
        EXPECT_LT(box.middle.x, 100);
    }
}

}  // namespace
}  // namespace crosstick::symbols
