// What the hand takes hold of on the table, and the sill of an order of march: real events in the real window.
#include <QTableView>
#include <QToolButton>

#include "core/plan/showings.h"
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

class Hands : public TheWindow {
  protected:
    /// A measure placed by the tool of its kind, and nothing chosen.
    plan::ItemId placed(const char* action, geodesy::PlanePoint place) {
        window->run(action);
        click(place);
        const plan::ItemId item = *window->work().selected();
        QTest::keyClick(&window->table(), Qt::Key_Escape);
        window->work().select(std::nullopt);
        settle();
        return item;
    }
    [[nodiscard]] const plan::Showing& showing(const plan::ItemId& item) {
        const auto& shows = plan().film(Uuid{{2}})->shows;
        return *std::find_if(shows.begin(), shows.end(), [&](const auto& one) { return one.item == item; });
    }
    void place(const plan::ItemId& item, geodesy::PlanePoint symbolAt) {
        window->work().commit(plan::setAside(plan(), item, Uuid{{2}}, symbolAt), "set aside");
        settle();
    }
};

TEST_F(Hands, ASymbolThatStandsAsideIsSelectedAndMovedByItself) {
    open();
    const plan::ItemId unit = placed("draw-unit", at(0, 0));
    place(unit, at(800, 600));
    click(at(800, 600));
    EXPECT_EQ(window->work().selected(), unit);
    drag(at(800, 600), at(400, 900));
    EXPECT_NEAR(showing(unit).symbolAt->easting.value(), 654400, 10);
    EXPECT_NEAR(showing(unit).symbolAt->northing.value(), 5098900, 10);
    EXPECT_EQ(plan().measure(unit)->points.front(), plan().measure(unit)->points.front());
    window->run("undo");
    EXPECT_EQ(showing(unit).symbolAt, at(800, 600));
}

TEST_F(Hands, AUnitDraggedOnAnotherStandsInItsRow) {
    open();
    const plan::ItemId first = placed("draw-unit", at(-900, 0));
    const plan::ItemId second = placed("draw-unit", at(900, 0));
    place(second, at(1300, 500));
    drag(at(1300, 500), at(-900, 0));
    settle();
    EXPECT_EQ(showing(second).standsWith, first);
}

TEST_F(Hands, LettersOfALineArePlacedByHandOnceItIsChosen) {
    open();
    window->run("draw-phase-line");
    click(at(-1500, 0));
    click(at(1500, 0));
    QTest::keyClick(&window->table(), Qt::Key_Return);
    settle();
    const plan::ItemId line = *window->work().selected();
    window->work().commit(plan::labelPlaced(plan(), line, Uuid{{2}}, at(0, 700)), "place");
    settle();
    drag(at(0, 700), at(-600, 1000));
    ASSERT_TRUE(showing(line).labelAt);
    EXPECT_NEAR(showing(line).labelAt->easting.value(), 653400, 10);
    EXPECT_NEAR(showing(line).labelAt->northing.value(), 5099000, 10);
}

TEST_F(Hands, ADoubleClickEndsARouteWithoutAStrayPoint) {
    open();
    window->run("route");
    click(at(-1000, -500));
    QTest::mouseMove(&window->table(), spot(at(500, 200)));
    QTest::mouseClick(&window->table(), Qt::LeftButton, Qt::NoModifier, spot(at(500, 200)));
    click(at(1000, 600));
    const QPointF end = spot(at(1000, 600));
    QMouseEvent again(QEvent::MouseButtonDblClick, end, window->table().mapToGlobal(end), Qt::LeftButton,
                      Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&window->table(), &again);
    ASSERT_EQ(plan().routes().size(), 1U);
    EXPECT_EQ(plan().routes().front()->vertices.size(), 3U);
    EXPECT_EQ(plan().measures().size(), 3U);
    EXPECT_FALSE(window->table().isDrawing());
    EXPECT_EQ(QApplication::focusWidget(), card().labelField());
}

TEST_F(Hands, AColumnIsTypedOverInItsSillAndTheBlockFollows) {
    open();
    (void)placed("draw-order-of-march", at(-1000, 800));
    auto* sill = window->findChild<march::MarchSill*>();
    ASSERT_TRUE(sill);
    window->run("march");
    EXPECT_TRUE(sill->isVisible());
    EXPECT_FALSE(ledger().isVisible());
    QToolButton* add = nullptr;
    for (QToolButton* button : sill->findChildren<QToolButton*>()) {
        add = button->text() == QStringLiteral("Add") ? button : add;
    }
    ASSERT_TRUE(add);
    QTest::mouseClick(add, Qt::LeftButton);
    QTest::mouseClick(add, Qt::LeftButton);
    auto* rows = sill->findChild<QTableView*>();
    ASSERT_EQ(rows->model()->rowCount(), 2);
    rows->setCurrentIndex(rows->model()->index(0, march::ColumnModel::People));
    rows->edit(rows->currentIndex());
    auto* editor = rows->findChild<QLineEdit*>();
    ASSERT_TRUE(editor);
    QTest::keyClicks(editor, "9");
    QTest::keyClick(editor, Qt::Key_Return);
    QTest::qWait(20);  // the table takes what was typed when the key has been dealt with
    const plan::Force& force = plan().force();
    ASSERT_EQ(force.columns.size(), 1U);
    EXPECT_EQ(force.element(force.columns[0].serials[0].element)->people, 9);
    window->run("undo");
    EXPECT_EQ(plan().force().element(force.columns[0].serials[0].element)->people, 0);
}

TEST_F(Hands, DeleteInACellEmptiesTheCellAndWipesNothingOff) {
    open();
    const plan::ItemId block = placed("draw-order-of-march", at(-1000, 800));
    window->run("march");
    window->work().select(block);
    auto* sill = window->findChild<march::MarchSill*>();
    sill->model().add(-1);
    auto* rows = sill->findChild<QTableView*>();
    rows->setFocus();
    rows->setCurrentIndex(sill->model().index(0, march::ColumnModel::Name));
    QTest::keyClick(rows, Qt::Key_Delete);
    EXPECT_TRUE(plan().measure(block)) << "the block is still there";
    EXPECT_EQ(plan().force().elements.at(0).name, "");
}

TEST_F(Hands, AColumnThatThereIsNotShowsNoElementsOfAnother) {
    open();
    window->run("march");
    auto* sill = window->findChild<march::MarchSill*>();
    sill->model().add(-1);
    sill->show("Return");
    EXPECT_EQ(sill->model().rowCount(), 0);
    sill->show("");
    EXPECT_EQ(sill->model().rowCount(), 1);
}

TEST_F(Hands, WhatIsNoStrengthIsRefusedInWords) {
    open();
    window->run("march");
    auto* sill = window->findChild<march::MarchSill*>();
    sill->model().add(-1);
    const auto people = sill->model().index(0, march::ColumnModel::People);
    EXPECT_FALSE(sill->model().setData(people, QStringLiteral("many"), Qt::EditRole));
    EXPECT_TRUE(window->notices().said().contains(QStringLiteral("no strength")))
        << window->notices().said().toStdString();
    EXPECT_FALSE(
        sill->model().setData(sill->model().index(0, march::ColumnModel::People), QStringLiteral("2.5"), Qt::EditRole));
}

}  // namespace
}  // namespace crosstick::window
