#include "core/files/json_form.h"

#include <gtest/gtest.h>

#include "core/files/faults.h"
#include "tests/plan/random_plans.h"

namespace crosstick::files {
namespace {

// Law of json_form.h: xFrom(toJson(x)) == x, through text as a file would hold it.
class JsonForm : public ::testing::TestWithParam<std::uint64_t> {};

Json throughText(const Json& json) {
    return *parseJson(jsonText(json));
}

TEST_P(JsonForm, GivesBackWhatItWasMadeOf) {
    SCOPED_TRACE(GetParam());
    plan::testing::RandomPlans random(GetParam());
    const plan::Plan plan = random.plan(5);
    plan.measures().forEach([](const plan::MeasurePtr& m) { EXPECT_EQ(*measureFrom(throughText(toJson(*m))), *m); });
    for (const auto& film : plan.films()) {
        EXPECT_EQ(*filmFrom(throughText(toJson(*film))), *film);
    }
    for (const auto& route : plan.routes()) {
        EXPECT_EQ(*routeFrom(throughText(toJson(*route))), *route);
    }
    EXPECT_EQ(*sheetFrom(throughText(toJson(*plan.sheets().front()))), *plan.sheets().front());
    EXPECT_EQ(*headingFrom(throughText(toJson(plan.heading()))), plan.heading());
    EXPECT_EQ(*phasesFrom(throughText(toJson(plan.phases()))), plan.phases());
    EXPECT_EQ(*forceFrom(throughText(toJson(plan.force()))), plan.force());
    EXPECT_EQ(*registrationFrom(throughText(toJson(plan.registration()))), plan.registration());
}

INSTANTIATE_TEST_SUITE_P(Seeds, JsonForm, ::testing::Range<std::uint64_t>(1, 30));

TEST(JsonForm, ADifferenceLeadsToTheSamePlanAfterTheRoundTrip) {
    for (std::uint64_t seed = 200; seed < 230; ++seed) {
        SCOPED_TRACE(seed);
        plan::testing::RandomPlans random(seed);
        const plan::Plan before = random.plan(20);
        plan::Plan after = before;
        for (int n = 0; n < 6; ++n) {
            after = random.edited(after);
        }
        const auto difference = differenceFrom(throughText(toJson(plan::difference(before, after))));
        ASSERT_TRUE(difference);
        EXPECT_TRUE(plan::apply(before, *difference) == after);
    }
}

TEST(JsonForm, WhatSaysNothingOfTimesIsWrittenAsBefore) {
    const Json heading = toJson(plan::Heading{});
    for (const char* key : {"timing", "h_hour", "preparations"}) {
        EXPECT_FALSE(heading.contains(key)) << key;
    }
    plan::Route route;
    route.vertices.resize(2);
    route.stops = {{1, Uuid{{9}}}};
    EXPECT_EQ(toJson(route)["points"][0].size(), 2U);
    const Json force = toJson(plan::Force{});
    EXPECT_FALSE(force.contains("tasks"));
    EXPECT_FALSE(force.contains("events"));
}

TEST(JsonForm, TimingOutsideItsRangesIsRefused) {
    for (const char* text :
         {R"({"timing": {"rule": "guess"}})", R"({"timing": {"road_day_km_per_h": 0}})",
          R"({"timing": {"road_day_km_per_h": 31}})", R"({"preparations": [{"minutes": -1}]})",
          R"({"preparations": [{"name": "orders"}]})", R"({"navigator": {"pace_share": 0.6, "compass_deg": 2}})",
          R"({"navigator": {"pace_share": 0.05, "compass_deg": 46}})", R"({"navigator": {"compass_deg": 2}})"}) {
        const auto heading = headingFrom(*parseJson(text));
        ASSERT_FALSE(heading) << text;
        EXPECT_EQ(heading.error().fault, kBadField) << text;
    }
}

TEST(ParseJson, RefusesWhatIsNestedTooDeep) {
    const std::string deep = std::string(100000, '[') + std::string(100000, ']');
    const auto parsed = parseJson(deep);
    ASSERT_FALSE(parsed);
    EXPECT_EQ(parsed.error().fault, kNotJson);
}

TEST(ParseJson, RefusesWhatIsCutOff) {
    EXPECT_FALSE(parseJson(R"({"a": [1, 2)"));
    EXPECT_FALSE(parseJson(""));
    EXPECT_FALSE(parseJson("{\"a\": 1e999}")
                     .map([](const Json& json) {
                         FieldReader reader(json, "test");
                         (void)reader.number("a");
                         return reader.fault().has_value() ? 0 : 1;
                     })
                     .value_or(0));
}

TEST(FieldReader, NamesTheObjectAndTheFieldThatIsWrong) {
    const Json json = {{"scale", "large"}};
    FieldReader reader(json, "sheet");
    (void)reader.number("scale");
    ASSERT_TRUE(reader.fault());
    EXPECT_EQ(reader.fault()->fault, kBadField);
    EXPECT_EQ(std::get<std::string>(reader.fault()->arguments[0].value), "sheet");
    EXPECT_EQ(std::get<std::string>(reader.fault()->arguments[1].value), "scale");
}

}  // namespace
}  // namespace crosstick::files
