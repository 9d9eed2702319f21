// A pen on the glass of the real window: it draws, rests, wipes with its other end, and the palm beside it does
// nothing.
#include <cmath>

#include <QMenu>
#include <QPointingDevice>
#include <QTabletEvent>
#include <QTimer>
#include <QWindow>

#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

QPointingDevice pen(QPointingDevice::PointerType end) {
    return {QStringLiteral("pen"),
            1,
            QInputDevice::DeviceType::Stylus,
            end,
            QInputDevice::Capability::Position | QInputDevice::Capability::Pressure,
            1,
            2};
}

class Pen : public TheWindow {
  protected:
    QPointingDevice point = pen(QPointingDevice::PointerType::Pen);
    QPointingDevice otherEnd = pen(QPointingDevice::PointerType::Eraser);
    QPointingDevice* glass = QTest::createTouchDevice();

    /// As the system tells the window, which looks for the part under the pen.
    void tell(const QPointingDevice& device, QEvent::Type type, QPointF onTable, Qt::MouseButton button,
              Qt::MouseButtons held) {
        const QPointF inWindow = window->table().mapTo(window.get(), onTable);
        QTabletEvent event(type, &device, inWindow, window->mapToGlobal(inWindow), held ? 0.6 : 0, 0, 0, 0, 0, 0,
                           Qt::NoModifier, button, held);
        QCoreApplication::sendEvent(window->windowHandle(), &event);
    }
    void hover(QPointF at) { tell(point, QEvent::TabletMove, at, Qt::NoButton, Qt::NoButton); }
    void press(QPointF at) { tell(point, QEvent::TabletPress, at, Qt::LeftButton, Qt::LeftButton); }
    void drag(QPointF at) { tell(point, QEvent::TabletMove, at, Qt::NoButton, Qt::LeftButton); }
    void lift(QPointF at) { tell(point, QEvent::TabletRelease, at, Qt::LeftButton, Qt::NoButton); }
    void dab(geodesy::PlanePoint place) {
        hover(spot(place));
        press(spot(place));
        lift(spot(place));
    }
    /// A line from end to end, drawn with any end of the pen.
    void stroke(const QPointingDevice& device, geodesy::PlanePoint from, geodesy::PlanePoint to) {
        const QPointF begin = spot(from);
        const QPointF way = spot(to) - begin;
        tell(device, QEvent::TabletPress, begin, Qt::LeftButton, Qt::LeftButton);
        for (int n = 1; n <= 20; ++n) {
            tell(device, QEvent::TabletMove, begin + way * n / 20, Qt::NoButton, Qt::LeftButton);
        }
        tell(device, QEvent::TabletRelease, begin + way, Qt::LeftButton, Qt::NoButton);
    }
    /// What the menu says that opens meanwhile.
    QStringList menuAfter(int ms) {
        QStringList words;
        QTimer::singleShot(ms, [&words] {
            if (auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget())) {
                for (const QAction* action : menu->actions()) {
                    words << action->text();
                }
                menu->close();
            }
        });
        QTest::qWait(ms + 100);
        return words;
    }
    [[nodiscard]] std::vector<plan::MeasurePtr> measures() {
        std::vector<plan::MeasurePtr> all;
        plan().measures().forEach([&](const plan::MeasurePtr& one) { all.push_back(one); });
        return all;
    }
    plan::ItemId phaseLine() {
        window->run("draw-phase-line");
        dab(at(-1500, 0));
        dab(at(1500, 0));
        QTest::keyClick(&window->table(), Qt::Key_Return);
        settle();
        return *window->work().selected();
    }
};

TEST_F(Pen, DabsDrawARouteAndTwoQuickOnesEndIt) {
    open();
    window->run("route");
    dab(at(-1000, -500));
    dab(at(-500, 0));
    dab(at(0, 200));
    press(spot(at(0, 200)));
    lift(spot(at(0, 200)));
    ASSERT_EQ(plan().routes().size(), 1U);
    const plan::Points& drawn = plan().routes().front()->vertices;
    ASSERT_EQ(drawn.size(), 3U);
    EXPECT_NEAR(drawn[1].easting.value(), 653500, 6);
    EXPECT_NEAR(drawn[1].northing.value(), 5098000, 6);
    EXPECT_FALSE(window->table().isDrawing());
}

