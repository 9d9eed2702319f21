// Night: one hue and no white, in every part of the window, from the first frame on.
#include <QComboBox>
#include <QFileDialog>
#include <QMenu>
#include <QScreen>
#include <QTimer>
#include <QToolTip>

#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

/// The brightest colour that night has: ours, #FF5A4A (the look, palette of night).
constexpr QRgb kBrightest = 0xffff5a4a;

/// The brightest value of each channel anywhere in a picture.
QColor brightestOf(const QImage& shot) {
    int red = 0;
    int green = 0;
    int blue = 0;
    const QImage plain = shot.convertToFormat(QImage::Format_RGB32);
    for (int y = 0; y < plain.height(); ++y) {
        const auto* line = reinterpret_cast<const QRgb*>(plain.constScanLine(y));
        for (int x = 0; x < plain.width(); ++x) {
            red = std::max(red, qRed(line[x]));
            green = std::max(green, qGreen(line[x]));
            blue = std::max(blue, qBlue(line[x]));
        }
    }
    return {red, green, blue};
}

void expectNight(const QImage& shot, const std::string& what) {
    ASSERT_FALSE(shot.isNull()) << what;
    const QColor brightest = brightestOf(shot);
    EXPECT_LE(brightest.green(), qGreen(kBrightest)) << what;
    EXPECT_LE(brightest.blue(), qBlue(kBrightest)) << what;
    EXPECT_GT(brightest.red(), 60) << what << " is to be read";
}

class Night : public TheWindow {
  protected:
    void SetUp() override { window->setLight(look::Light::Night); }
    void walk();
    void look(const std::string& what) {
        settle();
        expectNight(window->grab().toImage(), what);
    }
    /// A window of its own (menu, list, tool tip), as it is shown.
    static void lookAt(QWidget& part, const std::string& what) {
        QTest::qWait(20);
        expectNight(part.grab().toImage(), what);
    }
};

void Night::walk() {
    QTest::qWait(50);
    expectNight(window->grab().toImage(), "empty window");
    open();
    look("table");
    drawRoute();
    look("card of a route");
    window->run("details");
    look("ledger");
    window->run("draw-unit");
    click(at(500, 600));
    look("card of a unit");
    card().labelField()->setFocus();
    card().labelField()->setText(QStringLiteral("1"));
    look("a field with the caret");
    window->say(QStringLiteral("Saved: plan.gpkg"));
    window->run("new-phase");
    look("notice and question");
    window->question().field()->setText(QString());
    QTest::keyClick(window->question().field(), Qt::Key_Escape);
    for (const char* page : {"march", "elements", "tasks", "events", "matrix", "march-table", "profile", "light"}) {
        window->run(page);
        look(page);
    }
    window->run("brief");
    QTest::keyClick(&window->briefView(), Qt::Key_Space);
    QTest::keyClick(&window->briefView(), Qt::Key_W);
    look("brief");
    QTest::keyClick(&window->briefView(), Qt::Key_Escape);
    window->run("copies");
    EXPECT_TRUE(QTest::qWaitFor([this] { return window->copies().isReady(); }, 20000));
    look("copies");
    QTest::keyClick(&window->copies(), Qt::Key_D);
    look("copies under red light");
}

TEST_F(Night, EveryPageAndCardIsRed) {
    walk();
}

// Parts that were never shown by day are dressed in another order.
TEST_F(Night, EveryPageAndCardIsRedWhereTheWindowOpensByNight) {
    window.reset();
    window = fresh();
    walk();
}

TEST_F(Night, EveryMenuIsRed) {
    open();
    drawRoute();
    std::size_t menus = 0;
    for (QMenu* menu : window->findChildren<QMenu*>()) {
        menu->popup(QPoint(0, 0));
        if (!menu->actions().isEmpty()) {
            lookAt(*menu, menu->title().toStdString());
            ++menus;
        }
        menu->hide();
    }
    EXPECT_GT(menus, 12U);
}

