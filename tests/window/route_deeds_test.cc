// Whole routes by menu and key: the other way, split, joined, swapped; and what is said of their legs.
#include <QLabel>
#include <QPushButton>
#include <QTableView>

#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

using ledger::LegsModel;

class ARoute : public TheWindow {
  protected:
    void SetUp() override {
        open();
        drawRoute();
        QTest::keyClick(card().labelField(), Qt::Key_Return);
        settle();
    }
    [[nodiscard]] const plan::Route& route(int n = 0) { return *plan().routes().at(static_cast<std::size_t>(n)); }
    [[nodiscard]] std::string cell(int row, LegsModel::Column column) {
        return ledger().legs().index(row, column).data(Qt::DisplayRole).toString().toStdString();
    }
    void key(Qt::Key key) { QTest::keyClick(&window->table(), key, Qt::ControlModifier | Qt::ShiftModifier); }
    [[nodiscard]] std::string said() { return window->notices().said().toStdString(); }
    [[nodiscard]] QLineEdit& field(const char* name) {
        for (QLineEdit* one : card().findChildren<QLineEdit*>()) {
            if (one->accessibleName() == QString::fromUtf8(name)) {
                return *one;
            }
        }
        ADD_FAILURE() << "no field " << name;
        return *card().findChild<QLineEdit*>();
    }
    void type(const char* name, const char* words) {
        field(name).setFocus();
        field(name).clear();
        QTest::keyClicks(&field(name), QString::fromUtf8(words));
        QTest::keyClick(&field(name), Qt::Key_Return);
    }
};

TEST_F(ARoute, GoesTheOtherWayByItsKeyAndBackByUndo) {
    const plan::Route before = route();
    key(Qt::Key_B);
    EXPECT_EQ(route().vertices.front(), before.vertices.back());
    EXPECT_EQ(window->work().undoCaption(), "walk a route the other way");
    EXPECT_NE(said().find("goes the other way"), std::string::npos);
    window->run("undo");
    EXPECT_EQ(route(), before);
}

TEST_F(ARoute, IsSplitAtTheChosenPointAndJoinedAgain) {
    const auto before = route().vertices;
    window->work().select(route().id);
    key(Qt::Key_X);
    EXPECT_EQ(plan().routes().size(), 1U);
    EXPECT_NE(said().find("Choose a point"), std::string::npos);
    window->work().select(route().stops[1].measure);
    key(Qt::Key_X);
    ASSERT_EQ(plan().routes().size(), 2U);
    EXPECT_EQ(route(0).vertices.back(), route(1).vertices.front());
    EXPECT_EQ(route(1).name, route(0).name + " 2");
    window->work().select(route(0).id);
    key(Qt::Key_J);
    ASSERT_EQ(plan().routes().size(), 1U);
    EXPECT_EQ(route().vertices, before);
    key(Qt::Key_J);
    EXPECT_NE(said().find("no other route"), std::string::npos);
}

TEST_F(ARoute, ChangesPlacesWithItsAlternate) {
    key(Qt::Key_A);
    EXPECT_NE(said().find("no alternate route"), std::string::npos);
    window->run("alternate");
    click(at(-1000, 500));
    click(at(1000, 700));
    QTest::keyClick(&window->table(), Qt::Key_Return);
    QTest::keyClick(card().labelField(), Qt::Key_Return);
    ASSERT_EQ(plan().routes().size(), 2U);
    key(Qt::Key_A);
    EXPECT_EQ(route(0).use, plan::Use::Alternate);
    EXPECT_EQ(route(1).use, plan::Use::Primary);
    EXPECT_NE(said().find("is the primary route now"), std::string::npos);
}

TEST_F(ARoute, IsListedBendByBendWithTheAzimuthOfEach) {
    const plan::ItemId id = route().id;
    window->work().commit(plan::withPointBefore(plan(), id, 1, at(-500, -600)), "bend");
    window->run("details");
    ASSERT_EQ(ledger().legs().rowCount(), 3);
    const std::string both = cell(0, LegsModel::Azimuth);
    window->run("bends");
    ASSERT_EQ(ledger().legs().rowCount(), 4);
    EXPECT_EQ(cell(0, LegsModel::Leg), "1a");
    EXPECT_EQ(cell(0, LegsModel::To), "bend");
    EXPECT_EQ(cell(0, LegsModel::Arrive), "");
    EXPECT_EQ(cell(1, LegsModel::Leg), "1b");
    EXPECT_EQ(cell(1, LegsModel::To), ledger().legs().paper()->legs[0].to);
    EXPECT_EQ(cell(0, LegsModel::Azimuth) + ", " + cell(1, LegsModel::Azimuth), both);
    EXPECT_EQ(std::stoi(cell(0, LegsModel::Distance)) + std::stoi(cell(1, LegsModel::Distance)),
              ledger().legs().paper()->legs[0].metres);
    EXPECT_EQ(cell(2, LegsModel::Leg), "2");
    window->run("bends");
    EXPECT_EQ(ledger().legs().rowCount(), 3);
}

TEST_F(ARoute, ALegIsChosenInTheLedgerAndItsNotesAreTyped) {
    window->run("details");
    auto* rows = ledger().findChild<QTableView*>();
    QTest::mouseClick(rows->viewport(), Qt::LeftButton, Qt::NoModifier,
                      rows->visualRect(ledger().legs().index(1, LegsModel::To)).center());
    EXPECT_EQ(window->work().selected(), route().stops[2].measure);
    EXPECT_TRUE(field("Catching feature").hasFocus()) << "one click, then it is typed";
    EXPECT_TRUE(ledger().legs().isLive(1));
    QTest::keyClicks(&field("Catching feature"), QStringLiteral("road beyond the weir"));
    QTest::keyClick(&field("Catching feature"), Qt::Key_Return);
    EXPECT_TRUE(field("Remark").hasFocus());
    EXPECT_EQ(route().stops[2].leg.catching, "road beyond the weir");
    type("Halt at its end, min", "1:30");
    EXPECT_EQ(route().stops[2].leg.halt, Minutes(90));
    EXPECT_EQ(field("Halt at its end, min").text().toStdString(), "90");
    const plan::Plan unchanged = plan();
    type("Halt at its end, min", "long");
    EXPECT_TRUE(field("Halt at its end, min").property("refused").toBool());
    type("Active rally point", "RLY 9");
    EXPECT_TRUE(field("Active rally point").property("refused").toBool());
    EXPECT_TRUE(plan() == unchanged);
    type("In contact", "break left");
    type("If separated", "last rally point");
    EXPECT_EQ(ledger().legs().paper()->legs[1].notes.size(), 4U);
}

TEST_F(ARoute, AHaltAndTheGroundOfALegMoveItsTimesAtOnce) {
    window->work().select(route().stops[1].measure);
    const auto before = ledger().legs().figures()->time.value();
    type("Halt at its end, min", "10");
    EXPECT_NEAR((ledger().legs().figures()->time.value() - before).value(), 10, 1e-9);
    for (QPushButton* one : card().findChildren<QPushButton*>()) {
        if (one->text() == QStringLiteral("road")) {
            QTest::mouseClick(one, Qt::LeftButton);
        }
    }
    EXPECT_EQ(route().stops[1].leg.going, plan::Going::Road);
}

}  // namespace
}  // namespace crosstick::window
