// The command pace.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/app/asking.h"

namespace crosstick::app {
namespace {

using ::testing::HasSubstr;

TEST(PaceCommand, WorksOutFourConditionsAndSaysWhatIsOurs) {
    const Said answer = said({"pace", "--course", "100 116 single road", "--json"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    const auto list = answer.json();
    ASSERT_EQ(list.size(), 4U);
    EXPECT_EQ(list[0].at("basis"), "measured");
    EXPECT_EQ(list[0].at("double_paces_per_100_m"), 58);
    EXPECT_NEAR(list[2].at("double_paces_per_100_m").get<double>(), 74, 1e-9);
    EXPECT_EQ(list[3].at("basis"), "our own factor");
}

TEST(PaceCommand, CountsALegInBeads) {
    const Said answer = said({"pace", "--course", "600 372 road", "--course", "600 444 night", "--leg", "1080"});
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    EXPECT_THAT(answer.out, HasSubstr("10 beads and 59"));  // 80 m at 74
    EXPECT_THAT(answer.out, HasSubstr("measured over 600 m"));
    EXPECT_THAT(answer.out, ::testing::Not(HasSubstr("our own factor")));  // each light was walked
}

TEST(PaceCommand, SaysWhatIsNoCourse) {
    for (const char* course : {"far away", "600 4440", "-600 444"}) {
        const Said answer = said({"pace", "--course", course});
        EXPECT_EQ(answer.exit, Exit::CouldNot) << course;
        EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
    }
    EXPECT_EQ(said({"pace"}).exit, Exit::WrongUse);
}

}  // namespace
}  // namespace crosstick::app
