// The hand's tools in the window: what is asked at the foot, what is said, what one undo takes back; ties.
#include <QTableView>

#include "core/geodesy/plane_angles.h"
#include "core/geodesy/plane_line.h"
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

class DraftingInWindow : public TheWindow {
  protected:
    plan::ItemId put(const char* kind, plan::Points points, const char* number = "") {
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
    void answer(const char* typed) {
        QLineEdit* field = window->question().field();
        ASSERT_TRUE(field->isVisible());
        field->setText(QString::fromUtf8(typed));
        QTest::keyClick(field, Qt::Key_Return);
    }
    [[nodiscard]] std::string said() { return window->notices().said().toStdString(); }
    void enter() { QTest::keyClick(&window->table(), Qt::Key_Return); }
    [[nodiscard]] plan::MeasurePtr chosen() { return plan().measure(*window->work().selected()); }
};

TEST_F(DraftingInWindow, AFreehandStrokeBecomesWhatTheMenuNamesNext) {
    open();
    window->run("freehand");
    click(at(-800, 0));
    for (int n = 0; n <= 40; ++n) {
        QTest::mouseMove(&window->table(), spot(at(-800 + n * 30, n % 20 * 12)));
    }
    click(at(500, 0));
    ASSERT_TRUE(chosen());
    EXPECT_EQ(chosen()->kind, "free-line");
    EXPECT_NE(said().find("kept"), std::string::npos) << said();
    const auto points = chosen()->points;
    window->run("draw-phase-line");
    EXPECT_FALSE(window->table().isDrawing());
    EXPECT_EQ(chosen()->kind, "phase-line");
    EXPECT_EQ(chosen()->points, points);
    window->run("draw-phase-line");
    EXPECT_TRUE(window->table().isDrawing()) << "once: then a new one is begun";
}

TEST_F(DraftingInWindow, ARegionIsWipedOnlyWhenItsCountWasTaken) {
    open();
    put("checkpoint", {at(0, 0)}, "1");
    put("phase-line", {at(-900, 100), at(900, 100)});
    const plan::Plan before = plan();
    window->run("wipe-region");
    for (const auto& corner : {at(-300, -300), at(300, -300), at(300, 300), at(-300, 300)}) {
        click(corner);
    }
    enter();
    ASSERT_TRUE(window->question().isVisible());
    answer("no");
    EXPECT_EQ(plan(), before);
    EXPECT_FALSE(window->question().refusal().isEmpty());
    answer("wipe");
    EXPECT_EQ(plan().measures().size(), 2U);
    EXPECT_FALSE(window->table().isDrawing());
    EXPECT_EQ(window->work().undoCaption(), "wipe a region");
    window->run("undo");
    EXPECT_EQ(plan(), before);
}

TEST_F(DraftingInWindow, AWholeFilmIsWipedAfterItsCount) {
    open();
    put("checkpoint", {at(0, 0)}, "1");
    put("checkpoint", {at(300, 0)}, "2");
    window->run("wipe-film");
    answer("wipe");
    EXPECT_TRUE(plan().measures().isEmpty());
    window->run("wipe-film");
    EXPECT_FALSE(window->question().isVisible());
    EXPECT_NE(said().find("Nothing"), std::string::npos);
}

TEST_F(DraftingInWindow, APinnedFilmIsNeitherDrawnOnNorWiped) {
    open();
    plan::Film film = *plan().film(Uuid{{2}});
    film.pinned = true;
    window->work().commit(std::move(plan::PlanBuilder(plan()).put(film)).build(), "pin");
    for (const char* tool : {"freehand", "wipe-part", "wipe-region", "wipe-film", "end-on", "polar", "resection"}) {
        window->run(tool);
        EXPECT_FALSE(window->table().isDrawing()) << tool;
        EXPECT_NE(said().find("MOVE is pinned"), std::string::npos) << tool;
    }
}

TEST_F(DraftingInWindow, APointByAzimuthAndDistanceFromWhatIsChosen) {
    open();
    const auto base = put("checkpoint", {at(0, 0)}, "1");
    window->work().select(base);
    window->run("polar");
    answer("227");
    EXPECT_NE(window->question().refusal().indexOf(QStringLiteral("distance")), -1);
    answer("227 G 1000");
    ASSERT_TRUE(chosen());
    EXPECT_EQ(chosen()->kind, "waypoint");
    // The plan lies in its own grid here: what was typed is what lies between the points.
    EXPECT_NEAR(geodesy::planeDistance(at(0, 0), chosen()->points.front()).value(), 1000, 0.01);
    EXPECT_NEAR(geodesy::planeAzimuth(at(0, 0), chosen()->points.front()).value(), 227, 0.001);
    window->work().select(base);
    window->run("polar");
    answer("227 M 1000");
    const auto figures = window->work().figuresBetween(at(0, 0), chosen()->points.front());
    ASSERT_TRUE(figures);
    EXPECT_NEAR(figures->legs.front().pieces.front().magneticAzimuth.value(), 227, 0.01);
}

TEST_F(DraftingInWindow, AnAzimuthTypedWhileDrawingPlacesTheNextPoint) {
    open();
    window->run("draw-phase-line");
    click(at(0, 0));
    window->run("polar");
    answer("90 G 500");
    EXPECT_TRUE(window->table().isDrawing());
    enter();
    ASSERT_EQ(chosen()->points.size(), 2U);
    EXPECT_NEAR((chosen()->points[1].easting - chosen()->points[0].easting).value(), 500, 0.01);
}

TEST_F(DraftingInWindow, ResectionFromTwoKnownPoints) {
    open();
    put("checkpoint", {at(-600, 600)}, "1");
    put("checkpoint", {at(600, 600)}, "2");
    // Standing at 0, 0: the azimuths that a compass would read there, by the legs' own figures.
    const auto read = [this](geodesy::PlanePoint to) {
        const auto figures = window->work().figuresBetween(at(0, 0), to);
        return std::to_string(figures->legs.front().pieces.front().magneticAzimuth.value());
    };
    const std::string first = read(at(-600, 600));
    const std::string second = read(at(600, 600));
    window->run("resection");
    click(at(-600, 600));
    answer(first.c_str());
    click(at(600, 600));
    answer(second.c_str());
    enter();
    ASSERT_TRUE(chosen());
    EXPECT_LT(geodesy::planeDistance(chosen()->points.front(), at(0, 0)), Metres(0.5));
    EXPECT_NE(said().find("resection"), std::string::npos);
    EXPECT_NE(said().find("two lines"), std::string::npos) << said();
}

TEST_F(DraftingInWindow, TheRulerLeavesNothingBehind) {
    open();
    const plan::Plan before = plan();
    window->run("ruler");
    click(at(0, 0));
    click(at(500, 0));
    QTest::keyClick(&window->table(), Qt::Key_Escape);
    QTest::keyClick(&window->table(), Qt::Key_Escape);
    EXPECT_FALSE(window->table().isDrawing());
    EXPECT_EQ(plan(), before);
}

TEST_F(DraftingInWindow, WhatIsDrawnIsFollowedAndAHandrailRunsAtTheTypedDistance) {
    open();
    put("phase-line", {at(-900, 0), at(0, 0), at(900, 300)});
    window->run("drawn-first");
    window->run("handrail-far");
    answer("far");
    EXPECT_FALSE(window->question().refusal().isEmpty());
    answer("150");
    window->run("handrail-left");
    QTest::mouseClick(&window->table(), Qt::LeftButton, Qt::NoModifier, spot(at(-700, 0)));
    QTest::mouseClick(&window->table(), Qt::LeftButton, Qt::NoModifier, spot(at(600, 200)));
    enter();
    ASSERT_TRUE(chosen());
    EXPECT_EQ(chosen()->kind, "free-line");
    EXPECT_NEAR((chosen()->points.front().northing - at(0, 150).northing).value(), 0, 1);
    EXPECT_NE(said().find("150 m left of the line"), std::string::npos) << said();
}

TEST_F(DraftingInWindow, ATieStandsOnLedgerAndCard) {
    open();
    drawRoute();
    const auto stop = plan().routes().front()->stops[1].measure;
    window->work().select(stop);
    window->run("tie");
    click(at(-30, -30));
    answer("road junction");
    EXPECT_EQ(plan().measure(stop)->tie, "40 m NE of the road junction");
    EXPECT_EQ(said(), "40 m NE of the road junction");
    window->work().select(plan().routes().front()->id);
    bool isInLedger = false;
    const QAbstractItemModel& legs = *ledger().findChild<QTableView*>()->model();
    for (int row = 0; row < legs.rowCount(); ++row) {
        for (int column = 0; column < legs.columnCount(); ++column) {
            isInLedger = isInLedger ||
                         legs.index(row, column).data().toString() == QStringLiteral("40 m NE of the road junction");
        }
    }
    EXPECT_TRUE(isInLedger);
}

}  // namespace
}  // namespace crosstick::window
