// The commands checklist, matrix and profile, through the door that the program itself uses.
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

plan::Plan tasked() {
    plan::Plan plan = movement::kettlePlan();
    plan::Force force = plan.force();
    plan::Event event;
    event.id = movement::kettleId("event");
    event.what = "tail over LD";
    event.place = movement::kettleId("LD TRIVET");
    event.route = movement::kettleId("RTE QUILL");
    event.man = plan::WhichMan::Last;
    event.codeWord = "PEBBLE";
    event.reporter = movement::kettleId("HQ rear");
    force.events = {event};
    plan::Task task;
    task.element = movement::kettleId("WPN");
    task.phase = 4;
    task.task = "support by fire until shifted";
    task.purpose = "so that 1 and 2 Sqd reach the buildings";
    task.place = "SBF 1";
    task.trigger = "H-hour";
    task.codeWord = "TURBAN";
    task.attachedTo = movement::kettleId("1 Sqd");
    force.tasks = {task};
    const Instant start = *parseIsoTime("2027-03-13T21:23:00-02:00");
    return std::move(plan::PlanBuilder(plan).force(force).phases(
                         {{2, "Approach", start, start + std::chrono::hours(4)}, {4, "Take", {}, {}}}))
        .build();
}

class Papers : public ::testing::Test {
  protected:
    crosstick::testing::Folder folder_;

    std::string planFile() {
        const auto file = folder_ / "plan.gpkg";
        EXPECT_TRUE(files::PlanFile::create(file, tasked(), *parseIsoTime("2027-03-13T12:00:00Z")));
        return file.string();
    }
    std::string written(const char* command, const std::string& plan, const char* name,
                        std::vector<std::string> more = {}) {
        const auto out = (folder_ / name).string();
        std::vector<std::string> line{command, plan, "-o", out};
        line.insert(line.end(), more.begin(), more.end());
        const Said answer = said(line);
        EXPECT_EQ(answer.exit, Exit::Done) << answer.err;
        return read(out);
    }
};

// 2123 and HQ rear: the exercise's own checklist.
TEST_F(Papers, TheChecklistHasTheMarchTablesTime) {
    const auto json = said({"checklist", planFile(), "--json"}).json();
    ASSERT_EQ(json.size(), 1U);
    EXPECT_THAT(json[0]["planned"].get<std::string>(), StartsWith("2027-03-13T21:23"));
    EXPECT_EQ(json[0]["code_word"], "PEBBLE");
    EXPECT_EQ(json[0]["reporter"], "HQ rear");
    EXPECT_TRUE(json[0]["actual"].is_null());
}

TEST_F(Papers, TheChecklistIsWrittenInEveryForm) {
    const std::string plan = planFile();
    const std::string csv = written("checklist", plan, "list.csv");
    EXPECT_THAT(csv, StartsWith("number,event,place,planned,code_word,reporter,reported,actual\r\n"));
    EXPECT_THAT(csv, HasSubstr("1,tail over LD,LD TRIVET,132123O,PEBBLE,HQ rear,,"));
    EXPECT_THAT(written("checklist", plan, "list.html"), HasSubstr("<td>PEBBLE</td>"));
    EXPECT_THAT(written("checklist", plan, "list.pdf"), StartsWith("%PDF"));
}

TEST_F(Papers, ColumnsCanBeChosen) {
    const std::string csv = written("checklist", planFile(), "list.csv", {"--columns", "code_word,event"});
    EXPECT_EQ(csv, "code_word,event\r\nPEBBLE,tail over LD\r\n");
}

TEST_F(Papers, TheMatrixHasElementsDownAndPhasesAcross) {
    const std::string plan = planFile();
    const std::string html = written("matrix", plan, "matrix.html");
    EXPECT_THAT(html, HasSubstr("2 Approach"));
    EXPECT_THAT(html, HasSubstr("PL BODKIN 2210, PL LADLE 2335"));
    EXPECT_THAT(html, HasSubstr("support by fire until shifted"));
    EXPECT_THAT(html, HasSubstr("at SBF 1; on H-hour; TURBAN; under 1 Sqd"));
    EXPECT_THAT(written("matrix", plan, "matrix.pdf"), StartsWith("%PDF"));
    const auto json = said({"matrix", plan, "--json"}).json();
    EXPECT_EQ(json[0]["element"], "WPN");
    EXPECT_EQ(json[0]["attached_to"], "1 Sqd");
}

TEST_F(Papers, AFormThatIsNoneIsRefused) {
    const Said answer = said({"matrix", planFile(), "-o", (folder_ / "x.doc").string()});
    EXPECT_EQ(answer.exit, Exit::CouldNot);
    EXPECT_THAT(answer.err, HasSubstr(".html"));
}

TEST_F(Papers, WithoutAnElevationModelThereIsNoProfile) {
    const Said answer = said({"profile", planFile(), "--route", "QUILL", "-o", (folder_ / "p.pdf").string()});
    EXPECT_EQ(answer.exit, Exit::CouldNot);
    EXPECT_THAT(answer.err, HasSubstr("RTE QUILL"));
    EXPECT_THAT(answer.err, Not(HasSubstr("{")));
    EXPECT_EQ(answer.out, "");
}

}  // namespace
}  // namespace crosstick::app
