// A laptop of 1366 by 768, and the same at 200 %, where 683 by 384 are left: nothing is cut, everything is reached.
#include <QLayout>
#include <QMenuBar>
#include <QPushButton>
#include <QScreen>
#include <QScrollBar>

#include "tests/window/the_window.h"
#include "ui/phases/film_tab.h"

namespace crosstick::window {
namespace {

constexpr QSize kLaptop{1366, 768};
constexpr QSize kAt200Percent{683, 384};

class SmallScreen : public TheWindow, public ::testing::WithParamInterface<QSize> {
  protected:
    void SetUp() override {
        window->resize(GetParam());
        QTest::qWait(20);
    }
    [[nodiscard]] Notices& strip() { return *window->findChild<Notices*>(); }
    /// Words of a label or a button have room, and lie in the window or can be rolled into it.
    void expectWhole(QWidget& part, QWidget& within) {
        const QRect lies(part.mapTo(&within, QPoint(0, 0)), part.size());
        if (auto* label = qobject_cast<QLabel*>(&part)) {
            EXPECT_GE(label->height(), label->heightForWidth(label->width())) << label->text().toStdString();
            const QRect needs =
                label->fontMetrics().boundingRect(QRect(0, 0, label->width(), 10000), Qt::TextWordWrap, label->text());
            EXPECT_LE(needs.width(), label->width()) << label->text().toStdString();
        } else if (auto* button = qobject_cast<QPushButton*>(&part)) {
            EXPECT_GE(button->width(), button->fontMetrics().horizontalAdvance(button->text()) + 4)
                << button->text().toStdString();
            EXPECT_GE(button->height(), 24) << button->text().toStdString();
        }
        EXPECT_GE(lies.left(), 0);
        EXPECT_LE(lies.right(), within.width());
    }
    [[nodiscard]] plan::Plan withPhases(int count) {
        plan::PlanBuilder builder(plan());
        std::vector<plan::Phase> phases;
        for (int n = 1; n <= count; ++n) {
            phases.push_back({n, "Phase of a long name " + std::to_string(n), {}, {}, {}});
        }
        builder.phases(std::move(phases));
        plan::Plan next = std::move(builder).build();
        for (int n = 0; n < 4; ++n) {
            const Uuid id{{static_cast<std::uint8_t>(20 + n)}};
            next = plan::withFilm(next, id, "FILM OF A LONG NAME " + std::to_string(n), {1});
        }
        return next;
    }
    [[nodiscard]] phases::Rail& rail() { return *window->findChild<phases::Rail*>(); }
    [[nodiscard]] phases::FilmTab* tabOf(const plan::FilmId& film) {
        for (phases::FilmTab* tab : rail().findChildren<phases::FilmTab*>()) {
            if (tab->film() == film && tab->isVisible()) {
                return tab;
            }
        }
        return nullptr;
    }
};

TEST_P(SmallScreen, NoticesStandInOneGridAndNothingOfThemIsCut) {
    open();
    strip().keep("datum",
                 QStringLiteral("NAD27 to WGS 84 goes by \"NAD27 to WGS 84 (7)\", good to 12 m; 0.5 m would be "
                                "had with the grid file us_noaa_alaska.tif, which is not installed."),
                 {});
    strip().keep("heights",
                 QStringLiteral("The height model does not say in what it counts. What does the sheet print?"),
                 {{QStringLiteral("Metres"), [] {}}, {QStringLiteral("Feet"), [] {}}});
    strip().keep(
        "sheet",
        QStringLiteral("The map sheet is not shown: /media/leader/STICK_OF_THE_COMPANY/a_folder_with_a_very_long_"
                       "name_without_any_blank/another_one_of_that_kind/sheet-2-ulmeray-south.tif is missing."),
        {{QStringLiteral("Look again"), [] {}}, {QStringLiteral("Say where it is..."), [] {}}});
    window->say(QStringLiteral("3 steps taken up. Save keeps them."));
    QTest::qWait(20);
    std::map<int, int> rightEdges;
    int buttons = 0;
    QWidget* grid = strip().widget();
    for (QPushButton* button : grid->findChildren<QPushButton*>()) {
        if (button->isVisible()) {
            expectWhole(*button, *grid);
            ++rightEdges[button->geometry().left()];
            ++buttons;
        }
    }
    EXPECT_EQ(buttons, 8);
    EXPECT_EQ(rightEdges.size(), 3U) << "three columns of buttons, each under the other";
    for (QLabel* label : grid->findChildren<QLabel*>()) {
        if (!label->isVisible()) {
            continue;
        }
        expectWhole(*label, *grid);
        EXPECT_EQ(label->geometry().left(), 12) << "words at the left";
        for (QPushButton* button : grid->findChildren<QPushButton*>()) {
            EXPECT_FALSE(button->isVisible() && button->geometry().intersects(label->geometry()));
        }
    }
    EXPECT_EQ(window->size(), GetParam()) << "notices do not push the window wider or higher";
    EXPECT_GE(window->table().height(), window->height() / 3) << "and leave a table to work on";
    EXPECT_GE(grid->height(), grid->layout()->totalHeightForWidth(grid->width())) << "what does not fit is rolled";
    EXPECT_TRUE(strip().height() >= grid->height() || strip().verticalScrollBar()->isVisible());
}

TEST_P(SmallScreen, ANoticeIsPutAwayAndTheRoomComesBack) {
    open();
    const int before = window->table().height();
    window->say(QStringLiteral("Saved: plan.gpkg"));
    QTest::qWait(20);
    EXPECT_LT(window->table().height(), before);
    for (QPushButton* button : strip().findChildren<QPushButton*>()) {
        if (button->isVisible() && button->text() == QStringLiteral("Put away")) {
            QTest::mouseClick(button, Qt::LeftButton);
        }
    }
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->table().height() == before; }));
    EXPECT_EQ(window->notices().said(), QString());
}

