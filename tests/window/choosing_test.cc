// Choosing several things in the window, going underneath, snapping.
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

class Choosing : public TheWindow {
  protected:
    plan::ItemId put(const char* kind, plan::Points points, const char* number) {
        plan::Measure measure;
        measure.id = window->work().newId();
        measure.kind = kind;
        measure.number = number;
        measure.points = std::move(points);
        const plan::ItemId id = measure.id;
        window->work().commit(plan::withMeasure(plan(), std::move(measure), Uuid{{2}}), "put");
        settle();
        return id;
    }
    void drag(geodesy::PlanePoint from, geodesy::PlanePoint to, Qt::KeyboardModifiers keys) {
        QTest::mousePress(&window->table(), Qt::LeftButton, keys, spot(from));
        sweep(spot(to), keys);
        QTest::mouseRelease(&window->table(), Qt::LeftButton, keys, spot(to));
    }
    /// A move with the button down; QTest::mouseMove tells of none.
    void sweep(QPoint to, Qt::KeyboardModifiers keys) {
        QMouseEvent move(QEvent::MouseMove, to, window->table().mapToGlobal(to), Qt::NoButton, Qt::LeftButton, keys);
        QApplication::sendEvent(&window->table(), &move);
    }
};

TEST_F(Choosing, ABoxChoosesTheDragMovesAllAndOneUndoTakesItBack) {
    open();
    const auto one = put("checkpoint", {at(0, 0)}, "1");
    const auto two = put("checkpoint", {at(600, 200)}, "2");
    drag(at(-400, -400), at(900, 500), Qt::ShiftModifier);
    EXPECT_EQ(window->work().selection().size(), 2U);
    const plan::Plan before = plan();
    QTest::mousePress(&window->table(), Qt::LeftButton, Qt::NoModifier, spot(at(0, 0)));
    sweep(spot(at(300, 300)), Qt::NoModifier);
    QTest::mouseRelease(&window->table(), Qt::LeftButton, Qt::NoModifier, spot(at(300, 300)));
    EXPECT_NEAR(plan().measure(one)->points.front().easting.value(), at(300, 0).easting.value(), 6);
    EXPECT_NEAR(plan().measure(two)->points.front().easting.value(), at(900, 0).easting.value(), 6);
    window->run("undo");
    EXPECT_EQ(plan(), before);
    EXPECT_EQ(window->work().selection().size(), 2U);
    window->run("delete");
    EXPECT_TRUE(plan().measures().isEmpty());
    EXPECT_EQ(window->work().undoCaption(), "wipe off 2 things");
    EXPECT_TRUE(window->work().selection().empty());
    window->run("undo");
    EXPECT_EQ(plan(), before);
}

TEST_F(Choosing, AllOnTheFilmAreChosenByKeyAndControlTakesOneOut) {
    open();
    put("checkpoint", {at(0, 0)}, "1");
    const auto two = put("checkpoint", {at(600, 200)}, "2");
    window->run("choose-all");
    EXPECT_EQ(window->work().selection().size(), 2U);
    QTest::mouseClick(&window->table(), Qt::LeftButton, Qt::ControlModifier, spot(at(600, 200)));
    ASSERT_EQ(window->work().selection().size(), 1U);
    EXPECT_NE(window->work().selected(), two);
}

TEST_F(Choosing, TabGoesToWhatLiesUnderneath) {
    open();
    const auto line = put("phase-line", {at(-800, 0), at(800, 0)}, "");
    const auto point = put("checkpoint", {at(0, 0)}, "1");
    put("checkpoint", {at(900, 900)}, "2");
    click(at(0, 0));
    EXPECT_EQ(window->work().selected(), point);
    window->table().setFocus();
    QTest::keyClick(&window->table(), Qt::Key_Tab);
    EXPECT_EQ(window->work().selected(), line);
    QTest::keyClick(&window->table(), Qt::Key_Tab);
    EXPECT_EQ(window->work().selected(), point);
}

TEST_F(Choosing, ALineIsDrawnFromThePointItIsSnappedToAndFreeWithControl) {
    open();
    put("checkpoint", {at(0, 0)}, "1");
    window->run("draw-phase-line");
    const QPoint near = spot(at(0, 0)) + QPoint(5, -4);
    QTest::mouseMove(&window->table(), near);
    QTest::mouseClick(&window->table(), Qt::LeftButton, Qt::NoModifier, near);
    QTest::mouseClick(&window->table(), Qt::LeftButton, Qt::ControlModifier, near);
    QTest::keyClick(&window->table(), Qt::Key_Return);
    const plan::MeasurePtr line = plan().measure(*window->work().selected());
    ASSERT_EQ(line->points.size(), 2U);
    EXPECT_EQ(line->points[0], at(0, 0));
    EXPECT_NEAR((line->points[1].easting - line->points[0].easting).value(), 25, 1);
}

}  // namespace
}  // namespace crosstick::window
