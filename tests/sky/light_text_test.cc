// Light as papers write it.
#include "core/sky/light_text.h"

#include <gtest/gtest.h>

namespace crosstick::sky {
namespace {

using std::chrono::seconds;

const ZoneRules kZulu{TimeZone{}};

Light lightOfADay() {
    Light light;
    light.from = Instant(std::chrono::sys_days(std::chrono::year(2027) / 3 / 13));
    light.until = light.from + std::chrono::days(1);
    return light;
}

TEST(LightText, SaysNoneUncertainAndTwice) {
    const Light light = lightOfADay();
    const auto after = [&](int since, Certainty certainty = Certainty::Sure) {
        return Moment{light.from + seconds(since), certainty};
    };
    EXPECT_EQ(eventText(light, {}, kZulu), "none");
    EXPECT_EQ(eventText(light, {after(5 * 3600 + 16 * 60 + 41), {}}, kZulu), "0517");
    EXPECT_EQ(eventText(light, {after(180), after(86280)}, kZulu), "0003 and 2358");
    EXPECT_EQ(eventText(light, {after(3780, Certainty::Uncertain), {}}, kZulu), "0103 uncertain");
    EXPECT_EQ(eventText(light, {after(3780, Certainty::NotQuite), {}}, kZulu), "uncertain");
    EXPECT_EQ(eventText(light, {after(86390), {}}, kZulu), "2359");
    EXPECT_EQ(eventText(light, {after(0), {}}, ZoneRules(TimeZone{'O', std::chrono::hours(-2)})), "2200");
}

TEST(LightText, RoundsTheMoonToWholePercents) {
    EXPECT_EQ(moonLitText(0), "0 %");
    EXPECT_EQ(moonLitText(0.2751), "28 %");
    EXPECT_EQ(moonLitText(0.9951), "100 %");
}

TEST(LightText, ListsEveryEventOnceInOrder) {
    const Light light = lightOfADay();
    const auto rows = rowsOf(light);
    EXPECT_EQ(rows.front().key, "nautical_dawn");
    EXPECT_EQ(rows.back().key, "moonset");
    for (const LightRow& row : rows) {
        EXPECT_EQ(std::count_if(rows.begin(), rows.end(), [&](const auto& r) { return r.event == row.event; }), 1);
    }
}

}  // namespace
}  // namespace crosstick::sky
