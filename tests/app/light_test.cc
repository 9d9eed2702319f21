// The command light.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "asking.h"

namespace crosstick::app {
namespace {

using testing::HasSubstr;

std::vector<std::string> kettle(const std::vector<std::string>& more) {
    std::vector<std::string> arguments{"light", "46.040741954 -31.009690948"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return arguments;
}

// The exercise's light by ephem 4.1.4, here within two seconds.
TEST(LightCommand, GivesTheExercisesLightInItsZone) {
    const Said answer = said(kettle({"--date", "2027-03-13", "--zone", "O", "--json"}));
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    const auto light = answer.json().at(0);
    const std::map<std::string, std::string> expected{{"nautical_dawn", "05:16:41"}, {"civil_dawn", "05:51:22"},
                                                      {"sunrise", "06:21:06"},       {"transit", "12:13:32"},
                                                      {"sunset", "18:06:45"},        {"civil_dusk", "18:36:34"},
                                                      {"nautical_dusk", "19:11:21"}, {"moonrise", "08:12:28"}};
    for (const auto& [key, time] : expected) {
        const auto told = light.at(key).get<std::string>();
        EXPECT_THAT(told, testing::EndsWith("-02:00"));
        const auto wanted = parseIsoTime("2027-03-13T" + time + "-02:00").value();
        EXPECT_LE(std::chrono::abs(parseIsoTime(told).value() - wanted), std::chrono::seconds(2)) << key << told;
    }
    EXPECT_TRUE(light.at("moonset").is_null());
    EXPECT_NEAR(light.at("moon_illuminated_percent").get<double>(), 27.5, 1.5);
    EXPECT_EQ(light.at("moon_illuminated_at"), "2027-03-13T12:00:00-02:00");
    EXPECT_TRUE(light.at("uncertain").empty());
}

TEST(LightCommand, WritesHoursAndMinutesAndNoneForPeople) {
    const Said answer = said(kettle({"--date", "2027-03-13", "--zone", "O"}));
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    for (const char* told : {"nautical dawn     0517", "sunset            1807", "moonset           none", "-0:50"}) {
        EXPECT_THAT(answer.out, HasSubstr(told));
    }
}

TEST(LightCommand, TakesZonesByLetterOffsetAndName) {
    const auto sunset = [](const char* zone) {
        const Said answer = said({"light", "59.9 10.75", "--date", "2027-10-31", "--zone", zone, "--json"});
        return answer.json().at(0).at("sunset").get<std::string>();
    };
    EXPECT_THAT(sunset("Europe/Oslo"), testing::EndsWith("+01:00"));
    EXPECT_EQ(sunset("A"), sunset("+01:00"));
    EXPECT_EQ(sunset("Europe/Oslo"), sunset("A"));
    EXPECT_THAT(sunset("-03:30"), testing::EndsWith("-03:30"));
    EXPECT_THAT(sunset("Z"), testing::EndsWith("Z"));
}

TEST(LightCommand, TakesTodayInZuluWhereNothingIsGiven) {
    const auto light = said({"light", "46 -31", "--json"}).json().at(0);
    EXPECT_EQ(light.at("date"), "2026-11-25");
    EXPECT_EQ(light.at("from"), "2026-11-25T00:00:00Z");
}

TEST(LightCommand, SaysNoneInPolarNight) {
    const auto light = said({"light", "78 15", "--date", "2027-01-05", "--json"}).json().at(0);
    for (const char* key : {"civil_dawn", "sunrise", "sunset", "civil_dusk"}) {
        EXPECT_TRUE(light.at(key).is_null()) << key;
    }
    EXPECT_TRUE(light.at("transit").is_string());
}

TEST(LightCommand, SaysWhatCouldNotBeDoneInOneLine) {
    for (const auto& wrong : {std::vector<std::string>{"light", "nowhere"},
                              {"light", "46 -31", "--zone", "J"},
                              {"light", "46 -31", "--zone", "Nowhere"},
                              {"light", "46 -31", "--zone", "localtime"},
                              {"light", "46 -31", "--zone", ""},
                              {"light", "46 -31", "--date", "2090-01-01"}}) {
        const Said answer = said(wrong);
        EXPECT_EQ(answer.exit, Exit::CouldNot) << wrong.back();
        EXPECT_EQ(answer.out, "");
        EXPECT_EQ(std::count(answer.err.begin(), answer.err.end(), '\n'), 1) << answer.err;
    }
    EXPECT_EQ(said({"light", "46 -31", "--date", "today"}).exit, Exit::WrongUse);
}

}  // namespace
}  // namespace crosstick::app
