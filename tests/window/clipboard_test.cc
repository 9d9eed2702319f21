// Copy, paste, duplicate, and the list of steps: real keys, the real clipboard, two windows.
#include <QClipboard>
#include <QMenu>
#include <QMimeData>

#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

class Clipboard : public TheWindow {
  protected:
    plan::ItemId placed(const char* action, geodesy::PlanePoint place) {
        window->run(action);
        click(place);
        QTest::keyClick(&window->table(), Qt::Key_Escape);
        settle();
        return *window->work().selected();
    }
    /// What is copied is read on another thread.
    static void paste(Window& into, const char* deed) {
        into.run(deed);
        EXPECT_TRUE(QTest::qWaitFor([&] { return into.work().errands().isIdle(); }, 20000));
    }
    [[nodiscard]] plan::MeasurePtr chosen() { return plan().measure(*window->work().selected()); }
};

TEST_F(Clipboard, WhatIsPastedIsANewThingWithAFreeNumberUnderTheHand) {
    open();
    const plan::ItemId first = placed("draw-checkpoint", at(-500, 0));
    window->run("copy");
    QTest::mouseMove(&window->table(), spot(at(400, 300)));
    paste(*window, "paste");
    ASSERT_EQ(plan().measures().size(), 2U);
    EXPECT_NE(window->work().selected(), first);
    EXPECT_EQ(chosen()->number, "2");
    EXPECT_NEAR(chosen()->points[0].easting.value(), 654400, 10);
    EXPECT_NEAR(chosen()->points[0].northing.value(), 5098300, 10);
    window->run("undo");
    EXPECT_EQ(plan().measures().size(), 1U) << "one step";
}

TEST_F(Clipboard, PastedInTheSamePlaceItLiesOnTheWorkingFilm) {
    open();
    const plan::ItemId first = placed("draw-checkpoint", at(-500, 0));
    window->run("copy");
    window->work().setWorkingFilm(Uuid{{3}});
    paste(*window, "paste-here");
    ASSERT_EQ(plan().measures().size(), 2U);
    const auto& place = chosen()->points[0];
    const auto& from = plan().measure(first)->points[0];
    EXPECT_NEAR(place.easting.value(), from.easting.value(), 1e-3);  // by longitude and latitude to 0.1 mm
    EXPECT_NEAR(place.northing.value(), from.northing.value(), 1e-3);
    EXPECT_TRUE(plan::isShownOn(*plan().film(Uuid{{3}}), chosen()->id));
    EXPECT_FALSE(plan::isShownOn(*plan().film(Uuid{{2}}), chosen()->id));
}

TEST_F(Clipboard, ARouteIsDuplicatedWithItsPoints) {
    open();
    drawRoute();
    window->run("duplicate");
    ASSERT_EQ(plan().routes().size(), 2U);
    EXPECT_EQ(plan().measures().size(), 6U);
    EXPECT_EQ(plan().routes()[1]->name, "A 2");
    EXPECT_EQ(plan().routes()[1]->vertices[0].easting - plan().routes()[0]->vertices[0].easting, Metres(125))
        << "5 mm on the film at 1:25,000";
}

TEST_F(Clipboard, GoesFromOneRunningProgramToAnother) {
    open();
    drawRoute();
    window->run("copy");
    const auto other = fresh();
    other->work().begin(smallPlan(), folder / "");
    other->work().setWorkingFilm(Uuid{{3}});
    paste(*other, "paste-here");
    ASSERT_EQ(other->work().plan().routes().size(), 1U);
    EXPECT_EQ(other->work().plan().routes()[0]->stops.size(), 3U);
    EXPECT_EQ(other->work().plan().measures().size(), 3U);
}

TEST_F(Clipboard, ForeignTextIsTakenWhereItIsGeoJsonAndToldWhereItIsNot) {
    open();
    QApplication::clipboard()->setText(QStringLiteral(
        R"({"type":"Feature","geometry":{"type":"Point","coordinates":[-31.0,46.02]},"properties":{"kind":"rally-point","number":"1"}})"));
    paste(*window, "paste-here");
    ASSERT_EQ(plan().measures().size(), 1U);
    EXPECT_EQ(chosen()->kind, "rally-point");
    for (const char* wrong : {"dear all, see you at six", "{\"type\":\"Feature\"}", "[1,2", "\xff\xfe"}) {
        QApplication::clipboard()->setText(QString::fromUtf8(wrong));
        paste(*window, "paste");
        EXPECT_EQ(plan().measures().size(), 1U) << wrong;
        EXPECT_TRUE(window->notices().said().startsWith(QStringLiteral("The clipboard holds no measures.")))
            << window->notices().said().toStdString();
    }
    QApplication::clipboard()->clear();
    paste(*window, "paste");
    EXPECT_TRUE(window->notices().said().startsWith(QStringLiteral("Nothing is copied.")));
}

class Steps : public Clipboard {};

TEST_F(Steps, AreGoneToInTheListWithWhatWasChosenAndSeenThen) {
    open();
    const plan::ItemId first = placed("draw-checkpoint", at(-500, 0));
    const table::View seen = window->table().view();
    plan::Measure second = *plan().measure(first);
    second.id = Uuid{{77}};
    window->work().commit(plan::withMeasure(plan(), second, Uuid{{2}}), "another one");
    window->work().select(second.id);
    window->table().setView(seen.centredOn(at(9000, 0)));
    EXPECT_EQ(window->work().steps(), (std::vector<std::string>{"draw checkpoint", "another one"}));
    EXPECT_EQ(window->work().stepsDone(), 2U);
    window->work().goToStep(1);
    EXPECT_EQ(plan().measures().size(), 1U);
    EXPECT_EQ(window->work().selected(), first);
    EXPECT_EQ(window->table().view().centre(), seen.centre()) << "where the next step was made";
    window->work().goToStep(2);
    EXPECT_EQ(window->work().selected(), second.id);
    EXPECT_EQ(window->table().view().centre(), at(9000, 0));
    window->work().goToStep(0);
    EXPECT_EQ(plan().measures().size(), 0U);
}

TEST_F(Steps, AreUndoneWithTheFilmThatWasWorkedOn) {
    open();
    (void)placed("draw-checkpoint", at(-500, 0));
    window->work().setWorkingFilm(Uuid{{3}});
    (void)placed("draw-checkpoint", at(500, 0));
    window->work().setWorkingFilm(Uuid{{2}});
    window->run("undo");
    EXPECT_EQ(window->work().workingFilm(), (Uuid{{3}})) << "the second one was drawn there";
    window->run("undo");
    EXPECT_EQ(window->work().workingFilm(), (Uuid{{2}}));
}

}  // namespace
}  // namespace crosstick::window
