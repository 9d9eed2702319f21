// Films are named where they hang: real events in the real rail.
#include <QMenu>

#include "tests/window/the_window.h"
#include "ui/phases/film_tab.h"

namespace crosstick::window {
namespace {

constexpr Uuid kMove{{2}};
constexpr Uuid kLook{{3}};

class Naming : public TheWindow {
  protected:
    [[nodiscard]] phases::Rail& rail() { return *window->findChild<phases::Rail*>(); }
    [[nodiscard]] phases::NameField* field() { return rail().nameField(); }
    [[nodiscard]] phases::FilmTab* tabOf(const plan::FilmId& film) {
        for (phases::FilmTab* tab : rail().findChildren<phases::FilmTab*>()) {
            if (tab->film() == film && tab->isVisible()) {
                return tab;
            }
        }
        return nullptr;
    }
    [[nodiscard]] std::string nameOf(const plan::FilmId& film) { return plan().film(film)->name; }
    void beginNaming() {
        window->activateWindow();
        QTest::keyClick(&window->table(), Qt::Key_F2, Qt::ShiftModifier);
        ASSERT_NE(field(), nullptr);
        EXPECT_EQ(QApplication::focusWidget(), field());
        EXPECT_EQ(field()->selectedText(), field()->text()) << "typing replaces it";
    }
    void typeAndEnter(const char* words) {
        field()->selectAll();
        QTest::keyClick(field(), Qt::Key_Backspace);
        QTest::keyClicks(field(), QString::fromLatin1(words));
        QTest::keyClick(field(), Qt::Key_Return);
    }
};

TEST_F(Naming, ShiftF2TakesTheWorkingFilmsNameIntoAFieldWhereItsTabHung) {
    open();
    QTest::qWait(20);
    const QPoint hung = tabOf(kMove)->mapTo(window.get(), QPoint(0, 0));
    beginNaming();
    QTest::qWait(20);
    EXPECT_EQ(field()->text(), QStringLiteral("MOVE"));
    EXPECT_EQ(field()->mapTo(window.get(), QPoint(0, 0)), hung);
    EXPECT_EQ(tabOf(kMove), nullptr) << "the field hangs in its place";
    EXPECT_NE(tabOf(kLook), nullptr);
    EXPECT_FALSE(window->question().isVisible()) << "nothing is asked anywhere else";
}

TEST_F(Naming, EnterKeepsANameInOneStepThatUndoTakesBack) {
    open();
    beginNaming();
    typeAndEnter("HOLD");
    EXPECT_EQ(field(), nullptr);
    EXPECT_EQ(nameOf(kMove), "HOLD");
    EXPECT_EQ(QApplication::focusWidget(), &window->table());
    EXPECT_EQ(tabOf(kMove)->text(), QStringLiteral("HOLD"));
    EXPECT_EQ(window->work().undoCaption(), "rename a film");
    window->run("undo");
    EXPECT_EQ(nameOf(kMove), "MOVE");
    EXPECT_EQ(tabOf(kMove)->text(), QStringLiteral("MOVE"));
    EXPECT_EQ(window->work().undoCaption(), "") << "it was one step";
}

TEST_F(Naming, EscapeDropsWhatWasTyped) {
    open();
    const plan::Plan before = plan();
    beginNaming();
    QTest::keyClicks(field(), QStringLiteral("HOLD"));
    QTest::keyClick(field(), Qt::Key_Escape);
    EXPECT_EQ(field(), nullptr);
    EXPECT_TRUE(plan() == before);
    EXPECT_EQ(window->work().undoCaption(), "");
    EXPECT_EQ(QApplication::focusWidget(), &window->table());
}

TEST_F(Naming, EnterOnTheOldNameIsNoStep) {
    open();
    beginNaming();
    QTest::keyClick(field(), Qt::Key_Return);
    EXPECT_EQ(field(), nullptr);
    EXPECT_EQ(window->work().undoCaption(), "");
}

TEST_F(Naming, AnEmptyNameAndAnothersAreRefusedUnderTheFieldWithTheReason) {
    open();
    beginNaming();
    const auto refusal = [this]() -> QLabel* {
        for (QLabel* label : window->findChildren<QLabel*>()) {
            if (label->isVisible() && label->text() == field()->refusal()) {
                return label;
            }
        }
        return nullptr;
    };
    for (const auto& [typed, reason] : {std::pair("", "needs a name"), std::pair("LOOK", "Another film is named")}) {
        typeAndEnter(typed);
        ASSERT_NE(field(), nullptr) << typed;
        EXPECT_TRUE(field()->hasFocus());
        EXPECT_TRUE(field()->property("refused").toBool());
        EXPECT_TRUE(field()->refusal().contains(QLatin1String(reason))) << field()->refusal().toStdString();
        ASSERT_NE(refusal(), nullptr) << "it is to be read";
        const QRect said(refusal()->mapTo(window.get(), QPoint(0, 0)), refusal()->size());
        const QRect typedIn(field()->mapTo(window.get(), QPoint(0, 0)), field()->size());
        EXPECT_GT(said.top(), typedIn.bottom());
        EXPECT_LT(said.top(), typedIn.bottom() + 12) << "right under it";
        EXPECT_TRUE(window->rect().contains(said));
        EXPECT_EQ(nameOf(kMove), "MOVE") << "the old one stays in force";
    }
    QTest::keyClick(field(), Qt::Key_X);
    EXPECT_EQ(refusal(), nullptr) << "it goes when one types on";
    QTest::keyClick(field(), Qt::Key_Escape);
    EXPECT_EQ(window->work().undoCaption(), "");
}

TEST_F(Naming, ADoubleClickOnATabOpensItsField) {
    open();
    QTest::qWait(20);
    const QPoint middle = tabOf(kLook)->mapTo(window.get(), tabOf(kLook)->rect().center());
    QTest::mouseClick(window->windowHandle(), Qt::LeftButton, Qt::NoModifier, middle);
    QTest::qWait(1);  // the rail is made anew between the two clicks
    QTest::mouseDClick(window->windowHandle(), Qt::LeftButton, Qt::NoModifier, middle);
    ASSERT_NE(field(), nullptr);
    EXPECT_EQ(field()->text(), QStringLiteral("LOOK"));
    EXPECT_EQ(window->work().workingFilm(), kLook);
    typeAndEnter("WATCH");
    EXPECT_EQ(nameOf(kLook), "WATCH");
}

TEST_F(Naming, ATabThatHasTheKeyboardIsNamedByItsKeyAndHasItAgain) {
    open();
    window->activateWindow();
    tabOf(kLook)->setFocus(Qt::TabFocusReason);
    QTest::keyClick(tabOf(kLook), Qt::Key_F2, Qt::ShiftModifier);
    ASSERT_NE(field(), nullptr);
    EXPECT_EQ(field()->text(), QStringLiteral("LOOK")) << "not the working film";
    typeAndEnter("WATCH");
    ASSERT_NE(tabOf(kLook), nullptr);
    EXPECT_TRUE(tabOf(kLook)->hasFocus());
}

TEST_F(Naming, ANewFilmIsNamedWhereItHangs) {
    open();
    window->run("new-film");
    ASSERT_NE(field(), nullptr);
    EXPECT_EQ(QApplication::focusWidget(), field());
    typeAndEnter("HOLD");
    EXPECT_NE(plan().filmNamed("HOLD"), nullptr);
    EXPECT_EQ(QApplication::focusWidget(), &window->table());
}

TEST_F(Naming, GoingOnWithTheTableKeepsAGoodNameAndDropsABadOne) {
    open();
    beginNaming();
    QTest::keyClicks(field(), QStringLiteral("HOLD"));
    window->table().setFocus();
    EXPECT_EQ(field(), nullptr);
    EXPECT_EQ(nameOf(kMove), "HOLD");
    beginNaming();
    QTest::keyClicks(field(), QStringLiteral("LOOK"));
    window->table().setFocus();
    EXPECT_EQ(field(), nullptr);
    EXPECT_EQ(nameOf(kMove), "HOLD");
    EXPECT_TRUE(window->table().hasFocus());
}

TEST_F(Naming, AFilmThatGoesTakesItsFieldAlong) {
    open();
    window->run("new-film");
    ASSERT_NE(field(), nullptr);
    window->work().undo();
    EXPECT_EQ(field(), nullptr);
    EXPECT_EQ(plan().films().size(), 2U);
}

TEST_F(Naming, TheCopiesFollowANameThatIsTypedWhileTheyAreLookedAt) {
    open();
    drawRoute();
    window->run("copies");
    ASSERT_TRUE(QTest::qWaitFor([this] { return window->copies().isReady(); }, 20000));
    rail().askForName(kMove);
    typeAndEnter("HOLD");
    ASSERT_TRUE(QTest::qWaitFor([this] { return window->copies().isReady(); }, 20000));
    bool shown = false;
    for (const QComboBox* box : window->copies().findChildren<QComboBox*>()) {
        shown = shown || box->findText(QStringLiteral("Film HOLD")) >= 0;
    }
    EXPECT_TRUE(shown);
    rest();
}

}  // namespace
}  // namespace crosstick::window