TEST_F(Pen, OneStrokeDrawsALineFreehandFromWhereItCameDown) {
    open();
    window->run("freehand");
    const QPointF begin = spot(at(-800, 0));
    press(begin);
    for (int n = 1; n <= 60; ++n) {
        drag(begin + QPointF(5 * n, 40 * std::sin(n / 10.0)));
    }
    lift(begin + QPointF(300, 40 * std::sin(6.0)));
    ASSERT_EQ(plan().measures().size(), 1U) << window->notices().said().toStdString();
    const plan::Points drawn = measures().front()->points;
    EXPECT_GT(drawn.size(), 5U);
    EXPECT_NEAR(drawn.front().easting.value(), 653200, 6);
    EXPECT_NEAR(drawn.back().easting.value(), 653200 + 300 / 0.2, 6);
}

TEST_F(Pen, APenThatRestsBeforeAStrokeStillDrawsIt) {
    open();
    window->run("freehand");
    const QPointF begin = spot(at(-800, 0));
    press(begin);
    QTest::qWait(table::Fingers::kHoldMs + 200);
    for (int n = 1; n <= 20; ++n) {
        drag(begin + QPointF(10 * n, 0));
    }
    lift(begin + QPointF(200, 0));
    EXPECT_EQ(plan().measures().size(), 1U);
}

TEST_F(Pen, OneThatRestsOnAThingOpensItsMenuAndMovesNothing) {
    open();
    window->run("draw-checkpoint");
    dab(at(0, 0));
    QTest::keyClick(&window->table(), Qt::Key_Escape);
    window->work().select(std::nullopt);
    settle();
    const plan::Plan before = plan();
    press(spot(at(0, 0)));
    const QStringList words = menuAfter(table::Fingers::kHoldMs + 300);
    lift(spot(at(0, 0)));
    EXPECT_TRUE(words.contains(QStringLiteral("Wipe off"))) << words.join(QLatin1Char('|')).toStdString();
    EXPECT_TRUE(plan() == before);
}

TEST_F(Pen, ItsButtonOpensTheMenuToo) {
    open();
    const plan::ItemId line = phaseLine();
    window->work().select(std::nullopt);
    QStringList words;
    QTimer::singleShot(200, [&words] {
        if (auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget())) {
            for (const QAction* action : menu->actions()) {
                words << action->text();
            }
            menu->close();
        }
    });
    tell(point, QEvent::TabletPress, spot(at(500, 0)), Qt::RightButton, Qt::RightButton);
    tell(point, QEvent::TabletRelease, spot(at(500, 0)), Qt::RightButton, Qt::NoButton);
    EXPECT_TRUE(words.contains(QStringLiteral("Wipe off"))) << words.join(QLatin1Char('|')).toStdString();
    EXPECT_EQ(window->work().selected(), line);
}

TEST_F(Pen, OneThatRestsInTheMiddleOfALineEndsIt) {
    open();
    window->run("route");
    dab(at(-1000, -500));
    QTest::qWait(600);  // or the next would be the second of two quick ones
    press(spot(at(500, 300)));
    QTest::qWait(table::Fingers::kHoldMs + 200);
    lift(spot(at(500, 300)));
    ASSERT_EQ(plan().routes().size(), 1U);
    EXPECT_EQ(plan().routes().front()->vertices.size(), 2U);
}

TEST_F(Pen, ItDragsAThingAndPushesTheBareSheet) {
    open();
    window->run("draw-checkpoint");
    dab(at(0, 0));
    QTest::keyClick(&window->table(), Qt::Key_Escape);
    const plan::ItemId item = *window->work().selected();
    stroke(point, at(0, 0), at(600, 300));
    EXPECT_NEAR(plan().measure(item)->points.front().easting.value(), 654600, 6);
    window->work().select(std::nullopt);
    const plan::Plan before = plan();
    const table::Spot was = window->table().view().spot(at(0, 0));
    stroke(point, at(-1000, -900), at(-500, -900));
    EXPECT_NEAR(window->table().view().spot(at(0, 0)).x - was.x, 100, 2);
    EXPECT_TRUE(plan() == before);
}

