#include "core/measures/typed_line.h"

#include <random>

#include <gtest/gtest.h>

namespace crosstick::measures {
namespace {

using Places = std::vector<std::string>;

TEST(TypedLine, PartsTheMeasureFromItsPlace) {
    EXPECT_EQ(readTypedLine("cp 4583 0845"), (TypedLine{"cp", {"4583 0845"}, {}}));
    EXPECT_EQ(readTypedLine("  cp   45830845 "), (TypedLine{"cp", {"45830845"}, {}}));
    EXPECT_EQ(readTypedLine("rally point 458 084"), (TypedLine{"rally point", {"458 084"}, {}}));
    EXPECT_EQ(readTypedLine("cp"), (TypedLine{"cp", {}, {}}));
    EXPECT_EQ(readTypedLine("5427 9806"), (TypedLine{"", {"5427 9806"}, {}}));
    EXPECT_EQ(readTypedLine(""), TypedLine{});
    EXPECT_EQ(readTypedLine("   "), TypedLine{});
}

TEST(TypedLine, TakesAPlaceInAnyWriting) {
    for (const char* place : {"25T FL 5427 9806", "25TFL54279806", "FL 5427 9806", "FL54279806", "25N 654270 5098060",
                              "46.0187 -31.0069", "46 01 07N 31 00 25W", "54270 98060"}) {
        EXPECT_EQ(readTypedLine("ccp " + std::string(place)), (TypedLine{"ccp", {place}, {}})) << place;
    }
}

TEST(TypedLine, TakesTwoLettersAtItsBeginForAnAbbreviation) {
    EXPECT_EQ(readTypedLine("fl 5427 9806").words, "fl");
    EXPECT_EQ(readTypedLine("FL54279806").words, "") << "written together they are a square";
}

TEST(TypedLine, LeavesNumbersAndDesignationsToTheMeasure) {
    EXPECT_EQ(readTypedLine("cp 3"), (TypedLine{"cp 3", {}, {}}));
    EXPECT_EQ(readTypedLine("cp 12 4583 0845"), (TypedLine{"cp 12", {"4583 0845"}, {}}));
    EXPECT_EQ(readTypedLine("cp 2A 4583 0845"), (TypedLine{"cp 2A", {"4583 0845"}, {}}));
    EXPECT_EQ(readTypedLine("1/2 inf sqd 5427 9806"), (TypedLine{"1/2 inf sqd", {"5427 9806"}, {}}));
    EXPECT_EQ(readTypedLine("hq B/1-9 inf coy 25T FL 5427 9806"),
              (TypedLine{"hq B/1-9 inf coy", {"25T FL 5427 9806"}, {}}));
    EXPECT_EQ(readTypedLine("pl bodkin 4583 0845"), (TypedLine{"pl bodkin", {"4583 0845"}, {}}));
}

TEST(TypedLine, TakesSeveralPlacesOneAfterTheOther) {
    const Places two{"4583 0845", "4590 0850"};
    for (const char* typed :
         {"pl 4583 0845, 4590 0850", "pl 4583 0845 4590 0850", "pl 4583 0845; 4590 0850", "pl 4583 0845,4590 0850,"}) {
        EXPECT_EQ(readTypedLine(typed).places, two) << typed;
        EXPECT_EQ(readTypedLine(typed).words, "pl") << typed;
    }
    EXPECT_EQ(readTypedLine("aa 45830845 45900850 45950830").places.size(), 3U);
    EXPECT_EQ(readTypedLine("op 46.0187, -31.0069").places, (Places{"46.0187, -31.0069"})) << "one place with a comma";
}

TEST(TypedLine, KnowsAPlaceThatIsNotWholeYet) {
    EXPECT_EQ(readTypedLine("cp 4583"), (TypedLine{"cp", {}, "4583"}));
    EXPECT_EQ(readTypedLine("cp 4583 08"), (TypedLine{"cp", {}, "4583 08"}));
    EXPECT_EQ(readTypedLine("cp 3 4583"), (TypedLine{"cp 3", {}, "4583"}));
    EXPECT_EQ(readTypedLine("cp 3 458"), (TypedLine{"cp 3", {}, "458"}));
    EXPECT_EQ(readTypedLine("cp 25T FL 54"), (TypedLine{"cp", {}, "25T FL 54"}));
}

TEST(TypedLine, NeverFailsAndLosesNoWord) {
    const std::uint32_t seed = 8121;
    SCOPED_TRACE(seed);
    std::mt19937 chance(seed);
    const std::string letters = "cpbLD/ 0123456789.,;-\"NW\xC3\xA4\n ";
    for (int round = 0; round < 4000; ++round) {
        std::string typed;
        for (auto n = chance() % 40; n-- > 0;) {
            typed += letters[chance() % letters.size()];
        }
        const TypedLine line = readTypedLine(typed);
        EXPECT_TRUE(line.places.empty() || line.unfinished.empty()) << typed;
        const auto told = [](std::string text) {
            std::erase_if(text, [](unsigned char c) { return std::isspace(c) != 0 || c == ',' || c == ';'; });
            return text;
        };
        std::string all = line.words + line.unfinished;
        for (const std::string& place : line.places) {
            all += place;
        }
        EXPECT_EQ(told(all), told(typed)) << typed;
    }
    EXPECT_LE(readTypedLine(std::string(100000, 'x')).words.size(), 400U);
}

}  // namespace
}  // namespace crosstick::measures
