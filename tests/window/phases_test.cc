// From phase to phase, insets, things shown on further films and traced from higher's: real events in the window.
#include <QCheckBox>
#include <QPushButton>

#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

constexpr plan::FilmId kMove{Uuid{{2}}};
constexpr plan::FilmId kHigher{Uuid{{3}}};

class PhasesInTheWindow : public TheWindow {
  protected:
    /// Film MOVE of phase 1, film LOOK of none, as higher's.
    void openPhase() {
        plan::PlanBuilder builder(smallPlan());
        builder.phases({{1, "Approach", {}, {}, {}}});
        plan::Film move = *smallPlan().film(kMove);
        move.phases = {1};
        builder.put(move);
        window->work().begin(std::move(builder).build(), folder / "");
        window->work().setWorkingFilm(kMove);
        settle();
        window->table().setView(table::View(window->table().view().area(), at(0, 0), table::Zoom(0.2)));
        settle();
    }
    plan::ItemId put(const char* kind, std::vector<geodesy::PlanePoint> points, const plan::FilmId& film) {
        plan::Measure measure;
        measure.id = window->work().newId();
        measure.kind = kind;
        measure.name = "CHALK";
        measure.points = std::move(points);
        window->work().commit(plan::withMeasure(plan(), measure, film), "put");
        settle();
        return measure.id;
    }
    [[nodiscard]] phases::OfferCard& offers() { return *window->findChild<phases::OfferCard*>(); }
    [[nodiscard]] QCheckBox* box(const QString& words) {
        for (QCheckBox* box : offers().boxes()) {
            if (box->text().contains(words)) {
                return box;
            }
        }
        ADD_FAILURE() << words.toStdString();
        return nullptr;
    }
};

TEST_F(PhasesInTheWindow, TheNextPhaseIsOfferedOnACardAndTakenAsItIsTicked) {
    openPhase();
    const plan::ItemId boundary = put("boundary", {at(-1500, 0), at(1500, 0)}, kMove);
    const plan::ItemId arrow = put("direction-of-attack", {at(-500, 500), at(500, 900)}, kMove);
    const plan::ItemId unit = put("unit", {at(-900, -300)}, kMove);
    window->run("next-phase");
    ASSERT_TRUE(offers().isVisible());
    EXPECT_FALSE(card().isVisible());
    ASSERT_EQ(offers().boxes().size(), 3U);
    EXPECT_FALSE(box("Direction")->isChecked());
    box("Direction")->click();
    box("Boundary")->click();
    offers().fields()[0]->setText("Look");
    offers().fields()[1]->setText("MOVE");
    QTest::keyClick(offers().fields()[1], Qt::Key_Return);
    EXPECT_TRUE(offers().refusal().contains("another film")) << offers().refusal().toStdString();
    offers().fields()[1]->setText("POST");
    QTest::keyClick(offers().fields()[1], Qt::Key_Return);
    settle();
    EXPECT_FALSE(offers().isVisible());
    const plan::FilmPtr film = plan().filmNamed("POST");
    ASSERT_TRUE(film);
    EXPECT_TRUE(plan::isShownOn(*film, arrow));
    EXPECT_FALSE(plan::isShownOn(*film, boundary));
    EXPECT_FALSE(plan::isShownOn(*film, unit)) << "another one is proposed in its place";
    ASSERT_EQ(film->shows.size(), 2U);
    EXPECT_EQ(window->work().phase(), 2);
    EXPECT_EQ(window->work().workingFilm(), film->id);
    EXPECT_EQ(plan().phases()[1].name, "Look");
    window->run("undo");
    EXPECT_FALSE(plan().filmNamed("POST")) << "one step";
}

TEST_F(PhasesInTheWindow, EscapeLeavesWhatIsOffered) {
    openPhase();
    put("boundary", {at(-1500, 0), at(1500, 0)}, kMove);
    const plan::Plan before = plan();
    window->run("next-phase");
    QTest::keyClick(offers().fields()[0], Qt::Key_Escape);
    EXPECT_FALSE(offers().isVisible());
    EXPECT_TRUE(plan() == before);
}

