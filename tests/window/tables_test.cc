// The tables in the sill: who we are, what each does, what is reported; and what follows from them.
#include <QComboBox>
#include <QToolButton>

#include "core/movement/drift.h"
#include "tests/window/the_window.h"
#include "ui/march/tables_sill.h"

namespace crosstick::window {
namespace {

using march::ElementsTable;
using march::EventsTable;
using march::TablesSill;
using march::TasksTable;

class TheTables : public TheWindow {
  protected:
    void SetUp() override {
        open();
        drawRoute();
        QTest::keyClick(card().labelField(), Qt::Key_Return);
        plan::Plan next = plan();
        plan::Route route = *next.routes().front();
        route.start = parseDateTimeGroup("132100ZMAR27").value();
        window->work().commit(std::move(plan::PlanBuilder(next).put(route)).build(), "begin");
        window->run("details");
        settle();
    }
    [[nodiscard]] TablesSill& tables() { return window->tables(); }
    [[nodiscard]] std::string cell(march::TablePage& page, int row, int field) {
        return page.view().model()->index(row, field).data(Qt::DisplayRole).toString().toStdString();
    }
    void press(march::TablePage& page, const char* words) {
        for (QToolButton* one : page.findChildren<QToolButton*>()) {
            if (one->text() == QString::fromUtf8(words)) {
                QTest::mouseClick(one, Qt::LeftButton);
                return;
            }
        }
        ADD_FAILURE() << "no button " << words;
    }
    [[nodiscard]] static QLineEdit* editor(march::TablePage& page) {
        for (QLineEdit* one : page.view().findChildren<QLineEdit*>()) {
            if (one->isVisible()) {
                return one;
            }
        }
        return nullptr;
    }
    void type(march::TablePage& page, int row, int field, const char* words) {
        page.view().setCurrentIndex(page.view().model()->index(row, field));
        page.view().setFocus();
        QTest::keyClick(&page.view(), Qt::Key_Return);
        QLineEdit* field1 = editor(page);
        ASSERT_NE(field1, nullptr) << row << ' ' << field;
        field1->clear();
        QTest::keyClicks(field1, QString::fromUtf8(words));
        QTest::keyClick(field1, Qt::Key_Return);
        QTest::qWait(1);
    }
    void addElement(const char* name, const char* sign, const char* people) {
        march::TablePage& page = tables().elements();
        press(page, "Add");
        QTest::keyClick(editor(page), Qt::Key_Escape);
        const int row = page.view().currentIndex().row();
        type(page, row, ElementsTable::Name, name);
        type(page, row, ElementsTable::CallSign, sign);
        type(page, row, ElementsTable::People, people);
    }
    [[nodiscard]] const plan::Force& force() { return plan().force(); }
};

TEST_F(TheTables, TakeElementsWithStrengthAndCallSign) {
    window->run("elements");
    ASSERT_TRUE(tables().elements().isVisible());
    addElement("1 Sqd", "P11", "9");
    addElement("2 Sqd", "P12", "8");
    ASSERT_EQ(force().elements.size(), 2U);
    EXPECT_EQ(force().elements[1].callSign, "P12");
    EXPECT_EQ(force().elements[1].people, 8);
    const plan::Plan unchanged = plan();
    type(tables().elements(), 0, ElementsTable::People, "many");
    EXPECT_TRUE(plan() == unchanged);
    EXPECT_TRUE(tables().elements().told().contains(QStringLiteral("no strength"))) << "said beside the table";
    type(tables().elements(), 0, ElementsTable::People, "10");
    EXPECT_FALSE(tables().elements().told().contains(QStringLiteral("no strength")));
    press(tables().elements(), "Take out");
    EXPECT_EQ(force().elements.size(), 1U);
    window->run("undo");
    EXPECT_EQ(force().elements.size(), 2U);
}

TEST_F(TheTables, TakeTasksAndAttachmentsByPhase) {
    plan::Plan next = plan();
    next = std::move(plan::PlanBuilder(next).phases({{1, "Approach", {}, {}}, {2, "Assault", {}, {}}})).build();
    window->work().commit(next, "phases");
    window->run("elements");
    addElement("1 Sqd", "P11", "9");
    addElement("AT", "P17", "3");
    type(tables().elements(), 1, ElementsTable::kOwn + 1, "p11");
    ASSERT_NE(force().task(force().elements[1].id, 2), nullptr);
    EXPECT_EQ(force().task(force().elements[1].id, 2)->attachedTo, force().elements[0].id);
    type(tables().elements(), 1, ElementsTable::kOwn, "3 Sqd");
    EXPECT_TRUE(tables().elements().told().contains(QStringLiteral("1 Sqd, AT")));
    type(tables().elements(), 0, ElementsTable::kOwn, "1 Sqd");
    EXPECT_TRUE(tables().elements().told().contains(QStringLiteral("under itself")));
    window->run("tasks");
    type(tables().tasks(), 0, TasksTable::What, "lead");
    type(tables().tasks(), 0, TasksTable::Purpose, "so that nobody is surprised");
    EXPECT_EQ(force().task(force().elements[0].id, 1)->purpose, "so that nobody is surprised");
    auto* phase = tables().tasks().findChild<QComboBox*>();
    phase->setFocus();
    QTest::keyClick(phase, Qt::Key_Down);
    EXPECT_EQ(cell(tables().tasks(), 0, TasksTable::What), "");
    EXPECT_EQ(cell(tables().tasks(), 1, TasksTable::Under), "1 Sqd");
    window->run("matrix");
    const auto& paper = tables().paper().model().paper();
    ASSERT_EQ(paper.rows.size(), 2U);
    EXPECT_EQ(paper.rows[0][1].first, "lead");
    EXPECT_NE(paper.rows[1][2].second.find("under 1 Sqd"), std::string::npos);
}

TEST_F(TheTables, TakeAnEventWhosePlaceGivesItsTimeAndAnActualTimeMovesWhatFollows) {
    window->run("events");
    const auto labels = ledger().legs().paper()->legs;
    march::TablePage& page = tables().events();
    press(page, "Add");
    ASSERT_NE(editor(page), nullptr) << "what it is can be typed at once";
    QTest::keyClicks(editor(page), QStringLiteral("head there"));
    QTest::keyClick(editor(page), Qt::Key_Return);
    QTest::qWait(1);
    type(page, 0, EventsTable::Place, labels[0].to.c_str());
    ASSERT_EQ(force().events.size(), 1U);
    EXPECT_EQ(force().events[0].what, "head there");
    EXPECT_EQ(force().events[0].route, plan().routes().front()->id) << "the place lies on it";
    const Instant arrival = ledger().legs().figures()->legs[0].arrival.value();
    EXPECT_EQ(cell(page, 0, EventsTable::Planned),
              dateTimeGroup(arrival + std::chrono::seconds(30), TimeZone{}).substr(0, 7));
    press(page, "Add");
    QTest::keyClicks(editor(page), QStringLiteral("all in"));
    QTest::keyClick(editor(page), Qt::Key_Return);
    QTest::qWait(1);
    type(page, 1, EventsTable::Place, labels[1].to.c_str());
    type(page, 1, EventsTable::Man, "last");
    EXPECT_EQ(force().events[1].man, plan::WhichMan::Last);
    const std::string planned = cell(page, 1, EventsTable::Planned);
    EXPECT_EQ(cell(page, 1, EventsTable::Expected), planned);
    type(page, 0, EventsTable::Actual, clockTime(arrival + std::chrono::minutes(20), TimeZone{}).c_str());
    EXPECT_NE(cell(page, 1, EventsTable::Expected), planned) << "late, and what follows is late";
    EXPECT_EQ(cell(page, 1, EventsTable::Planned), planned);
    const plan::Plan unchanged = plan();
    type(page, 0, EventsTable::Place, "CP 77");
    EXPECT_TRUE(page.told().contains(QStringLiteral("CP 77")));
    type(page, 0, EventsTable::Actual, "later");
    type(page, 1, EventsTable::Man, "both");
    EXPECT_TRUE(page.told().contains(QStringLiteral("first or last")));
    type(page, 1, EventsTable::Reporter, "Nobody");
    EXPECT_TRUE(plan() == unchanged);
}

TEST_F(TheTables, ShowMarchTableAndLightOfTheLedgersRoute) {
    window->run("march-table");
    const auto& paper = tables().paper().model().paper();
    ASSERT_EQ(paper.columns.size(), 4U) << "three route points";
    EXPECT_EQ(paper.rows[0][3].first, ledger().legs().paper()->arrival) << "the ledger's own figure";
    window->run("light");
    ASSERT_EQ(tables().paper().model().paper().rows.size(), 1U);
    EXPECT_EQ(tables().paper().model().paper().columns.size(), 10U);
    window->run("light");
    EXPECT_FALSE(tables().isVisible());
}

TEST_F(TheTables, SayWhatIsMissingForAProfile) {
    window->run("profile");
    EXPECT_TRUE(tables().profile().isVisible());
    EXPECT_FALSE(tables().profile().profile());
    EXPECT_TRUE(tables().profile().accessibleDescription().contains(QStringLiteral("No elevation model")));
}

TEST_F(TheTables, DriftIsDrawnOnRequestAndTheLegsThatEndTooWideAreNamed) {
    EXPECT_TRUE(window->table().guides().empty());
    window->run("drift");
    ASSERT_EQ(window->table().guides().size(), 2U);
    const auto& figures = *ledger().legs().figures();
    const auto drift = movement::routeDrift(plan(), figures, {}, movement::kFoundWithin);
    for (std::size_t n = 0; n < 2; ++n) {
        const auto& guide = window->table().guides()[n];
        const geodesy::PlanePoint end = figures.legs[n].pieces.back().to;
        double farthest = 0;
        for (const geodesy::PlanePoint p : guide.line) {
            farthest =
                std::max(farthest, std::hypot((p.easting - end.easting).value(), (p.northing - end.northing).value()));
        }
        EXPECT_NEAR(farthest, drift.legs[n].ellipse.major.value(), 0.1);
        EXPECT_EQ(guide.weight == table::Guide::Weight::Heavy, drift.legs[n].isLarger());
        EXPECT_EQ(window->notices().said().contains(QString::number(n + 1) + QLatin1Char('.')) ||
                      window->notices().said().contains(QString::number(n + 1) + QLatin1Char(',')),
                  drift.legs[n].isLarger());
    }
    EXPECT_TRUE(
        window->notices().said().contains(QStringLiteral("Longest safe leg to a point found within 50 m: 1000 m.")));
    window->run("drift");
    EXPECT_TRUE(window->table().guides().empty());
}

}  // namespace
}  // namespace crosstick::window