TEST_F(Pen, ItsOtherEndRubsAPartOfALineOutAndThePointChoosesAgain) {
    open();
    phaseLine();
    QTest::keyClick(&window->table(), Qt::Key_Escape);
    stroke(otherEnd, at(-300, 0), at(400, 0));
    ASSERT_EQ(plan().measures().size(), 2U) << "one line in two pieces";
    EXPECT_EQ(window->work().undoCaption(), "wipe a part of a line");
    for (const plan::MeasurePtr& piece : measures()) {
        const double inner = std::min(std::abs(piece->points.front().easting.value() - 654000),
                                      std::abs(piece->points.back().easting.value() - 654000));
        EXPECT_NEAR(inner, piece->points.front().easting.value() < 653500 ? 300 : 400, 8);
    }
    QTest::qWait(600);
    dab(at(-900, 0));
    EXPECT_FALSE(window->table().isDrawing());
    EXPECT_TRUE(window->work().selected().has_value());
    EXPECT_EQ(plan().measures().size(), 2U);
}

TEST_F(Pen, ThePalmBesideItDrawsNothing) {
    open();
    window->run("route");
    QTest::touchEvent(&window->table(), glass).press(0, QPoint(700, 500));
    dab(at(-1000, -500));
    QTest::touchEvent(&window->table(), glass).move(0, QPoint(720, 520));
    dab(at(0, 300));
    QTest::touchEvent(&window->table(), glass).release(0, QPoint(720, 520));
    QTest::keyClick(&window->table(), Qt::Key_Return);
    ASSERT_EQ(plan().routes().size(), 1U);
    EXPECT_EQ(plan().routes().front()->vertices.size(), 2U);
}

TEST_F(Pen, TwoFingersPushTheSheetInTheMiddleOfALineThatThePenGoesOnWith) {
    open();
    window->run("route");
    dab(at(-1000, -500));
    QTest::qWait(700);  // the pen is taken away
    const table::View before = window->table().view();
    QWidget* table = &window->table();
    QTest::touchEvent(table, glass).press(0, QPoint(400, 300));
    QTest::touchEvent(table, glass).move(0, QPoint(400, 300)).press(1, QPoint(500, 300));
    QTest::touchEvent(table, glass).move(0, QPoint(460, 340)).move(1, QPoint(560, 340));
    QTest::touchEvent(table, glass).move(0, QPoint(460, 340)).move(1, QPoint(660, 340));
    QTest::touchEvent(table, glass).release(0, QPoint(460, 340)).release(1, QPoint(660, 340));
    EXPECT_NEAR(window->table().view().zoom().value(), 2 * before.zoom().value(), 1e-9);
    const auto held = before.place({450, 300});  // what lay between the fingers lies there still
    EXPECT_NEAR(window->table().view().spot(held).x, 560, 1);
    EXPECT_NEAR(window->table().view().spot(held).y, 340, 1);
    EXPECT_TRUE(window->table().isBusy()) << "the line is still wet";
    dab(held);
    QTest::keyClick(&window->table(), Qt::Key_Return);
    ASSERT_EQ(plan().routes().size(), 1U);
    EXPECT_EQ(plan().routes().front()->vertices.size(), 2U);
}

TEST_F(Pen, FingersThatTheSystemTakesAwayLeaveTheLineWet) {
    open();
    window->run("route");
    dab(at(-1000, -500));
    dab(at(-200, 0));
    QTest::qWait(700);
    QTest::touchEvent(&window->table(), glass).press(0, QPoint(700, 300));
    QTest::touchEvent(&window->table(), glass).move(0, QPoint(740, 300));
    QTouchEvent gone(QEvent::TouchCancel, glass);
    QCoreApplication::sendEvent(&window->table(), &gone);
    EXPECT_TRUE(window->table().isBusy());
}

}  // namespace
}  // namespace crosstick::window
