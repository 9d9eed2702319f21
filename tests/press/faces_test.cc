#include <gtest/gtest.h>

#include "core/drawing/face_table.h"
#include "tests/press/desk.h"

namespace crosstick::press {
namespace {

using drawing::Face;
using drawing::Weight;

// A thousandth of an em is 0.003 mm of a letter 2 mm high.
constexpr double kSame = 0.001;

TEST(Faces, AdvancesAreThoseOfTheTable) {
    for (const Face face : {Face::Main, Face::Wide}) {
        const auto letters = drawing::lettersOf(face);
        ASSERT_FALSE(letters.empty());
        for (const Weight weight : {Weight::Regular, Weight::Bold}) {
            for (const char32_t letter : letters) {
                const auto known = drawing::faceAdvance(letter, weight);
                ASSERT_TRUE(known.has_value());
                EXPECT_NEAR(testing::faces().advance(letter, known->face, weight), known->em, kSame)
                    << "U+" << std::hex << static_cast<std::uint32_t>(letter);
            }
        }
    }
}

TEST(Faces, EveryLetterOfTheTableHasAGlyph) {
    for (const Face face : {Face::Main, Face::Wide}) {
        for (const char32_t letter : drawing::lettersOf(face)) {
            for (const Weight weight : {Weight::Regular, Weight::Bold}) {
                EXPECT_NE(testing::faces().glyph(letter, face, weight), 0U)
                    << "U+" << std::hex << static_cast<std::uint32_t>(letter);
            }
        }
    }
}

// B612 1.008: capitals reach 760 of 1000 units (engraving 0).
TEST(Faces, CapitalsAreAsHighAsAsked) {
    for (const double height : {1.8, 2.0, 3.6}) {
        drawing::Text text;
        text.text = "H";
        text.capHeight = height;
        const QRectF box = testing::faces().outlines(text).boundingRect();
        EXPECT_NEAR(box.height(), height, 0.01 * height);
        EXPECT_NEAR(box.bottom(), 0, 0.005);
    }
}

TEST(Faces, AreTheBundledOnesWhateverIsInstalled) {
    for (const Weight weight : {Weight::Regular, Weight::Bold}) {
        const std::string family = testing::faces().font(Face::Main, weight).familyName().toStdString();
        EXPECT_EQ(family, weight == Weight::Regular ? "Crosstick B612-Regular" : "Crosstick B612-Bold");
    }
}

TEST(Faces, NamesTheFileThatIsMissing) {
    (void)testing::faces();
    const auto none = Faces::open("/nowhere/at/all");
    ASSERT_FALSE(none.has_value());
    EXPECT_EQ(none.error().fault.name, "press/no-face");
    EXPECT_EQ(std::get<std::string>(none.error().arguments.front().value), "/nowhere/at/all/B612-Regular.otf");
}

}  // namespace
}  // namespace crosstick::press
