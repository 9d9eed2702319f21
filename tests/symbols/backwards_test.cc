// A line drawn backwards looks the same, up to the sides that left and right give.
#include <algorithm>
#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include "tests/symbols/ink.h"
#include "tests/symbols/random_film.h"

namespace crosstick::symbols {
namespace {

using drawing::Points;
using drawing::testing::RandomLines;
using testing::Made;
using testing::MadeFilm;

constexpr std::uint64_t kSeeds = 80;

std::vector<std::string> sortedTexts(const drawing::Drawing& drawing) {
    std::vector<std::string> lines;
    for (const drawing::Text& text : testing::texts(drawing)) {
        drawing::Drawing one;
        drawing::Text rounded = text;
        // To a hundredth: the thousandth's last digit may round either way.
        const auto cut = [](double v) { return std::round(v * 100) / 100; };
        rounded.start = {cut(text.start.x), cut(text.start.y)};
        rounded.angle = Degrees(cut(text.angle.value()));
        one.marks.emplace_back(rounded);
        lines.push_back(describe(one));
    }
    std::sort(lines.begin(), lines.end());
    return lines;
}

void expectSame(const Made& there, const Made& back) {
    MadeFilm one;
    MadeFilm other;
    const drawing::Drawing a = one.add(there).drawn();
    const drawing::Drawing b = other.add(back).drawn();
    EXPECT_TRUE(testing::isSameInk(a, b)) << describe(a) << "\nbackwards\n" << describe(b);
    EXPECT_EQ(sortedTexts(a), sortedTexts(b));
}

Made reversed(Made made) {
    std::reverse(made.points.begin(), made.points.end());
    if (made.kind == "boundary") {
        std::swap(made.fields["left_unit"], made.fields["right_unit"]);
        std::swap(made.fields["left_echelon"], made.fields["right_echelon"]);
    }
    return made;
}

class Backwards : public ::testing::TestWithParam<const char*> {};

TEST_P(Backwards, ARandomOneLooksTheSame) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const Made made = testing::randomMeasure(random, GetParam());
        expectSame(made, reversed(made));
    }
}

INSTANTIATE_TEST_SUITE_P(Kinds, Backwards,
                         ::testing::Values("boundary", "phase-line", "line-of-departure", "limit-of-advance",
                                           "assembly-area", "named-area-of-interest"));

// Where both ends are equally near the window's right side, the southern one is lettered, whichever was drawn first.
TEST(Backwards, AShortUprightLineIsLetteredAtTheSameEnd) {
    const Made made{.kind = "phase-line", .points = {{100, 60}, {100, 75}}, .name = "FLINT"};
    expectSame(made, reversed(made));
}

}  // namespace
}  // namespace crosstick::symbols
