// Marks of long lines are repeated (engraving A11): n = max(1, round(L / 120)) of them, and every stretch of 40 or more
// inside the window carries at least one: beside it or by an extension line where it has no straight or free place.
#include <algorithm>
#include <cmath>
#include <functional>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/symbols/ink.h"
#include "tests/symbols/random_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Point;
using drawing::Points;
using drawing::testing::RandomLines;
using ::testing::Each;
using ::testing::IsEmpty;
using testing::Made;
using testing::MadeFilm;
using testing::MadeRoute;

constexpr double kMustCarry = 40;
constexpr double kFarthest = 26;  // an extension line, and the letters off its end

/// In and out of the window, as boundaries of a whole operation lie on the film of a part of it.
Points farLine(RandomLines& random) {
    Points line;
    for (int n = 3 + random.below(5); n > 0; --n) {
        const double x = random.between(-120, 320);
        line.push_back({x, random.between(-90, 240)});
    }
    return line;
}

std::vector<Points> longStretches(const Points& line) {
    const drawing::Path path(line);
    std::vector<Points> seen;
    for (const drawing::Stretch& stretch : drawing::inside(path, MadeFilm::kWindow)) {
        if (stretch.length() >= kMustCarry) {
            seen.push_back(path.between(stretch.from, stretch.to));
        }
    }
    return seen;
}

/// For each stretch how far the nearest letters of a drawing lie from it.
std::vector<double> awayFrom(const std::vector<Points>& stretches, const drawing::Drawing& drawn) {
    std::vector<double> away;
    for (const Points& stretch : stretches) {
        double least = 1e9;
        for (const drawing::TurnedBox& box : testing::letterBoxes(drawn)) {
            for (const Point corner : box.corners()) {
                least = std::min(least, drawing::testing::distance(corner, stretch));
            }
        }
        away.push_back(least);
    }
    return away;
}

std::size_t rowsSaying(const drawing::Drawing& drawn, const std::string& words) {
    const auto texts = testing::texts(drawn);
    return static_cast<std::size_t>(
        std::count_if(texts.begin(), texts.end(), [&](const drawing::Text& text) { return text.text == words; }));
}

Made boundary(Points points) {
    return {.kind = "boundary",
            .points = std::move(points),
            .fields = {{"left_unit", "1/2"}, {"right_unit", "2/2"}, {"left_echelon", "plt"}}};
}

enum class ByHand { Yes, No };

class Repeats : public ::testing::TestWithParam<ByHand> {
  protected:
    static std::optional<Point> hand(RandomLines& random) {
        const double x = random.between(10, 190);
        const Point at{x, random.between(10, 140)};
        return GetParam() == ByHand::Yes ? std::optional(at) : std::nullopt;
    }
    int many = 0;  ///< lines that are seen in two pieces or more
    void check(const Points& line, const MadeFilm& film, const std::string& words) {
        const auto stretches = longStretches(line);
        many += stretches.size() > 1 ? 1 : 0;
        const bool mayMiss = GetParam() == ByHand::Yes;  // of the stretch that the hand's letters are for
        if (!stretches.empty()) {
            EXPECT_GE(rowsSaying(film.drawn(), words), stretches.size());
            auto away = awayFrom(stretches, film.drawn());
            std::sort(away.begin(), away.end());
            EXPECT_LT(away[away.size() - (mayMiss && away.size() > 1 ? 2 : 1)],
                      mayMiss && away.size() == 1 ? 1e9 : kFarthest);
            EXPECT_THAT(film.remarks(), IsEmpty());
        }
    }
    /// Many lines, each alone on a film, must say all of the words on every long stretch.
    void strew(const std::function<Made(const Points&)>& madeOn, const std::vector<std::string>& words) {
        for (std::uint64_t seed = 1; seed <= drawing::testing::kSeeds; ++seed) {
            SCOPED_TRACE("seed " + std::to_string(seed));
            RandomLines random(seed);
            const Points line = farLine(random);
            Made made = madeOn(line);
            made.labelAt = hand(random);
            MadeFilm film;
            film.add(made);
            for (const std::string& said : words) {
                check(line, film, said);
            }
        }
        EXPECT_GT(many, 20);
    }
};