TEST_F(Night, ListsThatPopUpAndToolTipsAreRed) {
    open();
    window->run("draw-unit");
    click(at(0, 0));
    settle();
    auto boxes = card().findChildren<QComboBox*>();
    ASSERT_FALSE(boxes.isEmpty());
    boxes.front()->showPopup();
    lookAt(*boxes.front()->view()->window(), "list of a box");
    boxes.front()->hidePopup();
    QToolTip::showText(QPoint(10, 10), QStringLiteral("Draws a route"), window.get());
    const auto tip = []() -> QWidget* {
        for (QWidget* part : QApplication::topLevelWidgets()) {
            if (part->inherits("QTipLabel") && part->isVisible()) {
                return part;
            }
        }
        return nullptr;
    };
    QImage shot;  // at once: a tip goes when it likes
    ASSERT_TRUE(QTest::qWaitFor(
        [&] {
            shot = tip() != nullptr ? tip()->grab().toImage() : QImage();
            return !shot.isNull();
        },
        3000));
    expectNight(shot, "tool tip");
    QToolTip::hideText();
}

TEST_F(Night, TheFileDialogIsOursAndRed) {
    QImage shot;
    QTimer::singleShot(400, [&shot] {
        auto* dialog = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(dialog, nullptr);
        EXPECT_TRUE(QCoreApplication::testAttribute(Qt::AA_DontUseNativeDialogs));
        shot = dialog->grab().toImage();
        dialog->reject();
    });
    window->run("open");
    expectNight(shot, "file dialog");
    window->setLight(look::Light::Day);
    EXPECT_FALSE(QCoreApplication::testAttribute(Qt::AA_DontUseNativeDialogs)) << "by day it is the desktop's";
}

TEST_F(Night, NoFrameFromTheFirstOnIsWhite) {
    window.reset();  // the light is kept for the next start
    int frames = 0;
    window = fresh();
    for (int n = 0; n < 40; ++n) {
        QCoreApplication::processEvents(QEventLoop::AllEvents, 2);
        const QImage screen = QGuiApplication::primaryScreen()->grabWindow(0).toImage();
        const QRect part = window->geometry() & QRect(QPoint(0, 0), screen.size());
        const QColor brightest = brightestOf(screen.copy(part));
        EXPECT_LE(brightest.green(), qGreen(kBrightest)) << "frame " << n;
        EXPECT_LE(brightest.blue(), qBlue(kBrightest)) << "frame " << n;
        frames += brightest.red() > 60 ? 1 : 0;
    }
    EXPECT_GT(frames, 20) << "something was to be seen";
}

TEST_F(Night, TheDimmerTakesTheSameShareFromEveryWindow) {
    open();
    drawRoute();
    settle();
    const int full = brightestOf(window->grab().toImage()).red();
    for (int level = look::Dimmer::kLevels - 1; level >= 1; --level) {
        window->run("dimmer");
        window->say({});
        settle();
        const double most = full * look::Dimmer::shareOf(level);
        EXPECT_NEAR(brightestOf(window->grab().toImage()).red(), most, 3) << "level " << level;
        QMenu menu;
        menu.addAction(QStringLiteral("Name"));
        menu.popup(QPoint(0, 0));
        QTest::qWait(20);
        EXPECT_LE(brightestOf(menu.grab().toImage()).red(), most + 3) << "a menu at level " << level;
    }
    window->run("dimmer");
    window->say({});
    settle();
    EXPECT_EQ(brightestOf(window->grab().toImage()).red(), full) << "round again";
}

TEST_F(Night, LettersAreBoldWhereThePictureIsDimmedFar) {
    open();
    const auto isBold = [] { return look::face(12).family().endsWith(QStringLiteral("Bold")); };
    for (int level = look::Dimmer::kLevels; level >= 1; --level) {
        window->setDimming(level);
        EXPECT_EQ(isBold(), level <= 3) << "level " << level;
    }
    window->setLight(look::Light::Day);
    EXPECT_FALSE(isBold());
    const QImage shot = window->grab().toImage();
    EXPECT_GT(brightestOf(shot).green(), 240) << "by day nothing is dimmed";
}

TEST_F(Night, TheDimmerIsRefusedByDayInWords) {
    window->setLight(look::Light::Day);
    window->run("dimmer");
    EXPECT_TRUE(window->notices().said().contains(QStringLiteral("Ctrl+L")));
}

}  // namespace
}  // namespace crosstick::window
