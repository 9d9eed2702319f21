// The command grid.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "asking.h"

namespace crosstick::app {
namespace {

using testing::HasSubstr;
using testing::Not;

std::size_t linesIn(const std::string& text) {
    return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

// FGDC-STD-011-2001: the corner named by 18SUJ2348306479; convergence and scale by GeoConvert -c.
TEST(GridCommand, GivesEveryKeyInFullPrecision) {
    const Said answer = said({"grid", "18SUJ2348306479", "--date", "2027-03-13", "--json"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_EQ(answer.err, "");
    ASSERT_EQ(answer.json().size(), 1U);
    const auto point = answer.json()[0];
    EXPECT_EQ(point.at("mgrs"), "18SUJ2348306479");
    EXPECT_EQ(point.at("square_m"), 1);
    EXPECT_EQ(point.at("zone"), 18);
    EXPECT_EQ(point.at("hemisphere"), "n");
    EXPECT_EQ(point.at("easting_m"), 323483);
    EXPECT_EQ(point.at("northing_m"), 4306479);
    EXPECT_NEAR(point.at("latitude_deg"), 38.8894628, 1e-6);
    EXPECT_NEAR(point.at("longitude_deg"), -77.0352420, 1e-6);
    EXPECT_NEAR(point.at("convergence_deg"), -1.278, 1e-3);
    EXPECT_NEAR(point.at("scale_factor"), 0.99998, 1e-5);
    EXPECT_TRUE(point.at("declination_deg").is_number());
    EXPECT_NEAR(point.at("gm_angle_deg").get<double>(),
                point.at("declination_deg").get<double>() - point.at("convergence_deg").get<double>(), 1e-12);
    EXPECT_FALSE(point.contains("declination_note"));
}

// The hand check of the demo's sheet centre.
TEST(GridCommand, AgreesWithTheHandCheck) {
    const auto point = said({"grid", "25N 654000 5100500", "--date", "2027-03-13", "--json"}).json().at(0);
    EXPECT_NEAR(point.at("latitude_deg"), 46.040741953599, 1e-11);
    EXPECT_NEAR(point.at("longitude_deg"), -31.009690947763, 1e-11);
    EXPECT_NEAR(point.at("convergence_deg"), 1.432971695, 1e-9);
    EXPECT_NEAR(point.at("declination_deg"), -9.461137, 1e-6);
    EXPECT_NEAR(point.at("gm_angle_deg"), -10.894109, 1e-6);
    EXPECT_TRUE(point.at("square_m").is_null());
}

// WMM2025 report, test values: 2025.5 at 6 km, 36 S 137 W gives 20.28. 2 July 2025 is 2025.4986.
TEST(GridCommand, TakesPointsAndHeightsThatBeginWithAMinus) {
    const Said answer = said({"grid", "-36 -137", "--date", "2025-07-02", "--height", "6000", "--json"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_NEAR(answer.json().at(0).at("declination_deg"), 20.28, 0.01);
    EXPECT_EQ(answer.json().at(0).at("hemisphere"), "s");
    EXPECT_EQ(answer.json().at(0).at("input"), "-36 -137");
    for (const auto& height : {std::vector<std::string>{"--height", "-100"}, {"--height=-100"}}) {
        std::vector<std::string> arguments{"grid", "-36 -137", "--json"};
        arguments.insert(arguments.begin() + 1, height.begin(), height.end());
        const Said low = said(arguments);
        ASSERT_EQ(low.exit, Exit::Done) << low.err;
        EXPECT_EQ(low.json().at(0).at("height_m"), -100);
    }
    EXPECT_EQ(said({"grid", "-.5 10", "--json"}).exit, Exit::Done);
}

TEST(GridCommand, TakesTodayAndHeightZeroWhereNotToldOtherwise) {
    const auto point = said({"grid", "46 -31", "--json"}).json().at(0);
    EXPECT_EQ(point.at("date"), "2026-11-25");
    EXPECT_EQ(point.at("height_m"), 0);
}

TEST(GridCommand, HasNoZoneNorZoneLettersAtThePoles) {
    const auto point = said({"grid", "84 0", "--json"}).json().at(0);
    EXPECT_EQ(point.at("mgrs"), "ZAA0000033272");
    EXPECT_EQ(point.at("zone"), 0);
    EXPECT_EQ(said({"grid", "s 2746000 1515000", "--json"}).json().at(0).at("hemisphere"), "s");
}

TEST(GridCommand, SaysWhyThereIsNoDeclination) {
    const auto late = said({"grid", "46 -31", "--date", "2031-01-01", "--json"});
    EXPECT_EQ(late.exit, Exit::Done);
    const auto point = late.json().at(0);
    for (const char* key : {"declination_deg", "declination_sigma_deg", "gm_angle_deg"}) {
        EXPECT_TRUE(point.at(key).is_null()) << key;
    }
    EXPECT_TRUE(point.at("convergence_deg").is_number());
    EXPECT_THAT(point.at("declination_note").get<std::string>(), HasSubstr("2025.0 to 2030.0"));

    const auto pole = said({"grid", "89 -121", "--date", "2025-01-01", "--height", "28000", "--json"}).json().at(0);
    EXPECT_TRUE(pole.at("declination_deg").is_null());
    EXPECT_THAT(pole.at("declination_note").get<std::string>(), HasSubstr("1504 nT"));
}

TEST(GridCommand, NeverWritesANegativeZeroOrNotANumber) {
    const Said answer = said({"grid", "0 0", "0 3", "-0 -0", "90 0", "-90 0", "0 180", "--json"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_EQ(answer.json().size(), 6U);
    for (const char* bad : {"-0,", "-0.0,", "-0.0\n", "nan", "inf"}) {
        EXPECT_THAT(answer.out, Not(HasSubstr(bad)));
    }
}

TEST(GridCommand, ReadsStandardInputALineAPoint) {
    const Said answer = said({"grid", "--json"}, "18SUJ2348306479\r\n\n  46 -31\n-36 -137");
    EXPECT_EQ(answer.exit, Exit::Done) << answer.err;
    ASSERT_EQ(answer.json().size(), 3U);
    EXPECT_EQ(answer.json()[0].at("mgrs"), "18SUJ2348306479");
    EXPECT_EQ(answer.json()[2].at("hemisphere"), "s");
    EXPECT_EQ(said({"grid", "--json"}, "").json().size(), 0U);
    EXPECT_EQ(said({"grid", "--json"}, "").out, "[]\n");
}

TEST(GridCommand, NamesABadLineAndAnswersTheOthers) {
    const Said answer = said({"grid", "--json"}, "18SUJ23480647\nno place\n\n16SGL0182\n46 -31\n");
    EXPECT_EQ(answer.exit, Exit::CouldNot);
    EXPECT_EQ(answer.json().size(), 2U);
    ASSERT_EQ(linesIn(answer.err), 2U) << answer.err;
    EXPECT_THAT(answer.err, HasSubstr("line 2: \"no place\""));
    EXPECT_THAT(answer.err, HasSubstr("line 4: \"16SGL0182\""));
    EXPECT_THAT(answer.err, HasSubstr("16SGA0182"));
}

TEST(GridCommand, NamesABadArgumentAndAnswersTheOthers) {
    const Said answer = said({"grid", "46 -31", "91 0", "--json"});
    EXPECT_EQ(answer.exit, Exit::CouldNot);
    EXPECT_EQ(answer.json().size(), 1U);
    EXPECT_THAT(answer.err, HasSubstr("point 2: Latitude 91"));
}

TEST(GridCommand, ExplainsTheLetterThatCanBeABandOrAHemisphere) {
    const Said answer = said({"grid", "18S 323483 4306479"});
    EXPECT_EQ(answer.exit, Exit::CouldNot);
    EXPECT_THAT(answer.err, HasSubstr("18 south"));
    EXPECT_EQ(linesIn(answer.err), 1U);
}

TEST(GridCommand, IsForPeopleWithoutJson) {
    const Said answer = said({"grid", "18S UJ 2348 0647", "--date", "2027-03-13"});
    EXPECT_EQ(answer.exit, Exit::Done);
    EXPECT_THAT(answer.out, HasSubstr("18S UJ 2348 0647\n"));
    EXPECT_THAT(answer.out, HasSubstr("square of 10 m"));
    EXPECT_THAT(answer.out, HasSubstr("18 north 323480.000 4306470.000"));
    EXPECT_THAT(answer.out, HasSubstr("1 degree 17 minutes west of true north"));
    EXPECT_THAT(answer.out, HasSubstr("WMM2025 on 2027-03-13 at height 0 m"));
    EXPECT_THAT(answer.out, HasSubstr("Caution"));
    EXPECT_THAT(answer.out, HasSubstr("9.5 degrees (170 mils) WEST; grid to magnetic: add 9.5 (-9.41"));
    EXPECT_THAT(answer.out, Not(HasSubstr(" \n"))) << "blanks at a line's end";
}

TEST(GridCommand, TakesWrongOptionsForWrongUse) {
    for (const auto& wrong : {std::vector<std::string>{"grid", "0 0", "--date", "2027-13-01"},
                              {"grid", "0 0", "--date", "13 March"},
                              {"grid", "0 0", "--height", "high"},
                              {"grid", "0 0", "--height", "nan"},
                              {"grid", "0 0", "--no-such-option"}}) {
        const Said answer = said(wrong);
        EXPECT_EQ(answer.exit, Exit::WrongUse) << wrong.back();
        EXPECT_EQ(answer.out, "");
        EXPECT_NE(answer.err, "");
    }
}

TEST(GridCommand, TellsItsUse) {
    const Said help = said({"grid", "--help"});
    EXPECT_EQ(help.exit, Exit::Done);
    for (const char* told : {"POINT", "--date", "--height", "--json", "south-west corner", "WMM2025"}) {
        EXPECT_THAT(help.out, HasSubstr(told));
    }
}

}  // namespace
}  // namespace crosstick::app
