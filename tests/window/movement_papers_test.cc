// A way of vehicles, how the hurt are brought out, contours read along a route, and the papers beside the films.
#include <QCheckBox>
#include <QComboBox>
#include <QMenu>

#include "core/plan/edits.h"
#include "core/plan/route_edits.h"
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

class MovementPapers : public TheWindow {
  protected:
    plan::ItemId place(const char* kind, geodesy::PlanePoint where) {
        plan::Measure measure;
        measure.id = window->work().newId();
        measure.kind = kind;
        measure.number = "1";
        measure.points = {where};
        window->work().commit(plan::withMeasure(plan(), measure, Uuid{{2}}), "draw");
        window->work().select(measure.id);
        return measure.id;
    }
    /// What is named so on the card; null where nothing is.
    template <class Widget>
    Widget* named(const QString& name) {
        for (Widget* widget : card().findChildren<Widget*>()) {
            if (widget->accessibleName() == name) {
                return widget;
            }
        }
        return nullptr;
    }
    QCheckBox* box(const QString& words) {
        for (QCheckBox* one : card().findChildren<QCheckBox*>()) {
            if (one->text() == words) {
                return one;
            }
        }
        return nullptr;
    }
    /// A box or list builds the card anew when it is used.
    void rebuilt() { QTest::qWait(20); }
    void waitForPages() {
        EXPECT_TRUE(QTest::qWaitFor([this] { return window->copies().isReady(); }, 20000));
    }
    QString cell(int row, ledger::LegsModel::Column column) {
        const ledger::LegsModel& legs = ledger().legs();
        return legs.data(legs.index(row, column), Qt::DisplayRole).toString();
    }
};

TEST_F(MovementPapers, AWayOfVehiclesHasNoRoutePointsOfItsOwnAndNoPaces) {
    open();
    place("casualty-collection-point", at(-1000, -500));
    window->run("vehicles");
    click(at(-1000, -500));
    click(at(0, 0));
    click(at(1000, 200));
    QTest::keyClick(&window->table(), Qt::Key_Return);
    ASSERT_EQ(plan().routes().size(), 1U);
    const plan::Route& way = *plan().routes().front();
    EXPECT_EQ(way.use, plan::Use::Vehicle);
    EXPECT_EQ(way.stops.size(), 1U) << "the collection point alone";
    EXPECT_EQ(plan().measures().size(), 1U);
    EXPECT_EQ(cell(0, ledger::LegsModel::Paces), QStringLiteral("\u2014"));
    EXPECT_EQ(ledger().asks(), std::nullopt) << "nothing is asked for what nobody walks";
}

TEST_F(MovementPapers, TheCardOfACollectionPointNamesTheWayOnAndThePickUp) {
    open();
    drawRoute();
    const plan::ItemId walked = plan().routes().front()->id;
    plan::Route way;
    way.id = window->work().newId();
    way.name = "GROAT";
    way.use = plan::Use::Vehicle;
    way.vertices = {at(900, 900), at(1900, 900)};
    window->work().commit(plan::withRoute(plan(), way, {}, Uuid{{2}}), "draw");
    const plan::ItemId pickUp = place("medevac-pickup", at(1900, 900));
    const plan::ItemId point = place("casualty-collection-point", at(900, 900));
    ASSERT_NE(box("Casualties are carried here"), nullptr);
    EXPECT_EQ(named<QComboBox>("Pick-up"), nullptr) << "nothing to choose before";
    box("Casualties are carried here")->click();
    rebuilt();
    ASSERT_TRUE(plan().heading().evacuation);
    EXPECT_EQ(plan().heading().evacuation->collection, point);
    auto* ways = named<QComboBox>("Vehicle's way on");
    auto* fetched = named<QComboBox>("Pick-up");
    auto* carry = named<QLineEdit>("Rate of carrying, km/h");
    ASSERT_TRUE(ways && fetched && carry);
    ways->setFocus();
    QTest::keyClick(ways, Qt::Key_Down);
    EXPECT_EQ(plan().heading().evacuation->onward, way.id);
    fetched->setFocus();
    QTest::keyClick(fetched, Qt::Key_Down);
    EXPECT_TRUE(plan().heading().evacuation->pickUp == pickUp || plan().heading().evacuation->pickUp == point);
    carry->setFocus();
    QTest::keyClicks(carry, "fast");
    QTest::keyClick(carry, Qt::Key_Return);
    EXPECT_FALSE(plan().heading().evacuation->carry);
    carry->clear();
    QTest::keyClicks(carry, "1.2");
    QTest::keyClick(carry, Qt::Key_Return);
    ASSERT_TRUE(plan().heading().evacuation->carry);
    EXPECT_EQ(plan().heading().evacuation->carry->rate, KilometresPerHour(1.2));
    window->work().select(walked);
    QStringList rows;
    for (const details::FigureRow& row : card().figures()->rows()) {
        rows << row.what;
    }
    EXPECT_TRUE(rows.join(QLatin1Char(';')).contains(QStringLiteral("Carry to CCP 1")))
        << rows.join(", ").toStdString();
    EXPECT_TRUE(rows.join(QLatin1Char(';')).contains(QStringLiteral("straight")));
}

