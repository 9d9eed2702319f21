// The command leg.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "asking.h"

namespace crosstick::app {
namespace {

using testing::HasSubstr;
using testing::Not;

/// The first piece of the demo's primary route.
std::vector<std::string> firstPiece(const std::vector<std::string>& more) {
    std::vector<std::string> arguments{"leg", "25TFL5427098060", "25T FL 54330 98520", "--date", "2027-03-13"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return arguments;
}

// By hand: atan2, GeodSolve, GeoConvert and MagneticField at the leg's middle.
TEST(LegCommand, AgreesWithTheHandCheck) {
    const Said answer = said(firstPiece({"--profile", "74", "--rate", "1.6", "--json"}));
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    ASSERT_EQ(answer.json().size(), 1U);
    const auto leg = answer.json()[0];
    EXPECT_EQ(leg.at("from"), "25TFL5427098060");
    EXPECT_EQ(leg.at("to"), "25TFL5433098520");
    EXPECT_NEAR(leg.at("grid_azimuth_deg"), 7.431407971, 1e-8);
    EXPECT_NEAR(leg.at("back_grid_azimuth_deg"), 187.431407971, 1e-8);
    EXPECT_NEAR(leg.at("true_azimuth_deg"), 8.865841589, 1e-7);
    EXPECT_NEAR(leg.at("back_true_azimuth_deg"), 188.866506096, 1e-7);
    const double gm = -9.456438689 - 1.4347658505;
    EXPECT_NEAR(leg.at("gm_angle_deg"), gm, 1e-7);
    EXPECT_NEAR(leg.at("magnetic_azimuth_deg"), 7.431407971 - gm, 1e-7);
    EXPECT_NEAR(leg.at("back_magnetic_azimuth_deg"), 187.431407971 - gm, 1e-7);
    EXPECT_NEAR(leg.at("grid_distance_m"), 463.896540190, 1e-8);
    EXPECT_NEAR(leg.at("ground_distance_m"), 463.946326, 1e-5);
    EXPECT_NEAR(leg.at("paces"), 343.32, 0.005);
    EXPECT_NEAR(leg.at("minutes"), 17.40, 0.005);
    for (const char* unknown : {"slope_distance_m", "climb_m", "descent_m"}) {
        EXPECT_TRUE(leg.at(unknown).is_null()) << unknown;
    }
}

TEST(LegCommand, HasNoPacesAndNoTimeWithoutProfileAndRate) {
    const auto leg = said(firstPiece({"--json"})).json().at(0);
    EXPECT_TRUE(leg.at("paces").is_null());
    EXPECT_TRUE(leg.at("minutes").is_null());
}

TEST(LegCommand, OfNoLengthHasNullAzimuths) {
    const Said answer = said({"leg", "46 -31", "46 -31", "--json"});
    ASSERT_EQ(answer.exit, Exit::Done);
    const auto leg = answer.json().at(0);
    for (const std::string kind : {"grid", "true", "magnetic"}) {
        EXPECT_TRUE(leg.at(kind + "_azimuth_deg").is_null());
        EXPECT_TRUE(leg.at("back_" + kind + "_azimuth_deg").is_null());
    }
    EXPECT_EQ(leg.at("grid_distance_m"), 0);
    EXPECT_EQ(leg.at("ground_distance_m"), 0);
    EXPECT_EQ(said({"leg", "46 -31", "46 -31"}).exit, Exit::Done);
}

TEST(LegCommand, WritesBothPointsInTheFirstOnesZone) {
    const auto leg = said({"leg", "52 5.99", "52 6.01", "--json"}).json().at(0);
    EXPECT_EQ(leg.at("zone"), 31);
    EXPECT_EQ(leg.at("from").get<std::string>().substr(0, 3), "31U");
    EXPECT_EQ(leg.at("to").get<std::string>().substr(0, 3), "31U");
    EXPECT_GT(leg.at("to_easting_m").get<double>(), leg.at("from_easting_m").get<double>());
}

TEST(LegCommand, WithoutADeclinationHasNoMagneticAzimuth) {
    const Said answer = said({"leg", "46 -31", "46.01 -31", "--date", "2040-01-01", "--json"});
    EXPECT_EQ(answer.exit, Exit::Done);
    const auto leg = answer.json().at(0);
    EXPECT_TRUE(leg.at("magnetic_azimuth_deg").is_null());
    EXPECT_TRUE(leg.at("grid_azimuth_deg").is_number());
    EXPECT_TRUE(leg.contains("declination_note"));
}

TEST(LegCommand, TakesPointsThatBeginWithAMinus) {
    const Said answer = said({"leg", "-36 -137", "-36.01 -137", "--json"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_NEAR(answer.json().at(0).at("true_azimuth_deg"), 180, 1e-6);
}

TEST(LegCommand, RoundsForPeopleAsTheTradeDoes) {
    const Said answer = said(firstPiece({"--profile", "74", "--rate", "1.6"}));
    EXPECT_EQ(answer.exit, Exit::Done);
    for (const char* told :
         {"018 / 198", "0330 / 3530", "007 / 187", "460 m", "343 double paces", "17 min",
          "11 degrees (190 mils) WEST; grid to magnetic: add 11", "25T FL 5427 9806", "463.897", "Caution"}) {
        EXPECT_THAT(answer.out, HasSubstr(told));
    }
    EXPECT_THAT(answer.out, Not(HasSubstr(" \n")));
}

TEST(LegCommand, SaysWhatCouldNotBeDoneInOneLine) {
    for (const auto& [from, to] :
         {std::pair{"46 -31", "nowhere"}, std::pair{"16SGL0182", "46 -31"}, std::pair{"52 5", "10 170"}}) {
        const Said answer = said({"leg", from, to, "--json"});
        EXPECT_EQ(answer.exit, Exit::CouldNot);
        EXPECT_EQ(answer.out, "");
        EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
    }
}

TEST(LegCommand, TakesWrongOptionsForWrongUse) {
    for (const auto& wrong : {std::vector<std::string>{"leg", "46 -31"},
                              {"leg"},
                              {"leg", "46 -31", "46.1 -31", "--rate", "0"},
                              {"leg", "46 -31", "46.1 -31", "--rate", "-4"},
                              {"leg", "46 -31", "46.1 -31", "--profile", "many"},
                              {"leg", "46 -31", "46.1 -31", "--date", "today"}}) {
        EXPECT_EQ(said(wrong).exit, Exit::WrongUse) << wrong.back();
    }
}

}  // namespace
}  // namespace crosstick::app
