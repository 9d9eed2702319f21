// Pace counts from measured courses.
#include "core/movement/pace.h"

#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/movement/faults.h"

namespace crosstick::movement {
namespace {

using plan::Going;
using plan::Light;
using testing::HasSubstr;

constexpr PaceConditions kRoadByDay{Going::Road, Light::Day};
constexpr PaceConditions kCrossByDay{Going::CrossCountry, Light::Day};
constexpr PaceConditions kCrossByNight{Going::CrossCountry, Light::Night};

plan::PaceCourse course(const char* text) {
    return parseCourse(text).value();
}

TEST(Pace, IsReadFromTheCourseThatWasWalked) {
    const plan::PaceCourse night = course("600 444 cross-country night");
    EXPECT_EQ(night.length, Metres(600));
    EXPECT_EQ(night.doublePaces, 444);
    EXPECT_EQ(night.light, Light::Night);
    EXPECT_EQ(night.going, Going::CrossCountry);
    EXPECT_EQ(course("100 62").light, Light::Day);
    EXPECT_EQ(course("  100  116   single road ").doublePaces, 58);
    EXPECT_EQ(course("100 62 road double day").going, Going::Road);
    EXPECT_EQ(course("100 62 night , P14 ").walker, "P14");
}

TEST(Pace, RefusesWhatIsNoCourse) {
    for (const char* text : {"", "600", "600 444 up hill", "-600 444", "600 -444", "0 0", "nan 62", "600 inf",
                             "600 444 Night", "six hundred"}) {
        const auto read = parseCourse(text);
        ASSERT_FALSE(read) << text;
        EXPECT_EQ(read.error().fault, kBadCourse) << text;
    }
    for (const char* text : {"600 100", "100 160", "1e-300 1e300"}) {
        const auto read = parseCourse(text);
        ASSERT_FALSE(read) << text;
        EXPECT_EQ(read.error().fault, kOddCount) << text;
    }
}

// Task 071-329-1006 as trade.md 4.5 has it: 116 single paces to 100 m on the level, about 148 cross-country.
TEST(Pace, GoesFromRoadToCrossCountryByTheTrainingTasksRatio) {
    const std::vector<plan::PaceCourse> courses{course("100 116 single road")};
    const WorkedPace cross = paceFor(courses, kCrossByDay).value();
    EXPECT_NEAR(cross.doublePacesPer100, 74, 1e-9);
    EXPECT_EQ(cross.basis, PaceBasis::TrainingRatio);
    EXPECT_EQ(cross.how, "58.0 by road day x 148/116");
    const std::vector<plan::PaceCourse> back{course("100 148 single")};
    EXPECT_NEAR(paceFor(back, kRoadByDay)->doublePacesPer100, 58, 1e-9);
}

TEST(Pace, SaysWhereAFactorIsOurs) {
    const std::vector<plan::PaceCourse> courses{course("100 116 single road")};
    const WorkedPace night = paceFor(courses, kCrossByNight).value();
    EXPECT_NEAR(night.doublePacesPer100, 74 * kNightFactor, 1e-9);
    EXPECT_EQ(night.basis, PaceBasis::OurFactor);
    EXPECT_THAT(night.how, HasSubstr("our own factor"));
}

TEST(Pace, MeasuredInTheConditionsGoesBeforeEveryFactor) {
    const std::vector<plan::PaceCourse> courses{course("100 58 road"), course("400 300 night"),
                                                course("600 438 night")};
    const WorkedPace night = paceFor(courses, kCrossByNight).value();
    EXPECT_NEAR(night.doublePacesPer100, 73.8, 1e-9);
    EXPECT_EQ(night.basis, PaceBasis::Measured);
    EXPECT_EQ(night.how, "measured over 1000 m");
    EXPECT_EQ(paceFor(courses, kCrossByDay)->basis, PaceBasis::TrainingRatio);  // rather than our night factor
    EXPECT_FALSE(paceFor(plan::Heading{}, kCrossByDay));
}

TEST(Pace, BeadsAreWholeHundredsAndWhatIsLeft) {
    const Beads beads = beadsFor(Metres(463.95), 74);
    EXPECT_EQ(beads.pulled, 4);
    EXPECT_NEAR(beads.doublePacesAfter, 63.95 * 0.74, 1e-9);
    EXPECT_EQ(beadsFor(Metres(100), 74).pulled, 1);
    EXPECT_EQ(beadsFor(Metres(0), 74).pulled, 0);
}

}  // namespace
}  // namespace crosstick::movement