TEST_F(PhasesInTheWindow, FilmsAreJoinedAndPartedByOneCommandEach) {
    openPhase();
    put("boundary", {at(-1500, 0), at(1500, 0)}, kMove);
    window->run("next-phase");
    offers().button()->click();
    settle();
    window->work().setPhase(1);
    window->work().setWorkingFilm(kMove);
    window->run("join-phases");
    EXPECT_EQ(plan().film(kMove)->phases, (std::set<int>{1, 2}));
    EXPECT_EQ(plan().films().size(), 2U);
    window->run("part-phases");
    EXPECT_EQ(plan().film(kMove)->phases, std::set<int>{1});
    EXPECT_EQ(plan().films().size(), 3U);
}

TEST_F(PhasesInTheWindow, AnInsetIsDraggedAndThenFillsTheTable) {
    openPhase();
    put("objective", {at(-200, -200), at(200, -200), at(200, 200), at(-200, 200)}, kMove);
    const table::View before = window->table().view();
    window->run("inset");
    drag(at(-400, 300), at(400, -300));
    settle();
    const plan::FilmPtr inset = plan().filmNamed("INSET 1");
    ASSERT_TRUE(inset);
    EXPECT_EQ(inset->inset->parent, kMove);
    EXPECT_LT(inset->scale->denominator, 25000);
    EXPECT_EQ(inset->shows.size(), 1U);
    EXPECT_EQ(window->work().workingFilm(), inset->id);
    EXPECT_GT(window->table().view().zoom().value(), before.zoom().value());
    EXPECT_EQ(window->work().filmsSeen().size(), 1U) << "it lies there alone";
    window->work().setWorkingFilm(kMove);
    settle();
    EXPECT_NEAR(window->table().view().zoom().value(), before.zoom().value(), 1e-9);
    EXPECT_EQ(window->work().filmsSeen().size(), 2U);
}

TEST_F(PhasesInTheWindow, AnInsetByTypedCornersMovesTheOneThatIsWorkedOn) {
    openPhase();
    window->run("inset-at");
    window->findChild<Question*>()->field()->setText("53709770, 54209830");
    QTest::keyClick(window->findChild<Question*>()->field(), Qt::Key_Return);
    settle();
    const plan::FilmPtr inset = plan().filmNamed("INSET 1");
    ASSERT_TRUE(inset) << window->question().refusal().toStdString();
    EXPECT_EQ(inset->inset->place.southWest, at(-300, -300));
    window->run("inset-at");
    window->findChild<Question*>()->field()->setText("53909770, 54209830");
    QTest::keyClick(window->findChild<Question*>()->field(), Qt::Key_Return);
    EXPECT_EQ(plan().film(inset->id)->inset->place.southWest, at(-100, -300));
    EXPECT_EQ(plan().films().size(), 3U);
}

TEST_F(PhasesInTheWindow, AnInsetsTicksAreSetByHandAndThoseOfThePlanStay) {
    openPhase();
    window->run("inset-at");
    window->question().field()->setText("53709770, 54209830");
    QTest::keyClick(window->question().field(), Qt::Key_Return);
    settle();
    const auto place = [this] { return plan().filmNamed("INSET 1")->inset->place; };
    const auto ofThePlan = plan().registration();
    window->run("ticks-at");
    EXPECT_EQ(window->question().field()->text().count(QLatin1Char(',')), std::ssize(place().ticks) - 1);
    window->question().field()->setText("53809780, 54109780, 53809820");
    QTest::keyClick(window->question().field(), Qt::Key_Return);
    EXPECT_EQ(place().ticks, (std::vector{at(-200, -200), at(100, -200), at(-200, 200)}))
        << window->question().refusal().toStdString();
    window->run("ticks-by-hand");
    drag(at(100, -200), at(20, -110));
    EXPECT_EQ(place().ticks[1], at(0, -100));
    QTest::keyClick(&window->table(), Qt::Key_Escape);
    window->run("ticks");
    EXPECT_EQ(place().ticks.size(), 4U) << "as it would be proposed";
    EXPECT_EQ(plan().registration(), ofThePlan);
}

