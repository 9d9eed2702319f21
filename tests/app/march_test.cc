// The command march, through the door that the program itself uses.
#include <fstream>
#include <iterator>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/files/plan_file.h"
#include "tests/app/asking.h"
#include "tests/movement/kettle_plan.h"
#include "tests/sheets/made_sheets.h"

namespace crosstick::app {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

std::string read(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

class March : public ::testing::Test {
  protected:
    crosstick::testing::Folder folder_;

    std::string planFile(const plan::Plan& plan = movement::kettlePlan()) {
        const auto file = folder_ / "plan.gpkg";
        EXPECT_TRUE(files::PlanFile::create(file, plan, *parseIsoTime("2027-03-13T12:00:00Z")));
        return file.string();
    }
};

TEST_F(March, TheTableHasEveryPointAndElement) {
    const Said answer = said({"march", planFile(), "--route", "QUILL"});
    EXPECT_EQ(answer.exit, Exit::Done) << answer.err;
    for (const char* text : {"RTE QUILL, primary", "Start 132100OMAR27", "40 people, 316.0 m, passes in 11.85 min",
                             "PL BODKIN", "2210-2222", "ORP SORREL", "0030-0042", "3 Sqd"}) {
        EXPECT_THAT(answer.out, HasSubstr(text));
    }
    EXPECT_THAT(answer.out, Not(HasSubstr("MITTEN")));
}

TEST_F(March, JsonHasLocalZuluAndHHourTimes) {
    const auto json = said({"march", planFile(), "--h-hour", "140515OMAR27", "--json"}).json();
    ASSERT_EQ(json.size(), 2U);
    const auto& quill = json[0];
    EXPECT_EQ(quill["route"], "QUILL");
    EXPECT_NEAR(quill["pass_minutes"].get<double>(), 11.85, 1e-9);
    EXPECT_EQ(quill["start"], "2027-03-13T21:00:00-02:00");
    EXPECT_EQ(quill["start_zulu"], "2027-03-13T23:00:00Z");
    EXPECT_NEAR(quill["start_h_minutes"].get<double>(), -495, 1e-9);
    const auto& third = quill["points"][5];
    EXPECT_EQ(third["point"], "CP 3");
    EXPECT_NEAR(third["arrive_minutes"].get<double>(), 101.69, 0.01);
    EXPECT_EQ(third["elements"][2]["element"], "WPN");
    EXPECT_NEAR(third["elements"][2]["arrive_minutes"].get<double>(), 101.69 + 3.93, 0.01);
    EXPECT_EQ(quill["points"].back()["kind"], "onward");
    EXPECT_TRUE(quill["latest_start"].is_null());
}

// Worked by hand: closed not later than 0115, latest start 2132:49.7, so that the head goes at 2132.
TEST_F(March, BackwardsStartsAtTheWholeMinuteBeforeTheLatest) {
    const auto json = said({"march", planFile(), "--route", "QUILL", "--arrive", "140115OMAR27", "--before",
                            "orders=60", "--before", "rest=0:30", "--known", "131300OMAR27", "--json"})
                          .json();
    const auto& quill = json[0];
    EXPECT_EQ(quill["latest_start"], "2027-03-13T21:32:49-02:00");
    EXPECT_EQ(quill["start"], "2027-03-13T21:32:00-02:00");
    EXPECT_EQ(quill["before"][0]["from"], "2027-03-13T20:02:00-02:00");
    EXPECT_NEAR(quill["left_before_orders_minutes"].get<double>(), 7 * 60 + 2, 1e-9);
}

TEST_F(March, CsvHasARecordForEachElementAtEachPoint) {
    const auto out = (folder_ / "march.csv").string();
    EXPECT_EQ(said({"march", planFile(), "--route", "QUILL", "-o", out}).exit, Exit::Done);
    const std::string csv = read(out);
    EXPECT_EQ(std::count(csv.begin(), csv.end(), '\n'), 1 + 11 * 7);
    EXPECT_THAT(csv, HasSubstr("QUILL,PL BODKIN,1872.9"));
    EXPECT_THAT(csv, HasSubstr(",WPN,8,2027-03-13T22:14:09-02:00,"));
}

TEST_F(March, CsvHasTheColumnsThatAreWanted) {
    const auto out = (folder_ / "march.csv").string();
    const std::string file = planFile();
    const auto made = [&](const char* columns) {
        return said({"march", file, "--route", "QUILL", "--columns", columns, "-o", out});
    };
    EXPECT_EQ(made("element,point,arrive").exit, Exit::Done);
    EXPECT_THAT(read(out), StartsWith("element,point,arrive\r\n"));
    EXPECT_THAT(read(out), HasSubstr("WPN,PL BODKIN,2027-03-13T22:14:09-02:00\r\n"));
    const Said refused = made("element,when");
    EXPECT_EQ(refused.exit, Exit::CouldNot);
    EXPECT_THAT(refused.err, HasSubstr("clear_zulu")) << "it says which there are";
}

TEST_F(March, HtmlStandsByItselfAndIsEscaped) {
    plan::Plan plan = movement::kettlePlan();
    plan::Force force = plan.force();
    force.elements[0].name = "<1> & \"Sqd\"";
    plan = std::move(plan::PlanBuilder(plan).force(force)).build();
    const auto out = (folder_ / "march.html").string();
    EXPECT_EQ(said({"march", planFile(plan), "-o", out}).exit, Exit::Done);
    const std::string html = read(out);
    EXPECT_THAT(html, StartsWith("<!DOCTYPE html>"));
    EXPECT_THAT(html, HasSubstr("&lt;1&gt; &amp; &quot;Sqd&quot;"));
    EXPECT_THAT(html, HasSubstr("MARCH TABLE"));
    EXPECT_THAT(html, Not(HasSubstr("<script")));
    EXPECT_THAT(html, Not(HasSubstr("http")));
}

TEST_F(March, PdfIsTheSameTwice) {
    const std::string plan = planFile();
    const auto first = (folder_ / "a.pdf").string();
    const auto second = (folder_ / "b.pdf").string();
    EXPECT_EQ(said({"march", plan, "-o", first}).exit, Exit::Done);
    EXPECT_EQ(said({"march", plan, "-o", second}).exit, Exit::Done);
    EXPECT_THAT(read(first), StartsWith("%PDF"));
    EXPECT_EQ(read(first), read(second));
}

TEST_F(March, RulesAreTakenForOneAnswer) {
    const std::string plan = planFile();
    // 5608.6 m on roads by day or night; without knowing more than the start
    const auto road = said({"march", plan, "--route", "QUILL", "--rate", "4", "--json"}).json();
    EXPECT_NEAR(road[0]["points"].back()["arrive_minutes"].get<double>(), 5608.594 * 0.015, 0.01);
    EXPECT_EQ(road[0]["rate"], "4 km/h");
}

TEST_F(March, WhatCannotBeDoneIsSaidInOneLine) {
    const std::string plan = planFile();
    const Said column = said({"march", plan, "--column", "Return"});
    EXPECT_EQ(column.exit, Exit::CouldNot);
    EXPECT_THAT(column.err, HasSubstr("Approach"));
    EXPECT_EQ(said({"march", plan, "-o", (folder_ / "x.txt").string()}).exit, Exit::CouldNot);
    EXPECT_EQ(said({"march", plan, "--start", "tomorrow"}).exit, Exit::WrongUse);
    EXPECT_EQ(said({"march", plan, "--before", "orders"}).exit, Exit::WrongUse);
    EXPECT_EQ(said({"march", plan, "--start", "132100OMAR27", "--arrive", "140115OMAR27"}).exit, Exit::WrongUse);
}

}  // namespace
}  // namespace crosstick::app
