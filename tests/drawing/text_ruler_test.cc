#include "core/drawing/text_ruler.h"

#include <string>

#include <gtest/gtest.h>

#include "core/drawing/face_table.h"
#include "tests/drawing/random_lines.h"

namespace crosstick::drawing {
namespace {

using testing::kSeeds;
using testing::RandomLines;

const std::vector<std::string>& letters() {
    static const std::vector<std::string> kLetters{"A", "W", "i", "7", " ", "/", "(", ")",  ".",    "-",
                                                   "Ä", "é", "°", "Ω", "ж", "–", "→", "漢", "\x80", "\xc3"};
    return kLetters;
}

std::string randomRow(RandomLines& random) {
    std::string row;
    for (int n = random.below(12); n > 0; --n) {
        row += letters()[static_cast<std::size_t>(random.below(static_cast<int>(letters().size())))];
    }
    return row;
}

// Advances that the engraving's own table of letters gives, in em.
TEST(Ruler, AgreesWithAdvancesMeasuredFromTheFace) {
    const TextRuler& ruler = bundledRuler();
    EXPECT_NEAR(ruler.advance("CCP", Weight::Regular), 1.800, 5e-4);
    EXPECT_NEAR(ruler.advance("RLY", Weight::Regular), 1.800, 5e-4);
    EXPECT_NEAR(ruler.advance("ORP", Weight::Regular), 2.050, 5e-4);
    EXPECT_NEAR(ruler.advance("PL FLINT", Weight::Regular), 4.250, 5e-4);
}

TEST(Ruler, WidthGrowsWithTheCapital) {
    EXPECT_NEAR(textWidth("CCP", 0.76), 1.8, 5e-4);
    EXPECT_NEAR(textWidth("CCP", 2.0) / textWidth("CCP", 1.0), 2, 1e-12);
    EXPECT_EQ(textWidth("", 2.0), 0);
}

TEST(Ruler, RowIsAsWideAsItsPartsWithoutKerning) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        // A letter cut in two is no letter, so parts are joined by a blank.
        const std::string a = randomRow(random) + ' ';
        const std::string b = randomRow(random);
        for (const Weight weight : {Weight::Regular, Weight::Bold}) {
            EXPECT_NEAR(textWidth(a + b, 2, weight), textWidth(a, 2, weight) + textWidth(b, 2, weight), 1e-9);
        }
    }
}

TEST(Ruler, SetsEveryLetterWhereTheAdvancesBeforeItEnd) {
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        RandomLines random(seed);
        const std::string text = randomRow(random);
        const auto row = setRow(text, Weight::Regular);
        double at = 0;
        for (const GlyphPlace& place : row) {
            EXPECT_NEAR(place.at, at, 1e-12);
            const auto advance = faceAdvance(place.letter, Weight::Regular);
            ASSERT_TRUE(advance.has_value());
            EXPECT_EQ(advance->face, place.face);
            at += advance->em;
        }
        EXPECT_NEAR(bundledRuler().advance(text, Weight::Regular), at, 1e-12);
    }
}

TEST(Ruler, TakesTheWideFaceForLettersTheMainOneLacks) {
    EXPECT_EQ(setRow("A", Weight::Regular).front().face, Face::Main);
    EXPECT_EQ(setRow("ж", Weight::Regular).front().face, Face::Wide);
}

TEST(Ruler, DamagedTextBecomesQuestionMarksOneForEachByte) {
    for (const std::string damaged : {"\x80", "\xff", "\xc3", "\xe2\x82", "\xc0\xaf"}) {
        const auto row = setRow(damaged, Weight::Regular);
        EXPECT_EQ(row.size(), damaged.size()) << damaged.size();
        for (const GlyphPlace& place : row) {
            EXPECT_EQ(place.letter, U'?');
        }
    }
    const auto row = setRow(
        "A\xc3"
        "B",
        Weight::Regular);
    ASSERT_EQ(row.size(), 3U);
    EXPECT_EQ(row[2].letter, U'B');
}

}  // namespace
}  // namespace crosstick::drawing
