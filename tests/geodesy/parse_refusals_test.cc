#include <gtest/gtest.h>

#include "core/geodesy/faults.h"
#include "core/geodesy/grid_reference.h"

namespace crosstick::geodesy {
namespace {

std::string argument(const Error& error, std::string_view key) {
    for (const Argument& a : error.arguments) {
        if (a.key == key) {
            const auto* text = std::get_if<std::string>(&a.value);
            return text != nullptr ? *text : "a number";
        }
    }
    return "nothing";
}

void expectFault(const std::string& text, FaultId fault) {
    const auto read = parsePoint(text);
    ASSERT_FALSE(read) << text;
    EXPECT_EQ(read.error().fault.name, fault.name) << text;
    EXPECT_LE(argument(read.error(), "text").size(), 63U);
    EXPECT_EQ(argument(read.error(), "text").find('\n'), std::string::npos);
}

// FM 21-26 ch. 4 has 16SGL, 16SGL08 and 16SGL0182 on a sheet on Clarke 1866, whose rows are lettered ten on; on WGS 84
// the same square is 16SGA.
TEST(ParsePoint, ExplainsTheOlderRowLettering) {
    for (const auto& [old, now] : {std::pair{"16SGL", "16SGA"}, std::pair{"16SGL08", "16SGA08"},
                                   std::pair{"16SGL0182", "16SGA0182"}, std::pair{"16s gl 01 82", "16SGA0182"}}) {
        const auto read = parsePoint(old);
        ASSERT_FALSE(read) << old;
        EXPECT_EQ(read.error().fault, kOldLettering);
        EXPECT_EQ(argument(read.error(), "twin"), now);
        EXPECT_EQ(argument(read.error(), "found"), "GL");
        EXPECT_EQ(argument(read.error(), "text"), old);
        EXPECT_TRUE(parsePoint(now)) << now;
    }
    const auto twin = parsePoint("16SGA0182").value();
    EXPECT_EQ(twin.southWest.at, (PlanePoint{Metres(701000), Metres(3582000)}));
    // Own figure, the middle of that square of 1 km.
    const auto middle = geographic({twin.southWest.zone, {Metres(701500), Metres(3582500)}}).value();
    EXPECT_NEAR(middle.latitude.value(), 32.361296, 5e-7);
    EXPECT_NEAR(middle.longitude.value(), -84.858490, 5e-7);
}

TEST(ParsePoint, SaysWhichPartOfAnMgrsReferenceIsWrong) {
    expectFault("61SUJ2348", kBadZone);
    expectFault("0SUJ2348", kBadZone);
    expectFault("18IUJ2348", kBadBand);
    expectFault("18OUJ2348", kBadBand);
    expectFault("18SAA2348", kBadSquare);
    expectFault("18SUI2348", kBadSquare);
    expectFault("18SUJ234", kOddDigits);
    expectFault("18S UJ 2348 064", kOddDigits);
    expectFault("18S UJ 234 80647", kUnequalDigits);
    expectFault("18SUJ123456789012123456789012", kTooManyDigits);
    expectFault("18S", kZoneAlone);
    expectFault("18T", kZoneAlone);
    expectFault("SUJ23480647", kNoZoneNumber);
    expectFault("UJ 2348 0647", kNoZoneNumber);
}

TEST(ParsePoint, SaysWhatIsWrongWithAUtmPlace) {
    expectFault("61N 323483 4306479", kBadZone);
    expectFault("00N 323483 4306479", kBadZone);
    expectFault("18I 323483 4306479", kBadBand);
    expectFault("18T 323483 4306479", kBandMismatch);
    expectFault("18H 323483 4306479", kBandMismatch);
    expectFault("18N 4306479 323483", kOffGrid);
    expectFault("18N 12 34", kOffGrid);
    expectFault("18 323483 4306479", kNoHemisphere);
    expectFault("323483 4306479", kNoZone);
    expectFault("K 2000000 1555731", kNoZoneNumber);
}

TEST(ParsePoint, SaysWhatIsWrongWithAngles) {
    expectFault("91 10", kBadLatitude);
    expectFault("-90.0001 10", kBadLatitude);
    expectFault("10 180.5", kBadLongitude);
    expectFault("38 60 0N 77 0 0W", kBadSixty);
    expectFault("38 10 60N 77 0 0W", kBadSixty);
    expectFault("38.5 10N 77 0W", kBadSixty);
    expectFault("38 -10 77 0", kBadSixty);
    expectFault("38.9N -77.03", kOneLetter);
    expectFault("1E5 2", kOneLetter);
}

TEST(ParsePoint, NeverGuesses) {
    for (const char* text : {"38",
                             "38N",
                             "38 53 22 77 02",
                             "38N 77N",
                             "38E 77W",
                             "38 53 N 77 W 02",
                             "-38N 77W",
                             "1 2 3 4 5 6 7 8",
                             "hello",
                             "abc",
                             "one two",
                             "38.9 x",
                             "38..9 77",
                             "38,9,77",
                             "(",
                             "--",
                             "N",
                             "NS",
                             "38 - 77",
                             "nan nan",
                             "inf 0",
                             "1e400 2",
                             "lon 10 N lat 20 E",
                             "\u00b0",
                             "18SUJ23480647 18SUJ23480647",
                             "\x01\x02",
                             "\xff\xfe 1 2",
                             "lat lon",
                             ", ,",
                             "5 N 6"}) {
        const auto read = parsePoint(text);
        EXPECT_FALSE(read) << text;
    }
}

TEST(ParsePoint, SaysThatThereIsNothing) {
    expectFault("", kEmptyPoint);
    expectFault("  \t ", kEmptyPoint);
}

TEST(ParsePoint, RepeatsALongTextShortened) {
    expectFault(std::string(100000, '7'), kNotAPoint);
    expectFault("not\na\nplace " + std::string(150, 'x'), kNotAPoint);
    std::string accents = "x";
    for (int n = 0; n < 60; ++n) {
        accents += "\u00e9";
    }
    const auto read = parsePoint(accents);
    ASSERT_FALSE(read);
    const std::string shown = argument(read.error(), "text");
    EXPECT_EQ(shown.size() % 2, 0U) << "a letter of two bytes was cut in half: " << shown;
}

}  // namespace
}  // namespace crosstick::geodesy
