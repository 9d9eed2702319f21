// The command card, through the door that the program itself uses.
#include <algorithm>
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

std::string contents(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// Records of RFC 4180, cells unquoted.
std::vector<std::vector<std::string>> records(const std::string& csv) {
    std::vector<std::vector<std::string>> rows(1, {""});
    bool quoted = false;
    for (std::size_t n = 0; n < csv.size(); ++n) {
        const char letter = csv[n];
        if (quoted && letter == '"' && n + 1 < csv.size() && csv[n + 1] == '"') {
            rows.back().back() += csv[n++];
        } else if (letter == '"') {
            quoted = !quoted;
        } else if (!quoted && letter == ',') {
            rows.back().emplace_back();
        } else if (!quoted && letter == '\r') {
            EXPECT_EQ(csv[++n], '\n');
            rows.push_back({""});
        } else {
            EXPECT_TRUE(quoted || letter != '\n');
            rows.back().back() += letter;
        }
    }
    EXPECT_EQ(rows.back(), std::vector<std::string>{""}) << "the last record must end with a line end";
    rows.pop_back();
    return rows;
}

class Card : public ::testing::Test {
  protected:
    crosstick::testing::Folder folder_;

    std::string planFile(const plan::Plan& plan, const char* name = "plan.gpkg") {
        const auto file = folder_ / name;
        EXPECT_TRUE(files::PlanFile::create(file, plan, *parseIsoTime("2027-03-13T12:00:00Z")));
        return file.string();
    }
};

TEST_F(Card, TheTableShowsEveryPieceOfBothRoutes) {
    const Said answer = said({"card", planFile(movement::kettlePlan())});
    EXPECT_EQ(answer.exit, Exit::Done) << answer.err;
    for (const char* text :
         {"RTE QUILL, primary", "RTE MITTEN, alternate", "G-M angle 11° W; grid to magnetic: add 11", "FL 5427 9806",
          "4b", "LD TRIVET  300 m after SP 1, 2111", "Climb is unknown", "Start 132100OMAR27",
          "Light 2027-03-13: BMNT 0517, BMCT 0551", "moonset none", "moonset 0036", "check by map and compass"}) {
        EXPECT_THAT(answer.out, HasSubstr(text));
    }
}

TEST_F(Card, OneRouteIsChosenByNameWithOrWithoutRte) {
    const std::string file = planFile(movement::kettlePlan());
    for (const char* name : {"MITTEN", "RTE MITTEN"}) {
        const Said answer = said({"card", file, "--route", name});
        EXPECT_EQ(answer.exit, Exit::Done) << answer.err;
        EXPECT_THAT(answer.out, Not(HasSubstr("QUILL")));
    }
    const Said unknown = said({"card", file, "--route", "FERN"});
    EXPECT_EQ(unknown.exit, Exit::CouldNot);
    EXPECT_THAT(unknown.err, HasSubstr("QUILL, MITTEN"));
    EXPECT_EQ(unknown.out, "");
}

TEST_F(Card, JsonIsExactWithNullForUnknown) {
    const Said answer = said({"card", planFile(movement::kettlePlan()), "--json"});
    const auto json = answer.json();
    ASSERT_EQ(json.size(), 2U);
    const auto& quill = json[0];
    EXPECT_EQ(quill["route"], "QUILL");
    EXPECT_NEAR(quill["gm_angle_deg"].get<double>(), -10.898688, 1e-5);
    EXPECT_NEAR(quill["ground_distance_m"].get<double>(), 5198.188, 1e-3);
    EXPECT_TRUE(quill["climb_m"].is_null());
    EXPECT_EQ(quill["gm_angle_source"], "model");
    EXPECT_EQ(quill["legs"].size(), 6U);
    const auto& north = quill["legs"][3]["pieces"][1];
    EXPECT_EQ(north["grid_azimuth_deg"].get<double>(), 0);
    EXPECT_NEAR(north["magnetic_azimuth_deg"].get<double>(), 10.898688, 1e-5);
    EXPECT_EQ(quill["legs"][4]["arrival"], "2027-03-14T00:00:02-02:00");
    EXPECT_EQ(quill["crossings"].size(), 3U);
    ASSERT_EQ(quill["light"].size(), 2U);  // it is walked over midnight
    EXPECT_EQ(quill["light"][0]["date"], "2027-03-13");
    EXPECT_THAT(quill["light"][0]["nautical_dusk"].get<std::string>(), StartsWith("2027-03-13T19:11:"));
    EXPECT_TRUE(quill["light"][0]["moonset"].is_null());
    EXPECT_THAT(quill["light"][1]["moonset"].get<std::string>(), StartsWith("2027-03-14T00:3"));
    EXPECT_NEAR(quill["onward"]["map_distance_m"].get<double>(), 410.366, 1e-3);
    EXPECT_THAT(answer.out, Not(HasSubstr("nan")));
    EXPECT_THAT(answer.out, Not(HasSubstr("-0.0,")));
}

TEST_F(Card, CsvIsARecordAPieceWithCrlfAndDecimalPoints) {
    const auto out = folder_ / "card.csv";
    const Said answer = said({"card", planFile(movement::kettlePlan()), "-o", out.string()});
    EXPECT_EQ(answer.exit, Exit::Done) << answer.err;
    const auto rows = records(contents(out));
    ASSERT_EQ(rows.size(), 1U + 10 + 9);
    for (const auto& row : rows) {
        EXPECT_EQ(row.size(), rows[0].size());
    }
    EXPECT_EQ(rows[0][10], "magnetic_azimuth_deg");
    EXPECT_EQ(rows[1][10], "18.3301");
    EXPECT_EQ(rows[1][12], "463.897");
    EXPECT_EQ(rows[2][7], "saddle, end of the long wall, 57 m W of the spur track");
    EXPECT_EQ(rows[2][14], "");
}

TEST_F(Card, EveryFormTellsBothTheLightAndWhatARouteRunsAlong) {
    const std::string file = planFile(movement::kettlePlanBesideOak());
    const std::string along = "along MSR OAK 570 m from 180 m after CP 2";
    const Said table = said({"card", file, "--route", "QUILL"});
    EXPECT_THAT(table.out, HasSubstr("Leg 3: " + along + '\n'));
    EXPECT_THAT(table.out, HasSubstr("Light 2027-03-14: BMNT"));
    const auto json = said({"card", file, "--route", "QUILL", "--json"}).json();
    ASSERT_EQ(json[0]["runs_along"].size(), 1U);
    EXPECT_NEAR(json[0]["runs_along"][0]["map_distance_from_last_m"].get<double>(), 182.7, 0.1);
    EXPECT_EQ(json[0]["light"].size(), 2U);
    const auto out = folder_ / "card.csv";
    EXPECT_EQ(said({"card", file, "--route", "QUILL", "-o", out.string()}).exit, Exit::Done);
    const auto rows = records(contents(out));
    const auto column = [&](const char* name) {
        return static_cast<std::size_t>(std::find(rows[0].begin(), rows[0].end(), name) - rows[0].begin());
    };
    ASSERT_LT(column("moon_illuminated_percent"), rows[0].size());
    EXPECT_EQ(rows[4][column("leg_notes")], along);
    EXPECT_EQ(rows[3][column("leg_notes")], "");
    EXPECT_THAT(rows[4][column("sunset")], StartsWith("2027-03-13T18:0"));
}

TEST_F(Card, ANameThatLooksLikeAFormulaBecomesText) {
    plan::Plan plan = movement::kettlePlan();
    plan::Measure point = *plan.measure(movement::kettleId("CP 2"));
    point.tie = "=HYPERLINK(\"http://example.invalid\",\"x\")";
    plan::Route route = *plan.routeNamed("QUILL");
    route.name = "+1";
    plan = std::move(plan::PlanBuilder(plan).put(point).put(route)).build();
    const auto out = folder_ / "card.csv";
    EXPECT_EQ(said({"card", planFile(plan), "--route", "+1", "-o", out.string()}).exit, Exit::Done);
    const auto rows = records(contents(out));
    EXPECT_EQ(rows[1][0], "'+1");
    EXPECT_EQ(rows[3][7], "'=HYPERLINK(\"http://example.invalid\",\"x\")");
}

TEST_F(Card, PdfHoldsA5CardsAndTheSameBytesTwice) {
    const std::string file = planFile(movement::kettlePlan());
    const auto one = folder_ / "one.pdf";
    const auto two = folder_ / "two.pdf";
    EXPECT_EQ(said({"card", file, "-o", one.string()}).exit, Exit::Done);
    EXPECT_EQ(said({"card", file, "-o", two.string()}).exit, Exit::Done);
    EXPECT_THAT(contents(one), StartsWith("%PDF-"));
    EXPECT_EQ(contents(one), contents(two));
}

TEST_F(Card, SizesColumnsAndHtmlAreChosenOnTheLine) {
    const std::string file = planFile(movement::kettlePlan());
    const auto small = folder_ / "small.pdf";
    EXPECT_EQ(said({"card", file, "--size", "a6", "-o", small.string()}).exit, Exit::Done);
    EXPECT_THAT(contents(small), StartsWith("%PDF-"));
    const auto page = folder_ / "card.html";
    EXPECT_EQ(said({"card", file, "--columns", "to,magnetic,map_m", "-o", page.string()}).exit, Exit::Done);
    EXPECT_THAT(contents(page), HasSubstr("RTE MITTEN"));
    EXPECT_THAT(contents(page), HasSubstr("<td class=\"right\">018</td>"));
    EXPECT_THAT(contents(page), Not(HasSubstr(">Paces<")));
    const auto csv = folder_ / "card.csv";
    EXPECT_EQ(said({"card", file, "--columns", "to,paces", "-o", csv.string()}).exit, Exit::Done);
    EXPECT_EQ(records(contents(csv))[0], (std::vector<std::string>{"to", "paces"}));
    EXPECT_EQ(records(contents(csv))[2][0], "CP 1");
    const Said table = said({"card", file, "--route", "QUILL", "--columns", "leg,magnetic"});
    EXPECT_THAT(table.out, HasSubstr("018"));
    EXPECT_THAT(table.out, Not(HasSubstr("FL 54")));
    const auto a4 = folder_ / "table.pdf";
    EXPECT_EQ(said({"card", file, "--size", "a4", "-o", a4.string()}).exit, Exit::Done);
    const Said wrong = said({"card", file, "--columns", "leg,nonsense"});
    EXPECT_EQ(wrong.exit, Exit::CouldNot);
    EXPECT_THAT(wrong.err, HasSubstr("no column nonsense on this paper. It has: leg, to, grid"));
}

TEST_F(Card, TheWayOfTheHurtIsTold) {
    const std::string file = planFile(movement::kettlePlan());
    ASSERT_EQ(said({"enter", file, "evacuation: to CP 9; pick-up CP 5; vehicle MITTEN; carry 1.2, four men"}).exit,
              Exit::Done);
    const Said table = said({"card", file, "--route", "QUILL"});
    EXPECT_THAT(table.out, HasSubstr("Casualties: CP 9 FM 5695 0190, on by vehicle RTE MITTEN"));
    EXPECT_THAT(table.out, HasSubstr("Carry: at worst from SP 1 straight"));
    EXPECT_THAT(table.out, HasSubstr("Pick-up: CP 5 FM 5610 0214"));
    const auto json = said({"card", file, "--route", "QUILL", "--json"}).json()[0];
    EXPECT_EQ(json["name"], "QUILL");
    EXPECT_EQ(json["kind"], "primary");
    EXPECT_EQ(json["evacuation"]["pick_up"]["grid"], "FM 5610 0214");
    EXPECT_EQ(json["evacuation"]["carry_rate_kmh"], 1.2);
    EXPECT_NEAR(json["evacuation"]["carry_straight"]["minutes"].get<double>(),
                json["evacuation"]["carry_straight"]["ground_distance_m"].get<double>() * 60 / 1200, 1e-9);
    EXPECT_TRUE(json["heights_from"].is_null());
}

TEST_F(Card, MilsReplaceDegreesOnPaperAndInTheTable) {
    const Said answer = said({"card", planFile(movement::kettlePlan()), "--route", "QUILL", "--mils"});
    EXPECT_THAT(answer.out, HasSubstr("190 mils W"));
    EXPECT_THAT(answer.out, HasSubstr("0330"));
}

TEST_F(Card, OtherFormsEmptyPlansAndMissingFilesAreOneClearError) {
    const std::string file = planFile(movement::kettlePlan());
    const Said form = said({"card", file, "-o", (folder_ / "card.doc").string()});
    EXPECT_EQ(form.exit, Exit::CouldNot);
    EXPECT_THAT(form.err, HasSubstr("none of .pdf, .html and .csv"));
    const Said empty = said({"card", planFile(plan::Plan{}, "empty.gpkg")});
    EXPECT_EQ(empty.exit, Exit::CouldNot);
    EXPECT_THAT(empty.err, HasSubstr("no route yet"));
    const Said missing = said({"card", (folder_ / "nowhere.gpkg").string()});
    EXPECT_EQ(missing.exit, Exit::CouldNot);
    EXPECT_EQ(std::count(missing.err.begin(), missing.err.end(), '\n'), 1);
    EXPECT_EQ(said({"card"}).exit, Exit::WrongUse);
}

}  // namespace
}  // namespace crosstick::app
