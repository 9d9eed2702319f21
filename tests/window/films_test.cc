// Films pinned, faded, tinted, alone and lifted: real keys in the real window.
#include "core/plan/pinning.h"
#include "tests/window/the_window.h"
#include "ui/phases/film_tab.h"

namespace crosstick::window {
namespace {

constexpr Uuid kMove{{2}};
constexpr Uuid kLook{{3}};
constexpr Uuid kLine{{9}};

class Films : public TheWindow {
  protected:
    void SetUp() override {
        open();
        plan::Measure line;
        line.id = kLine;
        line.kind = "phase-line";
        line.name = "CHALK";
        line.points = {at(-600, 0), at(600, 50)};
        window->work().commit(plan::withMeasure(plan(), line, kMove), "draw");
        settle();
        window->activateWindow();
        window->table().setFocus();
    }
    [[nodiscard]] work::Work& work() { return window->work(); }
    [[nodiscard]] std::string said() { return window->notices().said().toStdString(); }
    [[nodiscard]] std::vector<std::string> seen() {
        std::vector<std::string> names;
        for (const plan::FilmPtr& film : work().filmsSeen()) {
            names.push_back(film->name);
        }
        return names;
    }
    [[nodiscard]] QString toldOf(const plan::FilmId& film) {
        for (const phases::FilmTab* tab : window->findChildren<phases::FilmTab*>()) {
            if (tab->film() == film && tab->isVisible()) {
                return tab->accessibleName();
            }
        }
        return {};
    }
    void key(int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(&window->table(), static_cast<Qt::Key>(key), modifiers);
    }
    [[nodiscard]] std::size_t inkOnTable() {
        settle();
        const QImage shot = window->table().grab().toImage();
        std::size_t dark = 0;
        for (int y = 0; y < shot.height(); ++y) {
            for (int x = 0; x < shot.width(); ++x) {
                dark += qGray(shot.pixel(x, y)) < 60 ? 1U : 0U;
            }
        }
        return dark;
    }
};

TEST_F(Films, APinIsPutInAndTakenOutInOneStepEach) {
    key(Qt::Key_B, Qt::ControlModifier);
    EXPECT_TRUE(plan().film(kMove)->pinned);
    EXPECT_EQ(work().undoCaption(), "pin a film");
    EXPECT_NE(toldOf(kMove).indexOf(QStringLiteral("pinned")), -1) << toldOf(kMove).toStdString();
    key(Qt::Key_B, Qt::ControlModifier);
    EXPECT_FALSE(plan().film(kMove)->pinned);
    window->run("undo");
    EXPECT_TRUE(plan().film(kMove)->pinned);
    window->run("undo");
    EXPECT_FALSE(plan().film(kMove)->pinned);
}

TEST_F(Films, OnAPinnedFilmTheHandMovesNothingAndIsToldWhy) {
    window->run("pin-film");
    const plan::Plan before = plan();
    work().select(kLine);
    drag(at(0, 25), at(200, 400));
    EXPECT_TRUE(plan() == before);
    EXPECT_EQ(work().selected(), kLine) << "it may be chosen, to be traced";
    EXPECT_NE(said().find("MOVE is pinned."), std::string::npos) << said();
    window->say({});
    work().select(kLine);
    key(Qt::Key_Right);
    EXPECT_TRUE(plan() == before);
    EXPECT_NE(said().find("MOVE is pinned."), std::string::npos);
    window->say({});
    window->run("delete");
    EXPECT_TRUE(plan() == before);
    EXPECT_NE(said().find("MOVE is pinned."), std::string::npos);
}

TEST_F(Films, TheKeyInTheWordsTakesThePinOut) {
    window->run("pin-film");
    window->run("route");
    const QString key = window->actionsByName().at("pin-film")->shortcut().toString();
    EXPECT_NE(said().find(key.toStdString()), std::string::npos) << said();
}

TEST_F(Films, NoToolDrawsOnAPinnedFilmAndWhatIsWetStaysForAnotherOne) {
    window->run("pin-film");
    window->run("route");
    EXPECT_FALSE(window->table().isDrawing());
    EXPECT_NE(said().find("MOVE is pinned."), std::string::npos);
    window->run("pin-film");
    window->run("route");
    click(at(-900, -600));
    click(at(0, -500));
    const plan::Plan before = plan();
    window->work().commit(plan::withPin(plan(), kMove, plan::Pin::Pinned), "pin a film");
    click(at(800, -600));
    QTest::keyClick(&window->table(), Qt::Key_Return);
    EXPECT_TRUE(plan().routes().empty());
    EXPECT_TRUE(window->table().isDrawing());
    work().setWorkingFilm(kLook);
    QTest::keyClick(&window->table(), Qt::Key_Return);
    ASSERT_EQ(plan().routes().size(), 1U);
    EXPECT_EQ(plan().routes().front()->vertices.size(), 2U);
    EXPECT_TRUE(plan::isShownOn(*plan().film(kLook), plan().routes().front()->id));
}

TEST_F(Films, ANameOnAPinnedFilmIsRefusedUnderItsField) {
    work().select(kLine);
    window->run("label");
    window->run("pin-film");
    work().select(std::nullopt);
    work().select(kLine);
    window->run("label");
    card().labelField()->setText(QStringLiteral("FLINT"));
    QTest::keyClick(card().labelField(), Qt::Key_Return);
    EXPECT_EQ(plan().measure(kLine)->name, "CHALK");
    EXPECT_TRUE(card().labelField()->property("refused").toBool());
}

TEST_F(Films, APinnedFilmIsNotLaidAway) {
    window->run("pin-film");
    plan::PlanBuilder builder(plan());
    builder.removeFilm(kMove);
    work().commit(std::move(builder).build(), "lay a film away");
    EXPECT_NE(plan().film(kMove), nullptr);
}

TEST_F(Films, StrengthAndTintByKeysAreToldOnTheTab) {
    key(Qt::Key_PageDown, Qt::ControlModifier);
    key(Qt::Key_PageDown, Qt::ControlModifier);
    EXPECT_DOUBLE_EQ(work().look(kMove).strength, 0.5);
    key(Qt::Key_F8, Qt::AltModifier);
    EXPECT_EQ(work().look(kMove).tint, work::Tint::Amber);
    EXPECT_EQ(toldOf(kMove), QStringLiteral("MOVE, film 1, faded to 50 %, tinted amber"));
    key(Qt::Key_PageUp, Qt::ControlModifier);
    EXPECT_DOUBLE_EQ(work().look(kMove).strength, 0.7);
    EXPECT_EQ(work().look(kMove).tint, work::Tint::Amber) << "one leaves the other alone";
    EXPECT_FALSE(work().isChanged() && work().undoCaption() != "draw") << "how films lie is no part of the plan";
}

TEST_F(Films, AloneTheWorkingFilmLiesThereAndTheSameKeyBringsTheOthersBack) {
    EXPECT_EQ(seen(), (std::vector<std::string>{"MOVE", "LOOK"}));
    key(Qt::Key_F10);
    EXPECT_EQ(seen(), (std::vector<std::string>{"MOVE"}));
    EXPECT_EQ(toldOf(kLook), QStringLiteral("LOOK, film 2, not on the sheet now"));
    work().setWorkingFilm(kLook);
    EXPECT_EQ(seen(), (std::vector<std::string>{"LOOK"}));
    key(Qt::Key_F10);
    EXPECT_EQ(seen(), (std::vector<std::string>{"MOVE", "LOOK"}));
}

TEST_F(Films, WhileF8IsDownTheTopFilmIsOffAndItsInkComesBack) {
    const std::size_t inked = inkOnTable();
    QTest::keyPress(&window->table(), Qt::Key_F8);
    EXPECT_EQ(seen(), (std::vector<std::string>{"LOOK"})) << "the working film lies on top of all";
    const std::size_t lifted = inkOnTable();
    EXPECT_LT(lifted + 300, inked);
    QTest::keyRelease(&window->table(), Qt::Key_F8);
    EXPECT_EQ(seen(), (std::vector<std::string>{"MOVE", "LOOK"}));
    EXPECT_EQ(inkOnTable(), inked);
}

TEST_F(Films, RepeatsOfAHeldKeyAreOnePress) {
    int turns = 0;
    QObject::connect(&work(), &work::Work::tableChanged, window.get(), [&turns] { ++turns; });
    QTest::keyPress(&window->table(), Qt::Key_F8);
    for (int n = 0; n < 5; ++n) {
        for (const auto kind : {QEvent::KeyRelease, QEvent::KeyPress}) {
            QKeyEvent again(kind, Qt::Key_F8, Qt::NoModifier, {}, true);
            QCoreApplication::sendEvent(&window->table(), &again);
        }
    }
    EXPECT_EQ(turns, 1);
    EXPECT_EQ(work().top(), work::Top::Lifted);
    QTest::keyRelease(&window->table(), Qt::Key_F8);
    EXPECT_EQ(turns, 2);
}

TEST_F(Films, AWindowThatLosesTheKeyboardLaysTheFilmBack) {
    QTest::keyPress(&window->table(), Qt::Key_F8);
    EXPECT_EQ(work().top(), work::Top::Lifted);
    QEvent away(QEvent::WindowDeactivate);
    QCoreApplication::sendEvent(window.get(), &away);
    EXPECT_EQ(work().top(), work::Top::Lies);
    QTest::keyRelease(&window->table(), Qt::Key_F8);
    EXPECT_EQ(work().top(), work::Top::Lies);
}

TEST_F(Films, AKeyLetGoInAnotherPartOfTheWindowLaysTheFilmBack) {
    QTest::keyPress(&window->table(), Qt::Key_F8);
    work().select(kLine);
    window->run("label");
    QTest::keyRelease(card().labelField(), Qt::Key_F8);
    EXPECT_EQ(work().top(), work::Top::Lies);
}

TEST_F(Films, AnotherPlanBeginsWithAllFilmsOnTheSheet) {
    key(Qt::Key_F10);
    key(Qt::Key_F8, Qt::AltModifier);
    open();
    EXPECT_EQ(seen().size(), 2U);
    EXPECT_EQ(work().look(kMove), work::FilmLook{});
}

}  // namespace
}  // namespace crosstick::window
