// The brief in the window, by keys and by the hand.
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

class BriefInTheWindow : public TheWindow {
  protected:
    void SetUp() override {
        open();
        plan::PlanBuilder builder(plan());
        builder.phases({{1, "Approach", {}, {}, {}}, {2, "Look", {}, {}, {}}});
        plan::Film move = *plan().film(Uuid{{2}});
        move.phases = {1};
        plan::Film look = *plan().film(Uuid{{3}});
        look.phases = {2};
        builder.put(move).put(look);
        plan::Plan next = std::move(builder).build();
        plan::Measure point;
        point.id = Uuid{{9}};
        point.kind = "checkpoint";
        point.number = "1";
        point.points = {at(300, 200)};
        point.why = "sees the yard and the jetty";
        next = plan::withMeasure(next, point, Uuid{{2}});
        window->work().commit(next, "begin");
        window->work().setPhase(1);
        settle();
    }
    [[nodiscard]] brief::BriefView& view() { return window->briefView(); }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(&view(), key, modifiers);
        settle();
        EXPECT_TRUE(QTest::qWaitFor([this] { return !view().isLaying(); }, 5000));
    }
    [[nodiscard]] QString title() { return view().words().title; }
    QImage bare;  ///< the table with nothing on it
    /// Pixels of the table that look otherwise than the bare one.
    [[nodiscard]] int inked() {
        const QImage shot = window->table().grab().toImage();
        bare = bare.isNull() ? shot : bare;
        int count = 0;
        for (int y = 0; y < shot.height(); ++y) {
            for (int x = 0; x < shot.width(); ++x) {
                count += shot.pixel(x, y) != bare.pixel(x, y) ? 1 : 0;
            }
        }
        return count;
    }
};

TEST_F(BriefInTheWindow, LaysFilmAfterFilmByOneKeyAndTakesThemOff) {
    window->run("brief");
    settle();
    ASSERT_TRUE(view().isVisible());
    EXPECT_EQ(title(), QStringLiteral("SMALL")) << "no sheet in this plan: its name";
    EXPECT_EQ(inked(), 0) << "the ground alone";
    press(Qt::Key_Space);
    EXPECT_EQ(title(), QStringLiteral("MOVE"));
    EXPECT_GT(inked(), 30);
    EXPECT_EQ(view().words().phase, 1);
    press(Qt::Key_Right);
    EXPECT_EQ(title(), QStringLiteral("LOOK"));
    EXPECT_EQ(inked(), 0) << "of the first phase nothing is left";
    press(Qt::Key_Left);
    EXPECT_EQ(title(), QStringLiteral("MOVE"));
    press(Qt::Key_S);
    EXPECT_EQ(inked(), 0);
    press(Qt::Key_2);
    EXPECT_EQ(title(), QStringLiteral("LOOK"));
}

TEST_F(BriefInTheWindow, FillsTheScreenAndLeavesTheTableAsItLay) {
    const table::View before = window->table().view();
    const geodesy::PlanePoint corner = before.place({18, 18});
    window->run("brief");
    settle();
    EXPECT_TRUE(window->isFullScreen());
    EXPECT_FALSE(window->findChild<phases::Rail*>()->isVisible());
    EXPECT_EQ(view().size(), window->centralWidget()->size());
    EXPECT_EQ(window->table().height() + brief::kStripHigh, window->centralWidget()->height());
    press(Qt::Key_Plus);
    press(Qt::Key_Escape);
    EXPECT_FALSE(view().isVisible());
    EXPECT_FALSE(window->isFullScreen());
    EXPECT_TRUE(window->findChild<phases::Rail*>()->isVisible());
    EXPECT_EQ(QApplication::focusWidget(), &window->table());
    settle();
    const geodesy::PlanePoint after = window->table().view().place({18, 18});
    EXPECT_NEAR((after.easting - corner.easting).value(), 0, 1e-6);
    EXPECT_NEAR((after.northing - corner.northing).value(), 0, 1e-6);
    EXPECT_EQ(window->table().view().zoom(), before.zoom());
}

TEST_F(BriefInTheWindow, ChangesNothingWhateverKeyIsPressed) {
    window->work().select(Uuid{{9}});
    const plan::Plan before = plan();
    window->run("brief");
    settle();
    for (int key = Qt::Key_Space; key <= Qt::Key_Z; ++key) {
        for (const Qt::KeyboardModifiers with :
             {Qt::KeyboardModifiers(Qt::NoModifier), Qt::KeyboardModifiers(Qt::ControlModifier)}) {
            if (with == Qt::NoModifier || (key != Qt::Key_Q && key != Qt::Key_L)) {
                QTest::keyClick(&view(), static_cast<Qt::Key>(key), with);
            }
        }
    }
    QTest::keyClick(&view(), Qt::Key_Delete);
    EXPECT_TRUE(plan() == before);
    EXPECT_TRUE(view().isVisible());
}

TEST_F(BriefInTheWindow, ShowsTheWhyOfEachMeasureOnDemandAndPointsAtIt) {
    window->run("brief");
    settle();
    press(Qt::Key_Space);
    const QImage without = view().grab().toImage();
    press(Qt::Key_W);
    EXPECT_FALSE(view().grab().toImage() == without);
    press(Qt::Key_W);
    EXPECT_EQ(view().grab().toImage(), without);
    EXPECT_FALSE(view().ring());
    press(Qt::Key_Tab);
    ASSERT_TRUE(view().ring().has_value());
    const auto spot = window->table().spotOf(at(300, 200));
    EXPECT_NEAR(view().ring()->x(), spot->x, 1);
    EXPECT_NEAR(view().ring()->y(), spot->y, 1);
    const QPointF before = *view().ring();
    press(Qt::Key_Left, Qt::ShiftModifier);
    EXPECT_LT(view().ring()->x(), before.x());
    press(Qt::Key_2);
    press(Qt::Key_W);
    EXPECT_TRUE(view().words().keys.contains(QStringLiteral("No why"))) << "said, not left blank";
}

TEST_F(BriefInTheWindow, AClickLaysTheNextAndTheHandMovesTheRing) {
    window->run("brief");
    settle();
    QTest::mouseMove(&view(), QPoint(300, 300));
    ASSERT_TRUE(view().ring().has_value());
    EXPECT_EQ(view().ring()->toPoint(), QPoint(300, 300));
    QTest::mouseClick(&view(), Qt::LeftButton, Qt::NoModifier, QPoint(300, 300));
    EXPECT_EQ(title(), QStringLiteral("MOVE"));
    QTest::mouseClick(&view(), Qt::RightButton, Qt::NoModifier, QPoint(300, 300));
    EXPECT_EQ(title(), QStringLiteral("SMALL"));
}

TEST_F(BriefInTheWindow, GoesOnInTheNightLight) {
    window->run("brief");
    settle();
    QTest::keyClick(&view(), Qt::Key_L, Qt::ControlModifier);
    EXPECT_TRUE(window->actionsByName().at("night")->isChecked());
    EXPECT_TRUE(view().isVisible());
}

}  // namespace
}  // namespace crosstick::window
