// The phase rail rolled down: real hands and keys on cards and phases.
#include <QAccessible>

#include "core/plan/pinning.h"
#include "tests/window/the_window.h"
#include "ui/phases/film_access.h"
#include "ui/phases/phase_board.h"

namespace crosstick::window {
namespace {

constexpr Uuid kArea{{1}}, kMove{{2}}, kTake{{3}}, kLine{{9}};

class Board : public TheWindow {
  protected:
    void SetUp() override {
        plan::Plan plan = smallPlan();
        plan::PlanBuilder builder(plan::withFilm(plan, kArea, "AREA", {}));
        builder.order({}, {kArea, kMove, kTake}, {});
        std::vector<plan::Phase> phases;
        for (int n = 1; n <= 4; ++n) {
            phases.push_back({n, "Phase " + std::to_string(n), {}, {}, {}});
        }
        builder.phases(std::move(phases));
        plan = std::move(builder).build();
        plan = withPhases(withPhases(plan, kMove, {1, 2}), kTake, {4});
        plan = plan::withMeasure(plan, line(), kMove);
        window->work().begin(plan, folder / "");
        settle();
        window->activateWindow();
        window->run("rail");
        QTest::qWait(20);
    }
    [[nodiscard]] static plan::Measure line() {
        plan::Measure line;
        line.id = kLine;
        line.kind = "phase-line";
        line.name = "CHALK";
        line.points = {at(-600, 0), at(600, 50)};
        return line;
    }
    [[nodiscard]] static plan::Plan withPhases(const plan::Plan& plan, const plan::FilmId& id, std::set<int> phases) {
        plan::Film film = *plan.film(id);
        film.phases = std::move(phases);
        return std::move(plan::PlanBuilder(plan).put(std::move(film))).build();
    }
    [[nodiscard]] phases::PhaseBoard& board() { return *window->findChild<phases::PhaseBoard*>(); }
    [[nodiscard]] phases::FilmCard& card(const plan::FilmId& film) { return *board().cardOf(film); }
    [[nodiscard]] work::Work& work() { return window->work(); }
    [[nodiscard]] std::set<int> phasesOf(const plan::FilmId& film) { return plan().film(film)->phases; }
    [[nodiscard]] std::string stack() {
        std::string names;
        for (const plan::FilmPtr& film : plan().films()) {
            names += film->name + ' ';
        }
        return names;
    }
    [[nodiscard]] phases::PhaseSquare& head(int phase) {
        for (phases::PhaseSquare* head : board().findChildren<phases::PhaseSquare*>()) {
            if (head->number() == phase && head->isVisible()) {
                return *head;
            }
        }
        throw std::runtime_error("no such phase");
    }
    void pull(phases::FilmCard& card, QPoint from, QPoint by) {
        QTest::mousePress(&card, Qt::LeftButton, Qt::NoModifier, from);
        const QPoint start = card.mapTo(&board(), from);
        for (const double share : {0.3, 0.7, 1.0}) {
            const QPoint to = start + QPoint(static_cast<int>(by.x() * share), static_cast<int>(by.y() * share));
            QMouseEvent move(QEvent::MouseMove, card.mapFrom(&board(), to), board().mapToGlobal(to), Qt::NoButton,
                             Qt::LeftButton, Qt::NoModifier);
            QCoreApplication::sendEvent(&card, &move);
        }
        QTest::mouseRelease(&card, Qt::LeftButton, Qt::NoModifier, card.mapFrom(&board(), start + by));
        QTest::qWait(1);
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QWidget* focus = QApplication::focusWidget();
        ASSERT_NE(focus, nullptr);
        ASSERT_TRUE(board().isAncestorOf(focus));
        QTest::keyClick(focus, key, modifiers);
    }
};

TEST_F(Board, F3RollsItDownOverTheTableAndUpAgain) {
    EXPECT_TRUE(board().isVisible());
    EXPECT_EQ(board().height(), 300);
    EXPECT_EQ(board().width(), window->width());
    EXPECT_TRUE(card(kMove).hasFocus()) << "the card of the working film";
    press(Qt::Key_F3);
    EXPECT_FALSE(board().isVisible());
    EXPECT_TRUE(window->table().hasFocus());
    QTest::keyClick(&window->table(), Qt::Key_F3);
    EXPECT_TRUE(board().isVisible());
    press(Qt::Key_Escape);
    EXPECT_FALSE(board().isVisible());
}

TEST_F(Board, CardsSpanTheirPhasesTheTopFilmOnTopAndTheSheetLowest) {
    EXPECT_EQ(card(kMove).x(), head(1).x());
    EXPECT_EQ(card(kMove).geometry().right(), head(2).geometry().right());
    EXPECT_EQ(card(kTake).x(), head(4).x());
    EXPECT_EQ(card(kTake).y(), card(kMove).y()) << "they never lie together";
    EXPECT_GT(card(kArea).y(), card(kMove).y());
    EXPECT_EQ(card(kArea).geometry().right(), head(4).geometry().right()) << "all phases";
    EXPECT_GT(board().sheet().y(), card(kArea).y());
}

TEST_F(Board, ChoosingAPhaseShowsItsFilms) {
    QTest::mouseClick(&head(4), Qt::LeftButton);
    EXPECT_EQ(work().phase(), 4);
    EXPECT_TRUE(work().isSeen(kTake));
    EXPECT_FALSE(work().isSeen(kMove));
    EXPECT_EQ(card(kMove).facts().seen, false);
    press(Qt::Key_Left);
    press(Qt::Key_Left);
    EXPECT_EQ(work().phase(), 2);
    EXPECT_TRUE(work().isSeen(kMove));
}

TEST_F(Board, AFilmOfAnotherPhaseBringsItsPhaseAlong) {
    QTest::mouseClick(&card(kTake), Qt::LeftButton);
    EXPECT_EQ(work().phase(), 4);
    EXPECT_EQ(work().workingFilm(), kTake);
    press(Qt::Key_Down);
    EXPECT_EQ(work().workingFilm(), kArea);
    EXPECT_TRUE(card(kArea).hasFocus());
}

TEST_F(Board, ACardsEndIsPulledToAnotherPhaseInOneStep) {
    const int column = head(2).x() - head(1).x();
    pull(card(kMove), QPoint(card(kMove).width() - 3, 30), QPoint(column, 0));
    EXPECT_EQ(phasesOf(kMove), (std::set<int>{1, 2, 3}));
    EXPECT_EQ(work().undoCaption(), "give a film its phases");
    pull(card(kMove), QPoint(3, 30), QPoint(2 * column, 0));
    EXPECT_EQ(phasesOf(kMove), (std::set<int>{3}));
    pull(card(kMove), QPoint(3, 30), QPoint(2 * column, 0));
    EXPECT_EQ(phasesOf(kMove), (std::set<int>{3})) << "it keeps one";
    window->run("undo");
    window->run("undo");
    EXPECT_EQ(phasesOf(kMove), (std::set<int>{1, 2}));
    pull(card(kArea), QPoint(card(kArea).width() - 3, 30), QPoint(-column, 0));
    EXPECT_EQ(phasesOf(kArea), (std::set<int>{1, 2, 3})) << "one of all phases names those that are left";
}

TEST_F(Board, PhasesByKeysAndAGapStays) {
    work().commit(withPhases(plan(), kMove, {1, 3}), "gap");
    QTest::qWait(1);
    card(kMove).setFocus();
    press(Qt::Key_Right, Qt::AltModifier);
    EXPECT_EQ(phasesOf(kMove), (std::set<int>{1, 3, 4}));
    press(Qt::Key_Left, Qt::AltModifier);
    EXPECT_EQ(phasesOf(kMove), (std::set<int>{1, 3}));
    press(Qt::Key_Right, Qt::AltModifier | Qt::ShiftModifier);
    EXPECT_EQ(phasesOf(kMove), (std::set<int>{3}));
}

TEST_F(Board, ACardIsPulledDownAndLiesUnderTheOtherInOneStep) {
    EXPECT_EQ(stack(), "AREA MOVE LOOK ");
    pull(card(kMove), QPoint(60, 30), QPoint(0, 62));
    EXPECT_EQ(stack(), "MOVE AREA LOOK ");
    EXPECT_EQ(work().undoCaption(), "restack a film");
    EXPECT_GT(card(kMove).y(), card(kArea).y());
    window->run("undo");
    EXPECT_EQ(stack(), "AREA MOVE LOOK ");
    card(kMove).setFocus();
    press(Qt::Key_Down, Qt::AltModifier);
    EXPECT_EQ(stack(), "MOVE AREA LOOK ");
    press(Qt::Key_Up, Qt::AltModifier);
    EXPECT_EQ(stack(), "AREA MOVE LOOK ");
}

TEST_F(Board, APullGivenUpLeavesEverything) {
    const plan::Plan before = plan();
    const QRect lay = card(kMove).geometry();
    QTest::mousePress(&card(kMove), Qt::LeftButton, Qt::NoModifier, QPoint(60, 30));
    QMouseEvent move(QEvent::MouseMove, QPoint(60, 90), card(kMove).mapToGlobal(QPoint(60, 90)), Qt::NoButton,
                     Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(&card(kMove), &move);
    QTest::keyClick(&card(kMove), Qt::Key_Escape);
    QTest::mouseRelease(&card(kMove), Qt::LeftButton, Qt::NoModifier, QPoint(60, 30));
    EXPECT_TRUE(plan() == before);
    EXPECT_EQ(card(kMove).geometry(), lay);
    EXPECT_TRUE(board().isVisible()) << "the first Escape is the pull's";
}

TEST_F(Board, LettersDoWhatStandsBesideThem) {
    press(Qt::Key_P);
    EXPECT_TRUE(plan().film(kMove)->pinned);
    EXPECT_TRUE(card(kMove).facts().pinned);
    press(Qt::Key_H);
    EXPECT_FALSE(work().look(kMove).shown);
    press(Qt::Key_H);
    press(Qt::Key_T);
    press(Qt::Key_Minus);
    EXPECT_EQ(work().look(kMove).tint, work::Tint::Amber);
    EXPECT_DOUBLE_EQ(work().look(kMove).strength, 0.7);
    press(Qt::Key_A);
    EXPECT_EQ(work().company(), work::Company::WorkingAlone);
    EXPECT_EQ(phases::stateLine(card(kMove).facts()).words, QStringLiteral("faded to 70 %, tinted amber"));
}

TEST_F(Board, ANewFilmIsNamedOnItsCard) {
    press(Qt::Key_F);
    phases::NameField* field = board().nameField();
    ASSERT_NE(field, nullptr);
    EXPECT_EQ(QApplication::focusWidget(), field);
    QTest::keyClicks(field, QStringLiteral("HOLD"));
    QTest::keyClick(field, Qt::Key_Return);
    ASSERT_NE(plan().filmNamed("HOLD"), nullptr);
    EXPECT_TRUE(card(plan().filmNamed("HOLD")->id).hasFocus());
    EXPECT_TRUE(board().isVisible());
}

TEST_F(Board, EscapeDropsWhatWasTypedOnACard) {
    const plan::Plan before = plan();
    press(Qt::Key_F2, Qt::ShiftModifier);
    phases::NameField* field = board().nameField();
    ASSERT_NE(field, nullptr);
    QTest::keyClicks(field, QStringLiteral("HOLD"));
    QTest::keyClick(field, Qt::Key_Escape);
    EXPECT_EQ(board().nameField(), nullptr);
    EXPECT_TRUE(plan() == before);
    EXPECT_TRUE(card(kMove).hasFocus());
}

TEST_F(Board, AFilmsPictureIsItsOwnInkAndFollowsIt) {
    ASSERT_TRUE(QTest::qWaitFor([this] { return board().hasPictures(); }, 10000));
    QTest::qWait(300);
    const auto shot = [this] { return card(kMove).grab(QRect(QPoint(5, 4), phases::FilmCard::kPicture)).toImage(); };
    const QImage before = shot();
    work().commit(plan::movedBy(plan(), kLine, Metres(0), Metres(900)), "move");
    EXPECT_TRUE(QTest::qWaitFor([&] { return shot() != before; }, 10000));
    window->run("undo");
    EXPECT_TRUE(QTest::qWaitFor([&] { return shot() == before; }, 10000));
}

TEST_F(Board, WhoListensHearsTheFilmAndWhatLiesOnIt) {
    QAccessibleInterface* film = QAccessible::queryAccessibleInterface(&card(kMove));
    ASSERT_NE(film, nullptr);
    EXPECT_EQ(film->role(), QAccessible::ListItem);
    EXPECT_TRUE(film->text(QAccessible::Name).startsWith(QStringLiteral("MOVE, film 2")));
    EXPECT_TRUE(film->text(QAccessible::Description).startsWith(QStringLiteral("1 measure")));
    EXPECT_TRUE(film->state().selected);
    ASSERT_EQ(film->childCount(), 1);
    QAccessibleInterface* thing = film->child(0);
    ASSERT_NE(thing, nullptr);
    EXPECT_EQ(thing->text(QAccessible::Name), QStringLiteral("PL CHALK"));
    EXPECT_TRUE(thing->text(QAccessible::Description).startsWith(QStringLiteral("Phase line, from ")))
        << thing->text(QAccessible::Description).toStdString();
    EXPECT_EQ(thing->parent(), film);
    EXPECT_EQ(film->indexOfChild(thing), 0);
    EXPECT_FALSE(thing->state().selected);
    thing->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    EXPECT_EQ(work().selected(), kLine);
    EXPECT_TRUE(thing->state().selected);
}

TEST_F(Board, AThingThatIsGoneIsHeardNoMore) {
    QAccessibleInterface* film = QAccessible::queryAccessibleInterface(&card(kMove));
    QAccessibleInterface* thing = film->child(0);
    work().commit(plan::without(plan(), kLine), "wipe off");
    EXPECT_FALSE(thing->isValid());
    EXPECT_EQ(thing->text(QAccessible::Name), QString());
    EXPECT_EQ(film->childCount(), 0);
    thing->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    EXPECT_EQ(work().selected(), std::nullopt);
}

TEST_F(Board, AFilmsTabOnTheRailRolledUpIsHeardTheSameWay) {
    window->run("rail");
    QTest::qWait(20);
    for (phases::FilmButton* tab : window->findChildren<phases::FilmButton*>()) {
        if (tab->isVisible() && tab->film() == kMove) {
            QAccessibleInterface* film = QAccessible::queryAccessibleInterface(tab);
            ASSERT_EQ(film->childCount(), 1);
            EXPECT_EQ(film->child(0)->text(QAccessible::Name), QStringLiteral("PL CHALK"));
            return;
        }
    }
    FAIL() << "no tab";
}

TEST_F(Board, EveryControlOnItHasANameAndIsReachedByKeys) {
    for (const QAbstractButton* button : board().findChildren<QAbstractButton*>()) {
        if (button->isVisible()) {
            EXPECT_FALSE(button->accessibleName().isEmpty()) << button->text().toStdString();
            EXPECT_GE(button->height(), 20);
        }
    }
}

TEST_F(Board, OnASmallScreenItLeavesTableUnderItself) {
    window->resize(683, 384);
    QTest::qWait(50);
    EXPECT_TRUE(board().isVisible());
    EXPECT_LE(board().geometry().bottom() + 40, window->table().height());
    EXPECT_LE(card(kArea).geometry().right(), board().width());
}

}  // namespace
}  // namespace crosstick::window
