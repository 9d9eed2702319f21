// The command enter, and the lines that it takes.
#include <iostream>
#include <random>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "app/commands/plan_lines.h"
#include "core/files/plan_file.h"
#include "tests/app/asking.h"
#include "tests/movement/kettle_plan.h"
#include "tests/sheets/made_sheets.h"

namespace crosstick::app {
namespace {

using ::testing::HasSubstr;

constexpr std::uint32_t kSeed = 20270316;

class Enter : public ::testing::Test {
  protected:
    crosstick::testing::Folder folder_;

    std::string planFile(const plan::Plan& plan) {
        const auto file = folder_ / "plan.gpkg";
        EXPECT_TRUE(files::PlanFile::create(file, plan, *parseIsoTime("2027-03-13T12:00:00Z")));
        return file.string();
    }
    static plan::Plan read(const std::string& file) {
        return files::PlanFile::open(file, files::Access::ReadOnly)->plan();
    }
};

TEST_F(Enter, FillsAPlanWithoutTheWindow) {
    const std::string file = planFile(movement::kettlePlan());
    const Said answer = said({"enter", file, "--from", "-"}, R"(# Exercise SLOW KETTLE
h-hour: 140515OMAR27
before: orders=60; rehearsal=1:30
phase 4 Take: from 140515OMAR27; until 140600OMAR27
element MED: people 2; call P19; symbol hq 2/C inf plt
column Approach: elements 1 Sqd as POINT, HQ fwd behind 40, MED; apart 4
task 1 Sqd in 4: task assault through the yard; purpose so that the jetty is ours; place ASLT WICKER; trigger H-hour; code TURBAN; under HQ fwd
event tail over LD: place LD TRIVET; route QUILL; last of 3 Sqd; code PEBBLE; reports 3 Sqd
start QUILL: 2027-03-13T21:05-02:00; closed 140115OMAR27
leg QUILL to CP 3: going road; halt 10; catching road beyond the weir
timing: naismith; road; rates 4 3.2 2.4 1.5
drift: 4 % 1.5
contours MITTEN: 40 at 25T FL 5427 9806; 60 at 654470.5 5099120
)");
    ASSERT_EQ(answer.exit, Exit::Done) << answer.err;
    const plan::Plan plan = read(file);
    EXPECT_EQ(plan.heading().hHour, *parseDateTimeGroup("140515OMAR27"));
    EXPECT_EQ(plan.heading().preparations.at(1).lasts, Minutes(90));
    EXPECT_EQ(plan.heading().timing->rates.crossCountryByNight, KilometresPerHour(1.5));
    EXPECT_EQ(plan.phases().back().name, "Take");
    const plan::Force& force = plan.force();
    EXPECT_EQ(force.elements.back().callSign, "P19");
    EXPECT_EQ(force.columns.front().serials.size(), 3U);
    EXPECT_EQ(force.columns.front().serials[1].behind, Metres(40));
    ASSERT_EQ(force.tasks.size(), 1U);
    EXPECT_EQ(force.tasks[0].attachedTo, movement::kettleId("HQ fwd"));
    ASSERT_EQ(force.events.size(), 1U);
    EXPECT_EQ(force.events[0].place, movement::kettleId("LD TRIVET"));
    EXPECT_EQ(force.events[0].man, plan::WhichMan::Last);
    EXPECT_EQ(plan.routeNamed("QUILL")->stops[3].leg.halt, Minutes(10));
    EXPECT_EQ(plan.routeNamed("QUILL")->notLaterThan, *parseDateTimeGroup("140115OMAR27"));
    EXPECT_EQ(plan.heading().navigator, (plan::NavigatorErrors{0.04, Degrees(1.5)}));
    const auto& contours = plan.routeNamed("MITTEN")->contours;
    ASSERT_EQ(contours.size(), 2U);
    EXPECT_EQ(contours[0].height, Metres(40));
    EXPECT_NEAR(contours[0].at.easting.value(), 654270, 1e-6);
    EXPECT_NEAR(contours[0].at.northing.value(), 5098060, 1e-6);
    EXPECT_EQ(contours[1].at, (geodesy::PlanePoint{Metres(654470.5), Metres(5099120)}));
    const Said list = said({"checklist", file});
    EXPECT_THAT(list.out, HasSubstr("PEBBLE"));
}

TEST_F(Enter, ALineOnTheCommandLineChangesWhatItNamesAndNothingElse) {
    const std::string file = planFile(movement::kettlePlan());
    ASSERT_EQ(said({"enter", file, "element 1 Sqd: call P11"}).exit, Exit::Done);
    const plan::Plan plan = read(file);
    EXPECT_EQ(plan.force().elements[0].callSign, "P11");
    EXPECT_EQ(plan.force().elements[0].people, 9);
    EXPECT_EQ(plan.routes().size(), 2U);
}

TEST_F(Enter, OneBadLineSaysWhichAndNothingIsWritten) {
    const std::string file = planFile(movement::kettlePlan());
    const auto refused = [&](const char* line, const char* expected) {
        const Said answer = said({"enter", file, "h-hour: 140515OMAR27", line});
        EXPECT_EQ(answer.exit, Exit::CouldNot) << line;
        EXPECT_THAT(answer.err, HasSubstr("Line 2")) << line;
        EXPECT_THAT(answer.err, HasSubstr(expected)) << line;
        EXPECT_FALSE(read(file).heading().hHour) << line;
    };
    refused("noise: 3", "h-hour, phase, pace");
    refused("h-hour: tomorrow", "140515OMAR27");
    refused("task 4 Sqd in 2: task hold", "1 Sqd, HQ fwd");
    refused("task 1 Sqd: task hold", "in 4");
    refused("event x: place PL NOWHERE", "PL NOWHERE");
    refused("element 1 Sqd: people many", "people 9");
    refused("element 1 Sqd", "people 9");
    refused("leg QUILL to CP 9: halt 5", "leg QUILL to CP 3");
    refused("evacuation: carry 0", "carry 1.2");
    refused("pace: 4000", "pace: 74");
    refused("drift: 4", "drift: 4 1.5");
    refused("drift: 60 2", "drift: 4 1.5");
    refused("contours QUILL: high at 25T FL 5427 9806", "contours QUILL: 40 at");
    refused("contours QUILL: 40 at nowhere", "contours QUILL: 40 at");
    refused("contours QUILL: 9999 at 25T FL 5427 9806", "contours QUILL: 40 at");
}

TEST_F(Enter, NoneTakesOutWhatALineSpeaksOf) {
    const std::string file = planFile(movement::kettlePlan());
    ASSERT_EQ(said({"enter", file, "task 1 Sqd in 4: task hold; under HQ fwd", "event x: planned 140515OMAR27"}).exit,
              Exit::Done);
    ASSERT_EQ(said({"enter", file, "element HQ fwd: none", "event x: none", "rate: none"}).exit, Exit::Done);
    const plan::Plan plan = read(file);
    EXPECT_TRUE(plan.force().events.empty());
    EXPECT_FALSE(plan.heading().rate);
    EXPECT_EQ(plan.force().elements.size(), 5U);
    EXPECT_EQ(plan.force().columns[0].serials.size(), 5U);
    EXPECT_FALSE(plan.force().tasks.at(0).attachedTo);
}

/// A plan with everything that lines can say.
plan::Plan randomly(std::mt19937& random) {
    const auto some = [&](int most) { return static_cast<int>(random() % static_cast<unsigned>(most)); };
    plan::Plan plan = movement::kettlePlan();
    plan::Heading heading = plan.heading();
    const Instant start = *parseIsoTime("2027-03-13T21:00:00-02:00");
    const auto moment = [&] {
        return some(3) == 0 ? std::nullopt : std::optional(start + std::chrono::seconds(some(90000)));
    };
    heading.hHour = moment();
    heading.timing = plan::Timing{};
    heading.timing->rule = static_cast<plan::TimeRule>(some(3));
    heading.timing->rates.roadByNight = KilometresPerHour(0.1 + some(70) / 7.0);
    heading.preparations = {{"orders", Minutes(some(300))}, {"rest at 3:30", Minutes(some(300) / 4.0), {}}};
    heading.evacuation = plan::Evacuation{movement::kettleId("CP 5"), movement::kettleId("RTE MITTEN"), {}, {}};
    heading.evacuation->carry = plan::MarchRate{KilometresPerHour(1 + some(9) / 3.0), "four men, by turns"};
    heading.navigator = plan::NavigatorErrors{some(200) / 400.0, Degrees(some(450) / 10.0)};
    plan::Route route = *plan.routes().front();
    route.start = start + std::chrono::seconds(some(90000));
    route.notLaterThan = moment();
    for (int n = some(4); n > 0; --n) {
        const auto at = [&](double from) { return Metres(from + some(40000) / 16.0); };
        route.contours.push_back({{at(654000), at(5098000)}, Metres(some(4000) / 8.0)});
    }
    plan = std::move(plan::PlanBuilder(plan).put(std::move(route))).build();
    plan::Force force = plan.force();
    for (plan::Element& element : force.elements) {
        element.people = some(50);
        element.callSign = some(2) == 0 ? "" : "P" + std::to_string(some(99));
        if (some(2) == 0) {
            force.tasks.push_back({element.id, 1 + some(5), "hold: until relieved", "", "OBJ", "", "TURBAN", {}, {}});
            force.tasks.back().attachedTo = force.elements[static_cast<std::size_t>(some(6))].id;
        }
        plan::Event event;
        event.id = namedUuid(element.id, "event");
        event.what = "tail of " + element.name + " over, at 5:15";
        event.man = some(2) == 0 ? plan::WhichMan::First : plan::WhichMan::Last;
        event.place = movement::kettleId("PL BODKIN");
        event.route = movement::kettleId("RTE QUILL");
        event.element = some(2) == 0 ? std::nullopt : std::optional(element.id);
        event.planned = moment();
        event.actual = moment();
        force.events.push_back(std::move(event));
    }
    force.columns[0].serials[2].behind = Metres(some(100) / 8.0);
    return std::move(plan::PlanBuilder(plan)
                         .heading(std::move(heading))
                         .force(std::move(force))
                         .phases({{1, "Move by night", moment(), moment()}, {2, "", {}, {}}}))
        .build();
}

TEST(PlanLines, WhatIsWrittenOfAPlanReadsBackToThatPlan) {
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    for (int round = 0; round < 60; ++round) {
        const plan::Plan plan = randomly(random);
        const std::string lines = linesOf(plan);
        IdSource ids(7);
        const auto again = withLines(plan, lines, ids);
        ASSERT_TRUE(again) << lines;
        EXPECT_EQ(*again, plan) << lines;
        const auto fresh = withLines(movement::kettlePlan(), lines, ids);
        ASSERT_TRUE(fresh) << lines;
        EXPECT_EQ(linesOf(*fresh), lines);
    }
}

TEST(PlanLines, WhateverIsTypedIsTakenOrRefusedInOneLine) {
    std::cout << "seed " << kSeed << '\n';
    std::mt19937 random(kSeed);
    const plan::Plan plan = movement::kettlePlan();
    const std::string letters = "abc 19:;,=.-\t\"\n";
    for (int round = 0; round < 3000; ++round) {
        std::string text(lineKinds()[random() % lineKinds().size()].form);
        for (int n = 0; n < 4; ++n) {
            text[random() % text.size()] = letters[random() % letters.size()];
        }
        IdSource ids(7);
        const auto taken = withLines(plan, text, ids);
        if (!taken) {
            EXPECT_THAT(std::string(taken.error().fault.name), HasSubstr("app/line-"));
        }
    }
}

}  // namespace
}  // namespace crosstick::app
