// Papers in another language: what they say of themselves goes through the translator, names and figures do not.
#include "ui/press/said.h"

#include <set>

#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QTranslator>

#include "core/movement/checklist.h"
#include "tests/movement/kettle_plan.h"
#include "tests/places.h"
#include "ui/press/checklist_paper.h"
#include "ui/press/gui_start.h"
#include "ui/press/march_paper.h"
#include "ui/press/profile_page.h"
#include "ui/press/route_card_page.h"
#include "ui/press/route_paper.h"

namespace crosstick::press {
namespace {

/// A language that nobody speaks: its words stand between angles.
class Angled final : public QTranslator {
  public:
    [[nodiscard]] bool isEmpty() const override { return false; }
    [[nodiscard]] QString translate(const char* /*context*/, const char* source, const char* /*remark*/,
                                    int /*count*/) const override {
        return QStringLiteral("<") + QString::fromUtf8(source) + QStringLiteral(">");
    }
};

class InAnotherLanguage : public ::testing::Test {
    GuiStart start_;

  protected:
    void SetUp() override { QCoreApplication::installTranslator(&language_); }
    void TearDown() override { QCoreApplication::removeTranslator(&language_); }
    plan::Plan plan = movement::kettlePlan();
    movement::RouteFigures figures = [this] {
        const auto model = geodesy::MagneticModel::open(places::share() / "magnetic");
        return movement::routeFigures(plan, *plan.routes().front(), &model.value(), nullptr).value();
    }();
    movement::MarchTable march = movement::marchTable(plan, figures, plan.force().columnNamed("")).value();

    static void expectForeign(const std::string& words, const char* what) {
        EXPECT_TRUE(words.empty() || words.find('<') != std::string::npos) << what << ": " << words;
    }
    static void expectForeign(const PaperTable& table) {
        expectForeign(table.head.kind, "kind");
        expectForeign(table.head.source, "source");
        for (const auto* facts : {&table.head.left, &table.head.right}) {
            for (const CardFact& fact : *facts) {
                expectForeign(fact.label, "fact");
            }
        }
        for (const CardNote& note : table.notes) {
            expectForeign(note.lead, "note");
        }
        expectForeign(table.columns.front().heads.front(), "first column");
    }

  private:
    Angled language_;
};

TEST(Said, PartsStandWhereTheSentenceWantsThem) {
    EXPECT_EQ(said("leg %1: %2 m", {"4", "310"}), "leg 4: 310 m");
    EXPECT_EQ(said("%2 then %1", {"a", "b"}), "b then a");
    EXPECT_EQ(said("steep %1 %", {"%2"}), "steep %2 %") << "a part is no place for another";
    EXPECT_EQ(said("%1 and %2", {"one"}), "one and %2") << "what nobody gave stays to be seen";
    EXPECT_EQ(said(""), "");
}

TEST_F(InAnotherLanguage, TheMarchTableSpeaksIt) {
    const PaperTable paper = marchPaper(plan, figures, march, {});
    expectForeign(paper);
    for (const std::string& head : paper.columns.front().heads) {
        expectForeign(head, "head");
    }
    for (std::size_t n = paper.rows.size() - 2; n < paper.rows.size(); ++n) {
        expectForeign(paper.rows[n].front().first, "row of the whole column");
    }
    EXPECT_EQ(paper.columns[1].key, march.points.front().label) << "names stay";
}

TEST_F(InAnotherLanguage, TheChecklistAndTheMatrixSpeakIt) {
    const auto rows = movement::executionChecklist(plan, {march});
    ASSERT_TRUE(rows.has_value());
    const PaperTable checklist = checklistPaper(plan, *rows);
    expectForeign(checklist);
    for (const PaperColumn& column : checklist.columns) {
        expectForeign(column.heads.front(), "column");
        EXPECT_EQ(column.key.find('<'), std::string::npos) << "a key is no word";
    }
    expectForeign(matrixPaper(plan, {march}));
}

TEST_F(InAnotherLanguage, TheRouteCardSpeaksIt) {
    for (const CardSize size : {CardSize::A5, CardSize::A6}) {
        const auto cards = routeCard(plan, figures, geodesy::AngleUnit::Degrees, "WMM2025", size);
        ASSERT_TRUE(cards.has_value());
        std::set<std::string> written;
        for (const CardPage& card : *cards) {
            for (const drawing::Mark& mark : card.drawing.marks) {
                if (const auto* text = std::get_if<drawing::Text>(&mark)) {
                    written.insert(text->text);
                }
            }
        }
        for (const char* english : {"ROUTE CARD", "What you cross, m", "passed", "paces", "arrive", "copy", "of"}) {
            EXPECT_FALSE(written.contains(english)) << english;
            EXPECT_TRUE(written.contains("<" + std::string(english) + ">")) << english;
        }
    }
}

TEST_F(InAnotherLanguage, TheCardAsATableSpeaksIt) {
    const auto paper = movement::paperFigures(plan, figures, geodesy::AngleUnit::Degrees).value();
    const CardWords words = cardWords(plan, figures, paper, std::nullopt, {geodesy::AngleUnit::Degrees, "WMM2025"});
    const PaperTable table = routePaper(plan, figures, paper, words, geodesy::AngleUnit::Degrees);
    expectForeign(table);
    for (const PaperColumn& column : table.columns) {
        expectForeign(column.heads.front(), "column");
    }
    expectForeign(words.exact, "exact");
    expectForeign(words.purpose, "purpose");
}

}  // namespace
}  // namespace crosstick::press
