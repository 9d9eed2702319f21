#include <cmath>
#include <set>

#include "core/plan/edits.h"
#include "tests/window/the_window.h"
#include "ui/phases/film_tab.h"

namespace crosstick::window {
namespace {

TEST_F(TheWindow, SaysFirstWhatToDo) {
    EXPECT_NE(window->findChild<start::StartPage*>(), nullptr);
    EXPECT_TRUE(window->findChild<start::StartPage*>()->isVisible());
    EXPECT_FALSE(window->actionsByName().at("save")->isEnabled());
}

TEST_F(TheWindow, DrawsARouteByClicksAndNamesItInPlace) {
    open();
    drawRoute();
    ASSERT_EQ(plan().routes().size(), 1U);
    EXPECT_EQ(plan().measures().size(), 3U);
    ASSERT_NE(card().labelField(), nullptr);
    EXPECT_EQ(QApplication::focusWidget(), card().labelField()) << "the caret stands in the label";
    QTest::keyClicks(card().labelField(), QStringLiteral("FERN"));
    QTest::keyClick(card().labelField(), Qt::Key_Return);
    EXPECT_EQ(plan().routes().front()->name, "FERN");
    EXPECT_EQ(QApplication::focusWidget(), &window->table());
    const auto vertex = plan().routes().front()->vertices[1];
    EXPECT_LT(std::hypot((vertex.easting - at(0, 0).easting).value(), (vertex.northing - at(0, 0).northing).value()), 6)
        << "within the pixel that was clicked";
}

TEST_F(TheWindow, EnterKeepsTheSuggestedName) {
    open();
    drawRoute();
    const std::string suggested = plan().routes().front()->name;
    const std::size_t steps = window->work().undoCaption().size();
    QTest::keyClick(card().labelField(), Qt::Key_Return);
    EXPECT_EQ(plan().routes().front()->name, suggested);
    EXPECT_EQ(window->work().undoCaption().size(), steps) << "no step of the history for nothing";
}

TEST_F(TheWindow, LedgerFollowsAVertexWhileItIsDragged) {
    open();
    drawRoute();
    QTest::keyClick(card().labelField(), Qt::Key_Return);
    const auto distance = [&] { return ledger().legs().paper()->metres; };
    const auto before = distance();
    QTest::mousePress(&window->table(), Qt::LeftButton, Qt::NoModifier, spot(at(0, 0)));
    QTest::mouseMove(&window->table(), spot(at(0, 0)) + QPoint(0, -30));
    QTest::mouseMove(&window->table(), spot(at(0, 800)));
    EXPECT_GT(distance(), before + 300) << "in the same frame, before the button is let go";
    QTest::mouseRelease(&window->table(), Qt::LeftButton, Qt::NoModifier, spot(at(0, 800)));
    const auto after = distance();
    window->run("undo");
    EXPECT_EQ(distance(), before);
    window->run("redo");
    EXPECT_EQ(distance(), after);
}

TEST_F(TheWindow, LedgerShowsTheLegThatIsBeingDrawn) {
    open();
    window->run("route");
    click(at(-1000, 0));
    QTest::mouseMove(&window->table(), spot(at(0, 0)));
    EXPECT_TRUE(ledger().isVisible());
    ASSERT_TRUE(ledger().legs().paper());
    EXPECT_TRUE(ledger().legs().isLive(0));
    EXPECT_NEAR(static_cast<double>(ledger().legs().paper()->metres), 1000, 10);
    EXPECT_TRUE(plan().routes().empty()) << "nothing is in the plan before Enter";
}

TEST_F(TheWindow, TypedGridsMoveAPointAndWrongOnesAreRefusedInPlace) {
    open();
    window->run("draw-checkpoint");
    click(at(0, 0));
    QTest::keyClick(card().labelField(), Qt::Key_Return);
    QLineEdit* grid = card().gridField();
    ASSERT_NE(grid, nullptr);
    EXPECT_TRUE(grid->text().startsWith(QStringLiteral("25T FL 5"))) << grid->text().toStdString();
    const plan::ItemId item = *window->work().selected();
    grid->setFocus();
    grid->setText(QStringLiteral("5450 9850"));
    QTest::keyClick(grid, Qt::Key_Return);
    EXPECT_EQ(plan().measure(item)->points[0], at(500, 500));
    grid->setFocus();
    grid->setText(QStringLiteral("545 98"));
    QTest::keyClick(grid, Qt::Key_Return);
    EXPECT_TRUE(grid->property("refused").toBool());
    EXPECT_EQ(plan().measure(item)->points[0], at(500, 500)) << "the old value stays in force";
}

TEST_F(TheWindow, ATakenNumberIsRefusedWithTheNextFreeOne) {
    open();
    window->run("draw-checkpoint");
    click(at(0, 0));
    QTest::keyClick(card().labelField(), Qt::Key_Return);
    click(at(500, 0));
    ASSERT_EQ(plan().measures().size(), 2U);
    card().labelField()->setText(QStringLiteral("1"));
    QTest::keyClick(card().labelField(), Qt::Key_Return);
    EXPECT_TRUE(card().labelField()->property("refused").toBool());
    EXPECT_EQ(plan().measure(*window->work().selected())->number, "2");
}

TEST_F(TheWindow, SavesAndOpensAgainWhatWasDrawn) {
    open();
    drawRoute();
    save("plan.gpkg");
    const plan::Plan saved = plan();
    window = fresh();
    window->openPlan(folder / "plan.gpkg");
    rest();
    EXPECT_TRUE(plan() == saved);
    EXPECT_TRUE(files::leftovers(folder / "journals").empty());
}

TEST_F(TheWindow, ASaveThatFailsLeavesWhatStoodThere) {
    open();
    std::filesystem::create_directory(folder / "plan.gpkg");  // no file can take this place
    window->saveTo(folder / "plan.gpkg");
    rest();
    EXPECT_TRUE(window->notices().said().contains(QStringLiteral("plan.gpkg"))) << "said, and where";
    EXPECT_TRUE(std::filesystem::is_directory(folder / "plan.gpkg"));
    EXPECT_TRUE(window->work().isChanged()) << "the work is still to be saved";
    save("other.gpkg");
    save("other.gpkg");  // over itself
}

TEST_F(TheWindow, WorkNotSavedIsOfferedAtTheNextStart) {
    open();
    drawRoute();
    const plan::Plan drawn = plan();
    window = fresh();  // the old one went without a save
    const auto found = files::leftovers(folder / "journals");
    ASSERT_EQ(found.size(), 1U);
    std::size_t steps = 0;
    window->work().takeUp(found.front(), [&](Result<std::size_t> taken) { steps = taken.value_or(0); });
    rest();
    EXPECT_EQ(steps, 2U) << "the plan itself and the route";
    EXPECT_TRUE(plan() == drawn);
}

TEST_F(TheWindow, APlanThatIsNoneSaysSoAndLeavesTheWindowAlive) {
    window->openPlan(folder / "nothing.gpkg");
    rest();
    EXPECT_TRUE(window->notices().said().contains(QStringLiteral("nothing.gpkg")));
    EXPECT_FALSE(window->work().isOpen());
    open();
    EXPECT_TRUE(window->work().isOpen());
}

TEST_F(TheWindow, OneMeasureCanBePutOnAnotherFilm) {
    open();
    window->run("draw-checkpoint");
    click(at(0, 0));
    const plan::ItemId item = *window->work().selected();
    window->work().commit(plan::movedToFilm(plan(), item, Uuid{{2}}, Uuid{{3}}), "move to another film");
    EXPECT_TRUE(plan::isShownOn(*plan().film(Uuid{{3}}), item));
    EXPECT_FALSE(plan::isShownOn(*plan().film(Uuid{{2}}), item));
}

TEST_F(TheWindow, TableHasThreeQuartersOfTheWindow) {  // look.md 2, rim counted
    open();
    const auto share = [&] {
        settle();
        const QSize table = window->table().size();
        return 100.0 * table.width() * table.height() / (1366.0 * 768.0);
    };
    EXPECT_GT(share(), 95);
    drawRoute();
    settle();
    EXPECT_GT(share(), 75) << "with the card and the folded ledger";
    window->run("details");
    EXPECT_GT(share(), 78) << "with the ledger";
    window->run("bare");
    EXPECT_GT(share(), 99);
}

TEST_F(TheWindow, NoTwoActionsShareAKey) {
    std::map<QString, std::string> keys;
    for (const auto& [name, action] : window->actionsByName()) {
        for (const QKeySequence& key : action->shortcuts()) {
            const auto [at2, fresh2] = keys.emplace(key.toString(), name);
            EXPECT_TRUE(fresh2) << name << " and " << at2->second << " share " << key.toString().toStdString();
        }
    }
    EXPECT_GT(keys.size(), 20U);
}

TEST_F(TheWindow, EveryControlHasANameForAScreenReader) {
    open();
    drawRoute();
    std::size_t controls = 0;
    for (const QWidget* widget : window->findChildren<QWidget*>()) {
        if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisibleTo(window.get())) {
            continue;
        }
        const auto* button = qobject_cast<const QAbstractButton*>(widget);
        const bool named = !widget->accessibleName().isEmpty() || (button != nullptr && !button->text().isEmpty());
        const bool inner = widget->parentWidget() != nullptr && widget->parentWidget()->inherits("QAbstractScrollArea");
        EXPECT_TRUE(named || inner) << widget->metaObject()->className() << " under "
                                    << widget->parentWidget()->metaObject()->className();
        ++controls;
    }
    EXPECT_GT(controls, 8U);
}

TEST_F(TheWindow, NightHasNoLightButRed) {
    open();
    drawRoute();
    window->setLight(look::Light::Night);
    settle();
    const QImage shot = window->grab().toImage();
    int wrong = 0;
    for (int y = 0; y < shot.height(); ++y) {
        for (int x = 0; x < shot.width(); ++x) {
            const QColor c = shot.pixelColor(x, y);
            wrong += c.blue() > 100 || c.green() > 130 ? 1 : 0;
        }
    }
    EXPECT_EQ(wrong, 0) << "pixels with blue or green light";
}

TEST_F(TheWindow, TheEmptyWindowIsRedByNightWithWhatACrashLeft) {
    open();
    drawRoute();
    window = fresh();
    window->setLight(look::Light::Night);
    rest();
    QTest::qWait(50);
    const QImage shot = window->grab().toImage();
    int wrong = 0;
    for (int y = 0; y < shot.height(); ++y) {
        for (int x = 0; x < shot.width(); ++x) {
            const QColor c = shot.pixelColor(x, y);
            wrong += c.blue() > 100 || c.green() > 130 ? 1 : 0;
        }
    }
    EXPECT_EQ(wrong, 0) << "pixels with blue or green light";
}

TEST_F(TheWindow, CopiesShowTheFilmsAndCardsThatWouldBePrinted) {
    open();
    drawRoute();
    window->run("copies");
    QElapsedTimer patience;
    patience.start();
    while (!window->copies().isReady() && patience.elapsed() < 20000) {
        QTest::qWait(20);
    }
    EXPECT_EQ(window->copies().pages(), 3U) << "two films and a card";
    window->copies().savePdf(QString::fromStdString((folder / "films.pdf").string()),
                             QString::fromStdString((folder / "cards.pdf").string()));
    rest();
    EXPECT_GT(std::filesystem::file_size(folder / "films.pdf"), 5000U);
    EXPECT_GT(std::filesystem::file_size(folder / "cards.pdf"), 5000U);
    QTest::keyClick(&window->copies(), Qt::Key_Escape);
    EXPECT_TRUE(window->table().isVisible());
}

TEST_F(TheWindow, TheGroundUnderThePointerStaysWhenItIsZoomed) {
    open();
    const QPoint hand(400, 300);
    const geodesy::PlanePoint before = window->table().view().place({400, 300});
    QWheelEvent wheel(hand, window->table().mapToGlobal(QPointF(hand)), {}, {0, 240}, Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(&window->table(), &wheel);
    const geodesy::PlanePoint after = window->table().view().place({400, 300});
    EXPECT_NEAR((after.easting - before.easting).value(), 0, 1e-6);
    EXPECT_NEAR((after.northing - before.northing).value(), 0, 1e-6);
    EXPECT_GT(window->table().view().zoom(), table::Zoom(0.2));
}

TEST_F(TheWindow, EscapeLeavesAQuestionAndChangesNothing) {
    open();
    window->run("new-phase");
    const std::size_t before = plan().phases().size();
    QTest::keyClick(window->question().field(), Qt::Key_Escape);
    EXPECT_FALSE(window->question().isVisible());
    EXPECT_EQ(plan().phases().size(), before);
}

TEST_F(TheWindow, BeginsOnTheGridAloneByTwoAnswers) {
    window->run("grid-alone");
    QLineEdit* field = window->question().field();
    field->setText(QStringLiteral("nowhere"));
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_FALSE(window->question().refusal().isEmpty());
    field->setText(QStringLiteral("25T FL 54 97"));
    QTest::keyClick(field, Qt::Key_Return);
    ASSERT_TRUE(window->question().isVisible()) << "the scale is asked next";
    field->setText(QStringLiteral("1:50 000"));
    QTest::keyClick(field, Qt::Key_Return);
    rest();
    EXPECT_FALSE(window->question().isVisible());
    EXPECT_TRUE(window->work().isOpen());
}

TEST_F(TheWindow, TurnsToTheDirectionOfMarchAndBack) {
    open();
    drawRoute();
    settle();
    window->run("march-up");
    const geodesy::PlanePoint first = plan().routes().front()->vertices.front();
    const geodesy::PlanePoint last = plan().routes().front()->vertices.back();
    const table::Spot from = window->table().view().spot(first);
    const table::Spot to = window->table().view().spot(last);
    EXPECT_NEAR(from.x, to.x, 1e-6);
    EXPECT_LT(to.y, from.y);
    window->run("north-up");
    EXPECT_EQ(window->table().view().up(), Degrees(0));
}

TEST_F(TheWindow, TicksAndWindowMoveToTheCrossingsThatAreTyped) {
    open();
    window->run("window-at");
    QLineEdit* field = window->question().field();
    field->setText(QStringLiteral("25T FL 51 95, 25T FM 57 01"));
    QTest::keyClick(field, Qt::Key_Return);
    ASSERT_TRUE(plan().registration().has_value()) << window->question().refusal().toStdString();
    EXPECT_EQ(plan().registration()->southWest.easting, Metres(651000));
    EXPECT_EQ(plan().registration()->northEast.northing, Metres(5101000));
    window->run("ticks-at");
    field->setText(QStringLiteral("25T FL 52 96, 25T FL 56 96"));
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_FALSE(window->question().refusal().isEmpty()) << "two are too few";
    field->setText(QStringLiteral("25T FL 52 96, 25T FL 56 96, 25T FM 52 00"));
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_EQ(plan().registration()->ticks.size(), 3U);
    EXPECT_EQ(plan().registration()->ticks.back().northing, Metres(5100000));
    window->run("undo");
    window->run("undo");
    EXPECT_FALSE(plan().registration() && plan().registration()->southWest.easting == Metres(651000))
        << "each is one step";
}

TEST_F(TheWindow, TicksAndWindowMoveUnderTheHand) {
    open();
    const plan::Registration present{
        at(-2500, -1300), at(2500, 1300), {at(-2000, -1000), at(2000, -1000), at(-2000, 1000)}, {}};
    plan::PlanBuilder builder(plan());
    builder.registration(present);
    window->work().commit(std::move(builder).build(), "begin");
    settle();
    window->run("ticks-by-hand");
    drag(at(2000, -1000), at(1060, -1040));
    EXPECT_EQ(plan().registration()->ticks[1], at(1000, -1000));
    drag(at(0, 1300), at(0, 1600));
    EXPECT_EQ(plan().registration()->northEast, at(2500, 1600));
    drag(at(1000, -1000), at(-2000, -1000));
    EXPECT_NE(window->notices().said().indexOf(QStringLiteral("Another tick")), -1)
        << window->notices().said().toStdString();
    window->run("undo");
    window->run("undo");
    EXPECT_EQ(plan().registration()->northEast, present.northEast);
    EXPECT_EQ(plan().registration()->ticks, present.ticks);
    QTest::keyClick(&window->table(), Qt::Key_Escape);
    EXPECT_FALSE(window->table().isDrawing());
}

TEST_F(TheWindow, AFilmTabKeepsTheKeyboardWhenItsFilmIsTaken) {
    open();
    window->activateWindow();
    const auto tabs = [&] { return window->findChildren<phases::FilmTab*>(); };
    const auto tabOf = [&](const plan::FilmId& film) -> phases::FilmTab* {
        for (phases::FilmTab* tab : tabs()) {
            if (tab->film() == film && tab->isVisible()) {
                return tab;
            }
        }
        return nullptr;
    };
    ASSERT_NE(tabOf(Uuid{{3}}), nullptr);
    tabOf(Uuid{{3}})->setFocus(Qt::TabFocusReason);
    ASSERT_TRUE(tabOf(Uuid{{3}})->hasFocus());
    QTest::keyClick(tabOf(Uuid{{3}}), Qt::Key_Space);
    settle();
    EXPECT_EQ(window->work().workingFilm(), Uuid{{3}});
    EXPECT_TRUE(tabOf(Uuid{{3}})->hasFocus()) << "the rail was made anew and lost the keyboard";
}

TEST_F(TheWindow, SizesOfAFilmAreTypedAndUndone) {
    open();
    window->run("sizes");
    QLineEdit* field = window->question().field();
    EXPECT_EQ(field->text(), QStringLiteral("6, 0.4, 2"));
    field->setText(QStringLiteral("9, 0.4, 2"));
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_FALSE(window->question().refusal().isEmpty()) << "9 mm is no symbol";
    field->setText(QStringLiteral("8 0.5 2.5"));
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_FALSE(window->question().isVisible());
    EXPECT_EQ(plan().gauge(*plan().films().front()), drawing::Gauge::of(8, 0.5, 2.5));
    window->run("undo");
    EXPECT_EQ(plan().gauge(*plan().films().front()), drawing::Gauge{});
}

TEST_F(TheWindow, CopiesSayWhatRedLightWouldTake) {
    open();
    plan::Measure enemy;
    enemy.id = Uuid{{9}};
    enemy.kind = "phase-line";
    enemy.name = "WASP";
    enemy.whose = plan::Whose::Enemy;
    enemy.points = {at(-500, 0), at(500, 0)};
    window->work().commit(plan::withMeasure(plan(), enemy, Uuid{{2}}), "draw");
    window->run("copies");
    ASSERT_TRUE(QTest::qWaitFor([this] { return window->copies().isReady(); }, 20000));
    const auto says = [this](const char* words) {
        for (const QLabel* label : window->copies().findChildren<QLabel*>()) {
            if (label->text().contains(QString::fromLatin1(words))) {
                return true;
            }
        }
        return false;
    };
    EXPECT_FALSE(says("PL WASP"));
    QTest::keyClick(&window->copies(), Qt::Key_D);
    EXPECT_TRUE(says("Under red light nothing drawn here is lost"));
    EXPECT_TRUE(says("Faint: PL WASP"));
    QTest::keyClick(&window->copies(), Qt::Key_D);
    EXPECT_FALSE(says("PL WASP"));
}

TEST_F(TheWindow, AUnitIsPickedOrTypedAndEitherFollowsTheOther) {
    open();
    window->run("draw-unit");
    click(at(0, 0));
    settle();
    QLineEdit* field = card().labelField();
    ASSERT_NE(field, nullptr);
    auto* picker = card().findChild<details::UnitPicker*>();
    ASSERT_NE(picker, nullptr);
    field->setFocus();
    field->selectAll();
    QTest::keyClicks(field, QStringLiteral("2/B mor plt"));
    EXPECT_EQ(picker->size()->currentText(), QStringLiteral("platoon")) << "while it is typed";
    EXPECT_EQ(picker->icon()->currentText(), QStringLiteral("mortar"));
    QTest::keyClick(field, Qt::Key_Return);
    const auto typed = [this] { return plan().measure(*window->work().selected())->fields.at("unit"); };
    EXPECT_EQ(typed(), "2/B mor plt");
    EXPECT_EQ(card().title(), QStringLiteral("2/B mor plt")) << "the card's head follows";
    picker->side()->setCurrentIndex(1);
    Q_EMIT picker->side()->activated(1);
    EXPECT_EQ(typed(), "eny 2/B mor plt");
    window->run("undo");
    EXPECT_EQ(typed(), "2/B mor plt");
    EXPECT_EQ(picker->side()->currentIndex(), 0);
}

TEST_F(TheWindow, AMeasureIsGivenToTheEnemyAndBack) {
    open();
    window->run("draw-checkpoint");
    click(at(0, 0));
    settle();
    const auto press = [this](const char* name) {
        for (QPushButton* button : card().findChildren<QPushButton*>()) {
            if (button->accessibleName() == QString::fromLatin1(name)) {
                button->click();
                return;
            }
        }
        ADD_FAILURE() << "no button " << name;
    };
    press("Whose: the enemy's");
    EXPECT_EQ(plan().measure(*window->work().selected())->whose, plan::Whose::Enemy);
    press("Whose: ours");
    EXPECT_EQ(plan().measure(*window->work().selected())->whose, plan::Whose::Own);
}

}  // namespace
}  // namespace crosstick::window