TEST_P(SmallScreen, WhatACrashLeftIsOfferedWhole) {
    open();
    drawRoute();
    window.reset();  // without a save
    window = fresh();
    window->resize(GetParam());
    rest();
    QTest::qWait(50);
    auto* page = window->findChild<start::StartPage*>();
    bool isOffered = false;
    for (QWidget* part : page->widget()->findChildren<QWidget*>()) {
        if (part->isVisible()) {
            expectWhole(*part, *page->widget());
        }
        if (auto* button = qobject_cast<QPushButton*>(part); button && button->text().startsWith("Take up the")) {
            const QRect lies(button->mapTo(page->viewport(), QPoint(0, 0)), button->size());
            isOffered = page->viewport()->rect().contains(lies);
        }
    }
    EXPECT_TRUE(isOffered) << "seen without rolling";
    const auto parts = page->widget()->findChildren<QPushButton*>();
    for (const QPushButton* a : parts) {
        for (const QPushButton* b : parts) {
            const QRect one(a->mapTo(page, QPoint(0, 0)), a->size());
            const QRect other(b->mapTo(page, QPoint(0, 0)), b->size());
            EXPECT_FALSE(a != b && a->isVisible() && b->isVisible() && one.intersects(other));
        }
    }
}

TEST_P(SmallScreen, TheRailCutsNothingAndReachesEverything) {
    open();
    window->work().commit(withPhases(6), "phases");
    window->work().setPhase(1);
    QTest::qWait(20);
    int shown = 0;
    for (QAbstractButton* part : rail().findChildren<QAbstractButton*>()) {
        if (part->isVisible()) {
            EXPECT_GE(part->width(), part->sizeHint().width()) << part->accessibleName().toStdString();
            EXPECT_TRUE(rail().rect().contains(part->geometry())) << part->accessibleName().toStdString();
            shown += part == rail().more() ? 0 : 1;
        }
    }
    ASSERT_TRUE(window->work().workingFilm());
    EXPECT_NE(tabOf(*window->work().workingFilm()), nullptr) << "the working film always hangs";
    if (rail().more()->isVisible()) {
        rail().more()->menu()->popup(QPoint(0, 0));
        EXPECT_EQ(static_cast<std::size_t>(shown + rail().more()->menu()->actions().size()),
                  6 + window->work().filmsOnTable().size());
        rail().more()->menu()->actions().last()->trigger();
        rail().more()->menu()->hide();
        QTest::qWait(20);
        EXPECT_NE(tabOf(*window->work().workingFilm()), nullptr);
    }
}