TEST_F(MovementPapers, ARouteIsMadeAWayOfVehiclesOnItsCard) {
    open();
    drawRoute();
    const plan::ItemId route = plan().routes().front()->id;
    window->work().select(route);
    named<QPushButton>("Use: vehicle")->click();
    rebuilt();
    EXPECT_EQ(plan().route(route)->use, plan::Use::Vehicle);
    box("The hurt are driven on by it")->click();
    rebuilt();
    EXPECT_EQ(plan().heading().evacuation->onward, route);
}

TEST_F(MovementPapers, ContoursAreClickedAndTheirHeightsTyped) {
    open();
    drawRoute();
    const plan::ItemId route = plan().routes().front()->id;
    window->work().select(route);
    window->run("contours");
    const auto read = [&](geodesy::PlanePoint where, const char* height) {
        click(where);
        QLineEdit* field = window->question().field();
        ASSERT_TRUE(field->isVisible());
        field->clear();
        QTest::keyClicks(field, height);
        QTest::keyClick(field, Qt::Key_Return);
    };
    read(at(-1000, -500), "40");
    EXPECT_NE(window->notices().said().indexOf("Climb is unknown until"), -1);
    read(at(0, 10), "fifty");
    EXPECT_NE(window->question().refusal(), QString());
    read(at(0, 10), "60");
    read(at(1000, 200), "50");
    ASSERT_EQ(plan().route(route)->contours.size(), 3U);
    EXPECT_NE(window->notices().said().indexOf("climb 20 m, descent 10 m, from contours"), -1)
        << window->notices().said().toStdString();
    EXPECT_EQ(cell(0, ledger::LegsModel::Climb), QStringLiteral("20"));
    const QString head =
        ledger().legs().headerData(ledger::LegsModel::Climb, Qt::Horizontal, Qt::DisplayRole).toString();
    EXPECT_TRUE(head.contains(QStringLiteral("contours"))) << head.toStdString();
    QTest::keyClick(&window->table(), Qt::Key_Backspace);
    EXPECT_EQ(plan().route(route)->contours.size(), 2U);
}

TEST_F(MovementPapers, ThePreviewMakesThePapersThatAreWantedWithTheColumnsThatAreWanted) {
    open();
    drawRoute();
    window->run("copies");
    waitForPages();
    copies::Copies& copies = window->copies();
    const std::size_t before = copies.pages();
    copies.papersChoice().button(copies::Paper::March)->click();
    waitForPages();
    EXPECT_EQ(copies.pages(), before + 1);
    copies.papersChoice().button(copies::Paper::Matrix)->click();
    waitForPages();
    EXPECT_EQ(copies.pages(), before + 2);
    EXPECT_FALSE(copies.papersChoice().columns()->isEnabled()) << "a film is looked at";
    copies.turn(static_cast<int>(before));
    ASSERT_TRUE(copies.papersChoice().columns()->isEnabled());
    QMenu* menu = copies.papersChoice().columns()->menu();
    ASSERT_GT(menu->actions().size(), 2);
    menu->actions().at(2)->trigger();
    waitForPages();
    EXPECT_TRUE(copies.papersChoice().wish().without.at(copies::Paper::March).size() == 1U);
}

}  // namespace
}  // namespace crosstick::window
