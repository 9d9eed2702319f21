// The command drift.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/app/asking.h"
#include "tests/app/made_plan.h"

namespace crosstick::app {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

// By hand beforehand: MITTEN's longest leg in one piece is its second, 1258.7 m: 62.9 m along, 43.9 m across.
TEST(DriftCommand, AgreesWithTheHandCheck) {
    const MadeFiles files;
    const Said answer = said({"drift", files.printedPlan(), "--route", "MITTEN", "--json"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    const auto route = answer.json().at(0);
    EXPECT_EQ(route.at("route"), "MITTEN");
    EXPECT_EQ(route.at("pace_error_percent"), 5);
    EXPECT_EQ(route.at("compass_error_deg"), 2);
    EXPECT_NEAR(route.at("longest_safe_leg_m").get<double>(), 1000, 1e-9);
    EXPECT_THAT(route.at("our_defaults").get<std::string>(), HasSubstr("5 % of pace"));
    const auto leg = route.at("legs").at(1);
    EXPECT_NEAR(leg.at("ellipse_major_m").get<double>(), 62.9, 0.05);
    EXPECT_NEAR(leg.at("ellipse_minor_m").get<double>(), 43.9, 0.05);
    EXPECT_EQ(leg.at("larger_than_found"), true);
}

TEST(DriftCommand, NamesOurDefaultsAndTheLegsThatMayBeMissed) {
    const MadeFiles files;
    const std::string plan = files.printedPlan();
    const Said ours = said({"drift", plan});
    ASSERT_EQ(ours.exit, Exit::Done) << ours.err;
    for (const char* told :
         {"RTE QUILL: pace 5 %, compass 2 degrees", "RTE MITTEN", "Our own defaults",
          "Longest safe leg to a point found within 50 m: 1000 m", "62.9 by 43.9", "leg 1 to CP 1, 2 to CP 6"}) {
        EXPECT_THAT(ours.out, HasSubstr(told));
    }
    const Said own = said({"drift", plan, "--pace", "2", "--compass", "1", "--within", "80"});
    EXPECT_THAT(own.out, Not(HasSubstr("Our own")));
    EXPECT_THAT(own.out, HasSubstr("Every point is found"));
}

TEST(DriftCommand, SaysWhatCouldNotBeDone) {
    const MadeFiles files;
    const std::string plan = files.printedPlan();
    EXPECT_EQ(said({"drift", plan, "--route", "FERN"}).exit, Exit::CouldNot);
    EXPECT_EQ(said({"drift", "no.gpkg"}).exit, Exit::CouldNot);
    for (const auto& [option, value] : {std::pair{"--pace", "-1"}, std::pair{"--pace", "many"},
                                        std::pair{"--compass", "46"}, std::pair{"--within", "0"}}) {
        EXPECT_EQ(said({"drift", plan, option, value}).exit, Exit::WrongUse) << option << value;
    }
}

}  // namespace
}  // namespace crosstick::app