TEST_P(SmallScreen, TheKeyboardStaysInTheRailWhateverHangsThere) {
    open();
    window->work().commit(withPhases(3), "phases");
    window->work().setPhase(1);
    window->work().setWorkingFilm(Uuid{{21}});
    QTest::qWait(20);
    window->activateWindow();
    tabOf(*window->work().workingFilm())->setFocus(Qt::TabFocusReason);
    const auto isHere = [this] {
        QWidget* focus = QApplication::focusWidget();
        return focus != nullptr && rail().isAncestorOf(focus) && focus->isVisible();
    };
    ASSERT_TRUE(isHere());
    const plan::FilmId upper = *window->work().workingFilm();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down);
    EXPECT_FALSE(window->work().workingFilm() == upper) << "the film below";
    EXPECT_EQ(QApplication::focusWidget(), tabOf(*window->work().workingFilm()));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Up);
    EXPECT_EQ(window->work().workingFilm(), upper);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Right);
    EXPECT_EQ(window->work().phase(), 2);
    EXPECT_TRUE(isHere()) << "its film hangs in the first phase alone";
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Left);
    EXPECT_EQ(window->work().phase(), 1);
    for (const QSize size : {QSize(700, 400), QSize(1900, 900), GetParam()}) {
        window->resize(size);
        QTest::qWait(20);
        EXPECT_TRUE(isHere()) << size.width();
    }
    window->work().undo();  // the phases go, and most films
    EXPECT_TRUE(isHere());
}

TEST_P(SmallScreen, TheMenusAreAllThere) {
    std::set<QString> titles;
    for (const QMenu* menu : window->findChildren<QMenu*>()) {
        titles.insert(menu->title());
    }
    for (const char* title : {"&Plan", "&Edit", "&View", "&Draw", "&Make", "&Help"}) {
        EXPECT_TRUE(titles.contains(QString::fromLatin1(title)));
    }
    auto* bar = window->findChild<QMenuBar*>();
    EXPECT_GE(bar->width(), bar->sizeHint().width()) << "none behind an arrow";
    EXPECT_EQ(bar->actions().size(), GetParam() == kLaptop ? 6 : 1);
    window->resize(kAt200Percent);
    window->resize(kLaptop);
    EXPECT_EQ(bar->actions().size(), 6) << "they come back as they were";
    EXPECT_EQ(bar->actions().front()->text(), QStringLiteral("&Plan"));
}

TEST_P(SmallScreen, TheCardLeavesTheTableAsItIsOnASmallScreen) {
    open();
    QTest::qWait(20);
    const QSize before = window->table().size();
    drawRoute();
    QTest::qWait(20);
    EXPECT_TRUE(card().isVisible());
    if (GetParam() == kAt200Percent) {
        EXPECT_EQ(window->table().width(), before.width()) << "the card lies over it";
        EXPECT_EQ(ledger().height(), ledger::Ledger::kFolded);
    } else {
        EXPECT_EQ(window->table().width(), before.width() - details::Details::kWidth);
    }
    const QRect lies(card().mapTo(window.get(), QPoint(0, 0)), card().size());
    EXPECT_TRUE(window->rect().contains(lies));
}

INSTANTIATE_TEST_SUITE_P(Sizes, SmallScreen, ::testing::Values(kLaptop, kAt200Percent),
                         [](const auto& size) { return size.param == kLaptop ? "Laptop" : "At200Percent"; });

TEST_P(SmallScreen, TheRaisedTrayLiesInTheWindowAsAWhole) {
    open();
    window->run("tray");
    settle();
    tray::Tray& tray = window->tray();
    EXPECT_LE(tray.mapTo(window.get(), QPoint(0, tray.height())).y(), window->height());
    EXPECT_LE(window->height(), GetParam().height());
}

TEST_F(TheWindow, OpensNoLargerThanItsScreen) {
    window.reset();
    const Window other(outside());
    const QSize room = other.screen()->availableSize();
    EXPECT_EQ(other.size(), QSize(1366, 768).boundedTo(room)) << room.width() << " x " << room.height();
}

}  // namespace
}  // namespace crosstick::window
