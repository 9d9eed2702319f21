// Files dropped on the window, fingers and pen on the table.
#include <fstream>

#include <QMenu>
#include <QMimeData>
#include <QPointingDevice>
#include <QTimer>
#include <QUrl>

#include "core/files/exchange.h"
#include "tests/sheets/made_sheets.h"
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

class Dropped : public TheWindow {
  protected:
    /// As the desktop lets files fall on the window.
    void drop(const std::vector<std::filesystem::path>& files) {
        QMimeData data;
        QList<QUrl> urls;
        for (const auto& file : files) {
            urls << QUrl::fromLocalFile(QString::fromStdString(file.string()));
        }
        data.setUrls(urls);
        const QPoint at(600, 400);
        QDragEnterEvent enter(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(window.get(), &enter);
        EXPECT_TRUE(enter.isAccepted());
        QDropEvent fall(at, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QApplication::sendEvent(window.get(), &fall);
        rest();
    }
    std::filesystem::path written(const char* name, const std::string& text) {
        std::ofstream(folder / name) << text;
        return folder / name;
    }
    [[nodiscard]] bool said(const char* words) { return window->notices().said().contains(QString::fromUtf8(words)); }
};

TEST_F(Dropped, APlanIsTakenUp) {
    open();
    drawRoute();
    save("plan.gpkg");
    const plan::Plan saved = plan();
    window = fresh();
    drop({folder / "plan.gpkg"});
    EXPECT_TRUE(plan() == saved);
}

TEST_F(Dropped, GeoJsonIsDrawnOnTheWorkingFilmInOneStep) {
    open();
    plan::Measure point;
    point.id = Uuid{{9}};
    point.kind = "checkpoint";
    point.number = "4";
    point.points = {at(300, 200)};
    const auto file = written("points.geojson", files::writeGeoJson(plan::withMeasure(plan(), point, Uuid{{2}})));
    drop({file});
    ASSERT_EQ(plan().measures().size(), 1U) << window->notices().said().toStdString();
    EXPECT_TRUE(said("1 measures"));
    window->run("undo");
    EXPECT_EQ(plan().measures().size(), 0U);
}

TEST_F(Dropped, GeoJsonWithoutAFilmIsAnsweredInWords) {
    drop({written("points.geojson", "{}")});
    EXPECT_TRUE(said("needs a film"));
}

TEST_F(Dropped, WhatIsNoDrawingChangesNothing) {
    open();
    const plan::Plan before = plan();
    drop({written("points.geojson", "{\"type\": ")});
    EXPECT_FALSE(window->notices().said().isEmpty());
    EXPECT_TRUE(plan() == before);
    drop({folder / "gone.geojson"});
    EXPECT_TRUE(said("cannot be read"));
}

TEST_F(Dropped, AnythingElseIsAnsweredInWords) {
    drop({written("notes.odt", "x")});
    EXPECT_TRUE(said("neither plan nor sheet"));
    drop({folder / ""});
    EXPECT_TRUE(said("is a folder"));
    drop({written("a.tif", ""), written("b.tif", "")});
    EXPECT_TRUE(said("2 files at once"));
    EXPECT_FALSE(window->work().isOpen());
}

class Touched : public TheWindow {
  protected:
    QPointingDevice* glass = QTest::createTouchDevice();
    void tap(geodesy::PlanePoint place) {
        QTest::touchEvent(&window->table(), glass).press(0, spot(place));
        QTest::touchEvent(&window->table(), glass).release(0, spot(place));
    }
};

TEST_F(Touched, TapsDrawARoute) {
    open();
    window->run("route");
    tap(at(-1000, -500));
    tap(at(-500, 0));
    tap(at(0, 200));
    QTest::keyClick(&window->table(), Qt::Key_Return);
    ASSERT_EQ(plan().routes().size(), 1U);
    EXPECT_EQ(plan().routes().front()->vertices.size(), 3U);
}

TEST_F(Touched, TwoFingersInTheMiddleOfALineZoomAndDrawNothing) {
    open();
    window->run("route");
    tap(at(-1000, -500));
    const table::Zoom before = window->table().view().zoom();
    QWidget* table = &window->table();
    QTest::touchEvent(table, glass).press(0, QPoint(400, 300));
    QTest::touchEvent(table, glass).move(0, QPoint(400, 300)).press(1, QPoint(500, 300));
    QTest::touchEvent(table, glass).move(0, QPoint(350, 300)).move(1, QPoint(550, 300));
    QTest::touchEvent(table, glass).release(0, QPoint(350, 300)).release(1, QPoint(550, 300));
    EXPECT_NEAR(window->table().view().zoom().value(), 2 * before.value(), 1e-9);
    tap(window->table().view().place({300, 420}));  // where this platform has a screen
    QTest::keyClick(&window->table(), Qt::Key_Return);
    ASSERT_EQ(plan().routes().size(), 1U);
    EXPECT_EQ(plan().routes().front()->vertices.size(), 2U);
}

TEST_F(Touched, AFingerThatRestsOpensTheMenuOfWhatLiesThere) {
    open();
    window->run("draw-checkpoint");
    click(at(0, 0));
    QTest::keyClick(&window->table(), Qt::Key_Escape);
    window->work().select(std::nullopt);
    settle();
    QStringList words;
    QTimer::singleShot(table::Fingers::kHoldMs + 300, [&words] {
        if (auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget())) {
            for (const QAction* action : menu->actions()) {
                words << action->text();
            }
            menu->close();
        }
    });
    QTest::touchEvent(&window->table(), glass).press(0, spot(at(0, 0)));
    QTest::qWait(table::Fingers::kHoldMs + 500);
    QTest::touchEvent(&window->table(), glass).release(0, spot(at(0, 0)));
    EXPECT_TRUE(words.contains(QStringLiteral("Wipe off"))) << words.join(QLatin1Char('|')).toStdString();
    EXPECT_TRUE(window->work().selected().has_value());
}

}  // namespace
}  // namespace crosstick::window
