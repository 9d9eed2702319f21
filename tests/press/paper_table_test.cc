#include "ui/press/paper_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/drawing/text_ruler.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"
#include "ui/press/march_paper.h"

namespace crosstick::press {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::Not;

std::vector<drawing::Text> textsOf(const PaperPage& page) {
    std::vector<drawing::Text> texts;
    for (const drawing::Mark& mark : page.drawing.marks) {
        if (const auto* text = std::get_if<drawing::Text>(&mark)) {
            texts.push_back(*text);
        }
    }
    return texts;
}

std::vector<std::string> wordsOf(const std::vector<PaperPage>& pages) {
    std::vector<std::string> words;
    for (const PaperPage& page : pages) {
        for (const drawing::Text& text : textsOf(page)) {
            words.push_back(text.text);
        }
    }
    return words;
}

/// Nothing runs out of the margins, and no two texts touch.
void expectTidy(const std::vector<PaperPage>& pages) {
    for (const PaperPage& page : pages) {
        const auto texts = textsOf(page);
        const drawing::Box paper{7.9, 4, 289.1, 207};
        const auto boxOf = [](const drawing::Text& text) {
            return drawing::Box{text.start.x, text.start.y - text.capHeight,
                                text.start.x + drawing::textWidth(text.text, text.capHeight, text.weight),
                                text.start.y};
        };
        for (std::size_t n = 0; n < texts.size(); ++n) {
            const drawing::Box box = boxOf(texts[n]);
            EXPECT_TRUE(paper.contains(box)) << texts[n].text << " at " << box.left << ' ' << box.bottom;
            for (std::size_t m = 0; m < n; ++m) {
                EXPECT_FALSE(box.grown(-0.01).meets(boxOf(texts[m]))) << texts[n].text << " on " << texts[m].text;
            }
        }
    }
}

PaperTable marchOf(const plan::Plan& plan, const MarchFacts& facts = {}) {
    const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
    const auto figures = movement::routeFigures(plan, *plan.routes().front(), &model.value(), nullptr);
    const auto table = movement::marchTable(plan, *figures, plan.force().columnNamed(""));
    return marchPaper(plan, *figures, *table, facts);
}

TEST(MarchPaper, StandsOnOnePageWithBothTimesInACell) {
    const auto pages = tablePages(marchOf(movement::kettlePlan()));
    ASSERT_EQ(pages.size(), 1U);
    expectTidy(pages);
    const auto words = wordsOf(pages);
    for (const char* text : {"MARCH TABLE", "RTE QUILL", "EXERCISE", "ORP SORREL", "0030", "0042", "1 Sqd",
                             "Whole column", "12 min at the start"}) {
        EXPECT_THAT(words, Contains(text));
    }
}

TEST(MarchPaper, SaysWhatTheStartWasWorkedOutFromAndWhatIsDoneBefore) {
    plan::Plan plan = movement::kettlePlan();
    plan::Heading heading = plan.heading();
    heading.hHour = *parseDateTimeGroup("140515OMAR27");
    heading.preparations = {{"orders", Minutes(60)}, {"rehearsal", Minutes(90)}};
    plan = std::move(plan::PlanBuilder(plan).heading(heading)).build();
    const auto pages =
        tablePages(marchOf(plan, {*parseDateTimeGroup("140115OMAR27"), *parseIsoTime("2027-03-13T21:32:49-02:00"),
                                  *parseDateTimeGroup("131300OMAR27")}));
    expectTidy(pages);
    const auto words = wordsOf(pages);
    EXPECT_THAT(words, Contains(HasSubstr("latest start is 21:32:49")));
    EXPECT_THAT(words, Contains(HasSubstr("orders 1830 to 1930")));
    EXPECT_THAT(words, Contains(HasSubstr("5:30 left from 131300OMAR27 on")));
    EXPECT_THAT(words, Contains("H-8:15"));
    EXPECT_THAT(words, Contains("2300"));
}

TEST(MarchPaper, LongRoutesAndColumnsGoOnOnFurtherPages) {
    std::vector<geodesy::PlanePoint> points;
    for (int n = 0; n < 30; ++n) {
        points.push_back(movement::at(655000 + 400 * n, 5100000 + n * 30));
    }
    plan::Plan plan = movement::plainRoute(points);
    plan::Force force;
    force.columns.emplace_back();
    for (std::uint8_t n = 0; n < 33; ++n) {
        force.elements.push_back({Uuid{{n, 1}}, "inf sqd", "Element " + std::string(n, 'W'), "", 9});
        force.columns.back().serials.push_back({Uuid{{n, 1}}, "", std::nullopt});
    }
    plan = std::move(plan::PlanBuilder(plan).force(force)).build();
    const auto pages = tablePages(marchOf(plan));
    EXPECT_GE(pages.size(), 6U);
    expectTidy(pages);
    EXPECT_THAT(wordsOf({pages.back()}), Contains("CP 30"));
    EXPECT_THAT(wordsOf({pages.back()}), Contains("Whole column"));
    EXPECT_THAT(wordsOf({pages.front()}), Contains(HasSubstr("page 1 of")));
}

TEST(MarchPaper, WithoutARateHasNoTimesAndNoneAreMadeUp) {
    plan::Plan plan = movement::kettlePlan();
    plan::Heading heading = plan.heading();
    heading.rate.reset();
    plan = std::move(plan::PlanBuilder(plan).heading(heading)).build();
    const auto words = wordsOf(tablePages(marchOf(plan)));
    EXPECT_THAT(words, Contains("—"));
    EXPECT_THAT(words, Not(Contains("2100")));
    EXPECT_THAT(words, Contains("not given"));
}

TEST(PaperTable, OnlyTheChosenColumnsStandOnIt) {
    const PaperTable table = withColumns(marchOf(movement::kettlePlan()), {"element", "CP 3", "nobody", "RP 1"});
    ASSERT_EQ(table.columns.size(), 3U);
    EXPECT_EQ(table.columns[1].key, "CP 3");
    EXPECT_EQ(table.kept, 1U);
    for (const auto& row : table.rows) {
        EXPECT_EQ(row.size(), 3U);
    }
    EXPECT_EQ(withColumns(marchOf(movement::kettlePlan()), {"nobody"}).columns.size(), 12U);
}

TEST(PaperTable, LongTextsAreWrappedOrWrittenSmallerInTheirCells) {
    PaperTable table;
    table.head.title = std::string(300, 'W');
    table.head.marking = table.head.title;
    table.head.purpose = table.head.title;
    table.head.kind = "EXECUTION CHECKLIST";
    PaperColumn wide;
    wide.heads = {"what"};
    wide.width = wide.most = 60;
    wide.rows = 3;
    PaperColumn narrow;
    narrow.heads = {"when"};
    narrow.align = Align::Right;
    table.columns = {wide, narrow};
    std::string many;
    for (int n = 0; n < 40; ++n) {
        many += "beside the wall ";
    }
    table.rows.assign(60, {{many}, {std::string(60, '8')}});
    table.notes = {{"Note:", many + many + many}};
    table.head.source = many + many;
    const auto pages = tablePages(table);
    EXPECT_GT(pages.size(), 2U);
    expectTidy(pages);
}

}  // namespace
}  // namespace crosstick::press