TEST_F(PhasesInTheWindow, OneCommandShowsAThingOnTheWorkingFilmAndTakesItOff) {
    openPhase();
    const plan::ItemId line = put("phase-line", {at(-1500, 0), at(1500, 0)}, kHigher);
    window->work().select(line);
    window->run("show-here");
    EXPECT_TRUE(plan::isShownOn(*plan().film(kMove), line));
    EXPECT_TRUE(plan::isShownOn(*plan().film(kHigher), line));
    window->run("show-here");
    EXPECT_FALSE(plan::isShownOn(*plan().film(kMove), line));
    plan::Film pinned = *plan().film(kMove);
    pinned.pinned = true;
    plan::PlanBuilder builder(plan());
    builder.put(pinned);
    window->work().commit(std::move(builder).build(), "pin");
    window->run("show-here");
    EXPECT_FALSE(plan::isShownOn(*plan().film(kMove), line));
    EXPECT_TRUE(window->notices().said().contains("pinned"));
}

TEST_F(PhasesInTheWindow, TheCardsCheckMarksFollowTheKey) {
    openPhase();
    const plan::ItemId line = put("phase-line", {at(-1500, 0), at(1500, 0)}, kHigher);
    window->work().select(line);
    settle();
    const auto isTicked = [&](const QString& film) {
        for (const QCheckBox* box : card().findChildren<QCheckBox*>()) {
            if (box->text() == film) {
                return box->isChecked();
            }
        }
        return false;
    };
    EXPECT_TRUE(isTicked("LOOK"));
    EXPECT_FALSE(isTicked("MOVE"));
    window->run("show-here");
    EXPECT_TRUE(isTicked("MOVE"));
}

TEST_F(PhasesInTheWindow, ASelectedThingIsTracedAtOnceAndToldOfWhenItIsStale) {
    openPhase();
    const plan::ItemId line = put("phase-line", {at(-1500, 0), at(1500, 0)}, kHigher);
    window->work().select(line);
    window->run("trace");
    const plan::ItemId copy = *window->work().selected();
    ASSERT_NE(copy, line);
    EXPECT_TRUE(plan::isShownOn(*plan().film(kMove), copy));
    EXPECT_TRUE(card().traced().contains("Traced from LOOK"));
    EXPECT_TRUE(window->notices().kept("traces").isEmpty());
    window->work().commit(plan::movedBy(plan(), line, Metres(0), Metres(120)), "higher moves it");
    EXPECT_TRUE(window->notices().kept("traces").contains("120 m")) << window->notices().kept("traces").toStdString();
    EXPECT_TRUE(card().traced().contains("120 m"));
    settle();
    window->run("renew-traces");
    EXPECT_EQ(plan().measure(copy)->points, plan().measure(line)->points);
    EXPECT_TRUE(window->notices().kept("traces").isEmpty());
}

TEST_F(PhasesInTheWindow, WhatLiesInABoxIsOfferedByKind) {
    openPhase();
    put("phase-line", {at(-1500, 400), at(1500, 400)}, kHigher);
    put("checkpoint", {at(300, 300)}, kHigher);
    put("checkpoint", {at(2000, 300)}, kHigher);
    window->run("trace");
    drag(at(100, 100), at(1600, 600));
    ASSERT_TRUE(offers().isVisible());
    ASSERT_EQ(offers().boxes().size(), 2U) << "a checkpoint lies outside the box";
    box("PL")->click();
    offers().button()->click();
    const plan::FilmPtr film = plan().film(kMove);
    ASSERT_EQ(film->shows.size(), 1U);
    EXPECT_EQ(plan().measure(film->shows[0].item)->kind, "checkpoint");
    EXPECT_TRUE(plan().measure(film->shows[0].item)->tracedFrom);
}

}  // namespace
}  // namespace crosstick::window
