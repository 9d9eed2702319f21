// Numbers along routes, papers given out, where routes divide: in the real window.
#include "core/plan/numbering.h"
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

class Numbers : public TheWindow {
  protected:
    /// SP 1, CP 1, CP 2, RP 1 along easting.
    plan::ItemId drawn() {
        open();
        window->run("route");
        for (const double east : {-1200.0, -400.0, 400.0, 1200.0}) {
            click(at(east, 0));
        }
        QTest::keyClick(&window->table(), Qt::Key_Return);
        settle();
        return plan().routes().front()->id;
    }
    [[nodiscard]] std::vector<std::string> along() {
        std::vector<std::string> numbers;
        for (const plan::ItemId& item : plan::checkpointsAlong(plan())) {
            numbers.push_back(plan().measure(item)->number);
        }
        return numbers;
    }
    void placeCheckpoint(geodesy::PlanePoint place) {
        window->run("draw-checkpoint");
        click(place);
        QTest::keyClick(&window->table(), Qt::Key_Escape);
        settle();
    }
    using Strings = std::vector<std::string>;
};

TEST_F(Numbers, ACheckpointPlacedOnARouteStandsOnItAndTheOthersFollow) {
    (void)drawn();
    EXPECT_EQ(along(), (Strings{"1", "2"}));
    placeCheckpoint(at(0, 0));
    EXPECT_EQ(plan().routes().front()->stops.size(), 5U);
    EXPECT_EQ(along(), (Strings{"1", "2", "3"}));
    EXPECT_EQ(plan().measure(*window->work().selected())->number, "2");
    window->run("undo");
    EXPECT_EQ(along(), (Strings{"1", "2"})) << "it was one step";
}

TEST_F(Numbers, PapersGivenOutFreezeThemAndTheHouseChoosesHowAnInsertionIsCalled) {
    (void)drawn();
    window->run("issue");
    ASSERT_EQ(plan().heading().issues.size(), 1U);
    EXPECT_EQ(plan().heading().issues[0].at, kNow);
    EXPECT_EQ(plan().heading().issues[0].numbers.size(), 4U);
    placeCheckpoint(at(0, 0));
    EXPECT_EQ(along(), (Strings{"1", "3", "2"}));
    window->run("undo");
    window->run("inserted-letters");
    placeCheckpoint(at(0, 0));
    EXPECT_EQ(along(), (Strings{"1", "1A", "2"}));
    window = fresh();
    EXPECT_EQ(window->work().inserted(), plan::Inserted::Lettered) << "a house's choice is kept";
}

TEST_F(Numbers, ANumberOnPapersGivenOutIsNotTypedOver) {
    (void)drawn();
    window->run("issue");
    window->work().select(plan::checkpointsAlong(plan()).front());
    QLineEdit* field = card().labelField();
    field->setText(QStringLiteral("9"));
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_TRUE(field->property("refused").toBool());
    EXPECT_EQ(along(), (Strings{"1", "2"}));
}

TEST_F(Numbers, NumberingAnewAsksFirstWhichPapersItKills) {
    (void)drawn();
    window->run("issue");
    placeCheckpoint(at(0, 0));
    window->run("renumber");
    ASSERT_TRUE(window->question().isVisible());
    QLineEdit* answer = window->question().field();
    EXPECT_TRUE(answer->accessibleName().contains(QStringLiteral("become wrong: MOVE, LOOK")))
        << answer->accessibleName().toStdString();
    QTest::keyClick(answer, Qt::Key_Escape);
    EXPECT_EQ(along(), (Strings{"1", "3", "2"}));
    window->run("renumber");
    QTest::keyClicks(answer, QStringLiteral("perhaps"));
    QTest::keyClick(answer, Qt::Key_Return);
    EXPECT_FALSE(window->question().refusal().isEmpty());
    answer->setText(QStringLiteral("yes"));
    QTest::keyClick(answer, Qt::Key_Return);
    EXPECT_EQ(along(), (Strings{"1", "2", "3"}));
    EXPECT_TRUE(plan().heading().issues.empty()) << "dead papers freeze nothing";
    window->run("undo");
    EXPECT_EQ(plan().heading().issues.size(), 1U);
}

TEST_F(Numbers, CopiesGivenOutAreRememberedWithWhatStandsOnThem) {
    (void)drawn();
    window->run("copies");
    ASSERT_TRUE(QTest::qWaitFor([this] { return window->copies().isReady(); }, 20000));
    window->copies().giveOutBox()->setChecked(true);
    window->copies().savePdf(QString::fromStdString((folder / "films.pdf").string()), {});
    rest();
    ASSERT_EQ(plan().heading().issues.size(), 1U);
    EXPECT_NE(plan().heading().issues[0].papers.find("MOVE"), std::string::npos);
    EXPECT_EQ(plan().heading().issues[0].numbers.size(), 4U);
}

TEST_F(Numbers, AnAlternateIsAskedWhenItIsTakenAndToldWhereItEnds) {
    const plan::ItemId primary = drawn();
    window->run("alternate");
    click(at(-1200, 0));
    click(at(-400, 0));
    click(at(300, 700));
    click(at(1200, 0));
    QTest::keyClick(&window->table(), Qt::Key_Return);
    ASSERT_EQ(plan().routes().size(), 2U);
    const plan::RoutePtr alternate = plan().routes()[1];
    EXPECT_EQ(along(), (Strings{"1", "2", "3"}));
    window->work().select(primary);
    window->work().select(alternate->id);
    EXPECT_TRUE(card().course().contains(QStringLiteral("At CP 1 it leaves RTE A"))) << card().course().toStdString();
    const auto fieldNamed = [this](const char* name) {
        for (QLineEdit* field : card().findChildren<QLineEdit*>()) {
            if (field->accessibleName() == QLatin1String(name)) {
                return field;
            }
        }
        return static_cast<QLineEdit*>(nullptr);
    };
    for (const auto& [name, words] : {std::pair("Taken when", "the weir is guarded"),
                                      std::pair("Who decides", "Plt Ldr"), std::pair("Code word", "TILLER")}) {
        ASSERT_NE(fieldNamed(name), nullptr) << name;
        fieldNamed(name)->setText(QLatin1String(words));
        QTest::keyClick(fieldNamed(name), Qt::Key_Return);
    }
    const auto decision = plan().route(alternate->id)->decision;
    ASSERT_TRUE(decision);
    EXPECT_EQ(decision->decider, "Plt Ldr");
    EXPECT_EQ(decision->codeWord, "TILLER");
    EXPECT_EQ(card().course(), QStringLiteral("Leaves RTE A at CP 1."));
}

TEST_F(Numbers, AnAlternateThatIsNotLedBackEndsAtACheckpointOfItsOwn) {
    (void)drawn();
    window->run("alternate");
    click(at(-1200, 0));
    click(at(300, 700));
    click(at(900, 900));
    QTest::keyClick(&window->table(), Qt::Key_Return);
    const plan::RoutePtr alternate = plan().routes()[1];
    EXPECT_EQ(plan().measure(alternate->stops.back().measure)->kind, "checkpoint");
}

}  // namespace
}  // namespace crosstick::window