TEST_P(Repeats, EveryLongStretchOfABoundaryCarriesBothDesignations) {
    strew([](const Points& line) { return boundary(line); }, {"1/2", "2/2"});
}

TEST_P(Repeats, EveryLongStretchOfASupplyRouteCarriesItsName) {
    strew([](const Points& line) { return Made{.kind = "main-supply-route", .points = line, .name = "AMBER"}; },
          {"MSR AMBER"});
}

INSTANTIATE_TEST_SUITE_P(Lines, Repeats, ::testing::Values(ByHand::Yes, ByHand::No));

TEST(RepeatsOfRoutes, EveryLongStretchCarriesTheName) {
    for (std::uint64_t seed = 1; seed <= drawing::testing::kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const Points line = farLine(random);
        MadeFilm film;
        film.add(MadeRoute{.vertices = line, .name = "QUILL"});
        const auto stretches = longStretches(line);
        if (!stretches.empty()) {
            EXPECT_GE(rowsSaying(film.drawn(), "RTE QUILL"), stretches.size());
            EXPECT_THAT(awayFrom(stretches, film.drawn()), Each(::testing::Lt(kFarthest)));
            EXPECT_THAT(film.remarks(), IsEmpty());
        }
    }
}

TEST(RepeatsOfStraightLines, AreOneInEachHundredAndTwenty) {
    constexpr drawing::Box kWide{0, 0, 600, 100};
    for (const double length : {50.0, 119.0, 179.0, 181.0, 299.0, 301.0, 540.0}) {
        SCOPED_TRACE(length);
        const auto expected = static_cast<std::size_t>(std::max(1L, std::lround(length / 120)));
        const Points line{{20, 50}, {20 + length, 50}};
        MadeFilm marked;
        marked.scale(Stage::kScale, kWide).add(boundary(line));
        EXPECT_EQ(rowsSaying(marked.drawn(), "1/2"), expected);
        EXPECT_EQ(rowsSaying(marked.drawn(), "2/2"), expected);
        MadeFilm way;
        way.scale(Stage::kScale, kWide).add(Made{.kind = "main-supply-route", .points = line, .name = "AMBER"});
        EXPECT_EQ(rowsSaying(way.drawn(), "MSR AMBER"), expected);
        MadeFilm route;
        route.scale(Stage::kScale, kWide).add(MadeRoute{.vertices = line, .name = "QUILL"});
        EXPECT_EQ(rowsSaying(route.drawn(), "RTE QUILL"), expected);
    }
}

// Engraving B2: no place on the line: both designations by one extension line, left over right.
TEST(RepeatsOfBoundaries, ABoundaryWithoutRoomIsNamedByOneExtensionLineLeftOverRight) {
    MadeFilm film;
    film.reserve({0, 68, 200, 82});
    film.add(boundary({{20, 75}, {120, 75}}));
    const drawing::Drawing drawn = film.drawn();
    const auto texts = testing::texts(drawn);
    ASSERT_EQ(texts.size(), 2U);
    EXPECT_EQ(texts[0].text, "1/2");
    EXPECT_EQ(texts[1].text, "2/2");
    EXPECT_NEAR(texts[1].start.y - texts[0].start.y, 3, 1e-6) << "one block";
    const auto lines = testing::inkLines(drawn);
    EXPECT_TRUE(std::any_of(lines.begin(), lines.end(), [](const testing::InkLine& line) {
        return line.width < 0.26 && std::abs(line.to.y - 75) < 1e-6 && std::abs(line.from.y - 75) > 6;
    })) << "an extension line ends on the boundary";
    EXPECT_THAT(film.remarks(), IsEmpty());
}

// An alternate without a name says that it is one (engraving E1).
TEST(RepeatsOfRoutes, AnAlternateWithoutANameSaysWhatItIs) {
    MadeFilm film;
    film.add(MadeRoute{.vertices = {{40, 75}, {140, 75}}, .use = plan::Use::Alternate});
    EXPECT_EQ(rowsSaying(film.drawn(), "ALTN"), 1U);
}

}  // namespace
}  // namespace crosstick::symbols
