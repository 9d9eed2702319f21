// Names on films are written in capitals, whatever language they are of. Pairs: the Unicode Character Database's simple
// upper case mappings, from memory.
#include "core/units/capitals.h"

#include <gtest/gtest.h>

namespace crosstick {
namespace {

TEST(Capitals, LettersWithMarksHaveThem) {
    EXPECT_EQ(inCapitals("Sgt Müller, 2 Zug"), "SGT MÜLLER, 2 ZUG");
    EXPECT_EQ(inCapitals("àéîõøþ ÿ"), "ÀÉÎÕØÞ Ÿ");
    EXPECT_EQ(inCapitals("ąćęłńóśźż"), "ĄĆĘŁŃÓŚŹŻ");
    EXPECT_EQ(inCapitals("áčďéěíňóřšťúůýž"), "ÁČĎÉĚÍŇÓŘŠŤÚŮÝŽ");
    EXPECT_EQ(inCapitals("őűășț đ"), "ŐŰĂȘȚ Đ");
    EXPECT_EQ(inCapitals("жєїґ дяџћ"), "ЖЄЇґ ДЯЏЋ") << "a letter that is not known stays";
    EXPECT_EQ(inCapitals("straße ıł"), "STRASSE IŁ");
}

TEST(Capitals, OfCapitalsFiguresAndSignsNothingChanges) {
    for (const char* words :
         {"", "PHASE 2–3", "1:25 000 · WGS 84", "ÄÖÜ ŁŻ ĶĹ ЖЯ ÷×", "25T FL FM, 3/C (+)", "↑ 漢字 😀"}) {
        EXPECT_EQ(inCapitals(words), words);
        EXPECT_EQ(inCapitals(inCapitals(words)), inCapitals(words));
    }
}

TEST(Capitals, DamagedBytesStayAsTheyAre) {
    EXPECT_EQ(inCapitals("a\xC3"), "A\xC3");
    EXPECT_EQ(inCapitals("\xC3z\xFF\x80"), "\xC3Z\xFF\x80");
}

}  // namespace
}  // namespace crosstick
