// What a card says of where a thing lies, the pictures that measures are chosen by, and the pen that is told of.
#include <QMenu>

#include "core/measures/catalogue.h"
#include "core/plan/edits.h"
#include "tests/window/the_window.h"
#include "ui/details/token_menu.h"
#include "ui/table/corner_block.h"

namespace crosstick::window {
namespace {

class Card : public TheWindow {
  protected:
    /// A window of 4 by 2 km round the middle on a sheet of 10 by 10 km.
    void openWithWindow() {
        open();
        plan::Sheet sheet;
        sheet.id = Uuid{{9}};
        sheet.path = "sheet.tif";
        sheet.crs = "EPSG:32625";
        sheet.columns = sheet.rows = 1000;
        sheet.placement = {at(-5000, 5000), 10, 0, 0, -10};
        plan::PlanBuilder builder(plan());
        builder.put(sheet);
        builder.registration(plan::Registration{
            at(-2000, -1000), at(2000, 1000), {at(-1000, -500), at(1000, -500), at(-1000, 500)}, {}});
        window->work().commit(std::move(builder).build(), "begin");
        settle();
    }
    std::string beyondOf(const char* kind, plan::Points points) {
        plan::Measure measure;
        measure.id = window->work().newId();
        measure.kind = kind;
        measure.points = std::move(points);
        window->work().commit(plan::withMeasure(plan(), measure, Uuid{{2}}), "draw");
        window->work().select(measure.id);
        window->run("details");
        window->run("details");
        return card().beyond().toStdString();
    }
};

TEST_F(Card, SaysHowFarAThingLiesOutsideTheWindowAndWhere) {
    openWithWindow();
    EXPECT_EQ(beyondOf("checkpoint", {at(1990, 990)}), "");
    EXPECT_EQ(beyondOf("checkpoint", {at(2420, 0)}),
              "\u25b3 Outside the window of the films, 420 m beyond its east edge: no film shows it.");
    EXPECT_EQ(beyondOf("checkpoint", {at(0, -2200)}),
              "\u25b3 Outside the window of the films, 1.2 km beyond its south edge: no film shows it.");
    EXPECT_EQ(beyondOf("checkpoint", {at(-2300, 1400)}),
              "\u25b3 Outside the window of the films, 500 m beyond its north and west edge: no film shows it.");
    EXPECT_EQ(beyondOf("checkpoint", {at(2004, 0)}),
              "\u25b3 Outside the window of the films, less than 10 m beyond its east edge: no film shows it.");
    EXPECT_EQ(beyondOf("phase-line", {at(-1000, 0), at(1000, 0), at(2600, 0)}),
              "\u25b3 Outside the window of the films: 1 of 3 points, the farthest 600 m beyond its east edge.");
}

TEST_F(Card, SaysHowFarAThingLiesOffTheSheet) {
    openWithWindow();
    EXPECT_EQ(beyondOf("checkpoint", {at(5800, 0)}),
              "\u25b3 Off the sheet, 800 m beyond its right edge: no film shows it.");
    EXPECT_EQ(beyondOf("phase-line", {at(0, 0), at(0, 9000), at(0, 6000)}),
              "\u25b3 Off the sheet: 2 of 3 points, the farthest 4.0 km beyond its upper edge.");
}

TEST_F(Card, SaysItWhileTheThingIsDraggedAndUnsaysIt) {
    openWithWindow();
    EXPECT_NE(beyondOf("checkpoint", {at(2420, 0)}), "");
    const plan::ItemId item = *window->work().selected();
    window->work().setDraft(plan::withPoint(plan(), item, 0, at(1500, 0)));
    EXPECT_EQ(card().beyond(), QString());
    window->work().setDraft(std::nullopt);
    EXPECT_NE(card().beyond(), QString());
    for (const QLabel* label : card().findChildren<QLabel*>()) {
        if (label->text() == card().beyond()) {
            QTest::qWait(20);
            EXPECT_TRUE(label->isVisible());
            EXPECT_GE(label->height(), label->heightForWidth(label->width())) << "all of it is read";
        }
    }
}

TEST_F(Card, ARouteThatLeavesTheWindowSaysSo) {
    openWithWindow();
    plan::Route route;
    route.id = window->work().newId();
    route.name = "FERN";
    route.vertices = {at(-1500, 0), at(0, 0), at(0, 1300)};
    window->work().commit(plan::withRoute(plan(), route, {}, Uuid{{2}}), "draw");
    window->work().select(route.id);
    EXPECT_EQ(card().beyond().toStdString(),
              "\u25b3 Outside the window of the films: 1 of 3 points, the farthest 300 m beyond its north edge.");
}

TEST_F(Card, EveryMeasureIsChosenByItsPicture) {
    std::size_t pictures = 0;
    for (auto* menu : window->findChildren<details::TokenMenu*>()) {
        for (QAction* action : menu->actions()) {
            const drawing::Drawing* token = menu->token(action);
            ASSERT_NE(token, nullptr) << action->text().toStdString();
            EXPECT_FALSE(token->marks.empty()) << action->text().toStdString();
            ++pictures;
        }
        menu->popup(QPoint(0, 0));
        const QImage shown = menu->grab().toImage();
        QAction* first = menu->actions().front();
        const QRect row = menu->actionGeometry(first);
        int ink = 0;
        for (int y = row.top() + 1; y < row.bottom(); ++y) {
            for (int x = row.left() + 10; x < row.left() + 62; ++x) {
                ink += shown.pixelColor(x, y).lightness() < 100 ? 1 : 0;
            }
        }
        EXPECT_GT(ink, 0) << menu->title().toStdString() << ": the first row has no picture";
        menu->hide();
    }
    EXPECT_EQ(pictures, measures::catalogue().size());
}

TEST_F(Card, OnePenIsToldOnTheTableAndSeenThere) {
    openWithWindow();
    plan::Measure enemy;
    enemy.id = Uuid{{7}};
    enemy.kind = "phase-line";
    enemy.name = "WASP";
    enemy.whose = plan::Whose::Enemy;
    enemy.points = {at(-1500, 0), at(1500, 0)};
    window->work().commit(plan::withMeasure(plan(), enemy, Uuid{{2}}), "draw");
    const auto reds = [this] {
        settle();
        const QImage shot = window->table().grab().toImage();
        int red = 0;
        for (int y = 30; y < shot.height(); ++y) {
            for (int x = 30; x < shot.width(); ++x) {
                const QColor c = shot.pixelColor(x, y);
                red += c.red() > 150 && c.green() < 60 && c.blue() < 70 ? 1 : 0;
            }
        }
        return red;
    };
    const auto corner = [this] {
        const QSize size = window->table().size();
        return window->table().grab(QRect(size.width() - 330, size.height() - 50, 330, 50)).toImage();
    };
    EXPECT_GT(reds(), 50);
    const QImage plain = corner();
    window->run("one-pen");
    EXPECT_EQ(reds(), 0) << "as it will print";
    EXPECT_NE(corner(), plain) << "the corner block says so";
    EXPECT_EQ(table::cornerRows(plan(), window->table().view(), symbols::PenMode::OnePen).ours, "one pen");
    window->run("copies");
    ASSERT_TRUE(QTest::qWaitFor([this] { return window->copies().isReady(); }, 20000));
    QTest::keyClick(&window->copies(), Qt::Key_M);
    EXPECT_EQ(window->work().pens(), work::Pens::InColour) << "it is one choice, wherever it is made";
    rest();
    QTest::keyClick(&window->copies(), Qt::Key_Escape);
    EXPECT_GT(reds(), 50);
}

TEST_F(Card, AStrokeThatIsNamedHasTheCardOfWhatItBecame) {
    open();
    window->run("freehand");
    click(at(-800, 0));
    click(at(800, 0));
    settle();
    const auto says = [this](const char* words) {
        const auto labels = card().findChildren<QLabel*>();
        return std::any_of(labels.begin(), labels.end(), [&](const QLabel* label) {
            return label->isVisible() && label->text() == QString::fromUtf8(words);
        });
    };
    EXPECT_TRUE(says("Line"));
    card().labelField()->setFocus();
    card().labelField()->setText(QStringLiteral("pl amber"));
    QTest::keyClick(card().labelField(), Qt::Key_Return);
    settle();
    EXPECT_EQ(plan().measure(*window->work().selected())->kind, "phase-line");
    EXPECT_TRUE(says("Phase line"));
    EXPECT_FALSE(says("Line"));
    EXPECT_EQ(QApplication::focusWidget(), &window->table());
}

}  // namespace
}  // namespace crosstick::window
