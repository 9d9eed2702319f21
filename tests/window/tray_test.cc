// The measure tray: letters typed over the real table, its keys, its answers.
#include "tests/window/the_window.h"
#include "ui/tray/offer.h"

namespace crosstick::window {
namespace {

class Tray : public TheWindow {
  protected:
    void openWithFocus() {
        open();
        window->activateWindow();
        window->table().setFocus();
    }
    [[nodiscard]] tray::Tray& tray() { return window->tray(); }
    /// The first letter opens the tray, and the rest goes into its line.
    void type(const char* words) {
        for (const QChar letter : QString::fromLatin1(words)) {
            QTest::keyClicks(QApplication::focusWidget(), QString(letter));
        }
    }
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
    }
    [[nodiscard]] std::vector<plan::MeasurePtr> measures() {
        std::vector<plan::MeasurePtr> all;
        plan().measures().forEach([&](const plan::MeasurePtr& measure) { all.push_back(measure); });
        return all;
    }
    [[nodiscard]] plan::MeasurePtr last() {
        return window->work().selected() ? plan().measure(*window->work().selected()) : nullptr;
    }
};

TEST_F(Tray, LettersOverTheTableOpenItAndStandInItsLine) {
    openWithFocus();
    EXPECT_FALSE(tray().isVisible());
    type("cp");
    EXPECT_TRUE(tray().isVisible());
    EXPECT_EQ(tray().field()->text(), QStringLiteral("cp"));
    EXPECT_TRUE(tray().field()->hasFocus());
    EXPECT_EQ(tray().meaning(), QStringLiteral("takes CP 1 to the pointer, for MOVE"));
    ASSERT_EQ(tray().offered().size(), 5U);
    EXPECT_EQ(tray().offered()[0].entry->kind, "checkpoint");
    EXPECT_FALSE(ledger().isVisible());
    const auto pictures = tray().findChildren<tray::Offer*>();
    EXPECT_EQ(std::count_if(pictures.begin(), pictures.end(), [](const auto* one) { return one->isVisible(); }), 5);
}

TEST_F(Tray, AbbreviationGridEnterPlacesAMeasureByKeysAlone) {
    openWithFocus();
    type("cp 5427 9806");
    EXPECT_EQ(tray().meaning(), QStringLiteral("places CP 1 on MOVE"));
    key(Qt::Key_Return);
    ASSERT_TRUE(last());
    EXPECT_EQ(last()->kind, "checkpoint");
    EXPECT_EQ(last()->number, "1");
    EXPECT_NEAR(last()->points[0].easting.value(), 654270, 1e-3);
    EXPECT_NEAR(last()->points[0].northing.value(), 5098060, 1e-3);
    EXPECT_TRUE(plan::isShownOn(*plan().film(Uuid{{2}}), last()->id));
    EXPECT_EQ(tray().field()->text(), QStringLiteral("cp ")) << "the next one can follow";
    EXPECT_TRUE(tray().field()->hasFocus());
    type("25T FL 5447 9912");
    key(Qt::Key_Return);
    EXPECT_EQ(last()->number, "2");
    EXPECT_EQ(measures().size(), 2U);
    EXPECT_EQ(window->work().undoCaption(), "draw checkpoint");
}

TEST_F(Tray, FiguresAloneMeanTheNearestPlaceThatHasThemAcrossTheSquares) {
    openWithFocus();  // the middle of the table is in FL, 2 km south of FM
    type("rly 5506 0064");
    key(Qt::Key_Return);
    ASSERT_TRUE(last());
    EXPECT_NEAR(last()->points[0].northing.value(), 5100640, 1e-3);
}

TEST_F(Tray, ANumberOrANameIsSaidBehindIt) {
    openWithFocus();
    type("cp 7 5427 9806");
    key(Qt::Key_Return);
    EXPECT_EQ(last()->number, "7");
    EXPECT_EQ(tray().field()->text(), QStringLiteral("cp ")) << "the number is taken now";
    type("7 5447 9912");
    EXPECT_TRUE(tray().isRefused());
    EXPECT_TRUE(tray().meaning().contains(QStringLiteral("7 is taken. Next free: 1.")))
        << tray().meaning().toStdString();
    key(Qt::Key_Return);
    EXPECT_EQ(measures().size(), 1U) << "nothing comes of it";
}

TEST_F(Tray, ANumberTakenOnARouteIsToldWithTheRoute) {
    openWithFocus();
    drawRoute();
    window->table().setFocus();
    type("cp 1");
    EXPECT_TRUE(tray().meaning().contains(QStringLiteral("1 is taken on RTE A. Next free: 2.")))
        << tray().meaning().toStdString();
}

TEST_F(Tray, WithoutAGridTheMeasureHangsOnThePointer) {
    openWithFocus();
    type("ccp");
    EXPECT_TRUE(window->table().isDrawing());
    EXPECT_EQ(window->table().wet().what, "CCP 1");
    click(at(300, 200));
    ASSERT_TRUE(last());
    EXPECT_EQ(last()->kind, "casualty-collection-point");
    EXPECT_NEAR(last()->points[0].easting.value(), 654300, 10);
    window->table().setFocus();
    type("op");
    key(Qt::Key_Return);
    EXPECT_FALSE(tray().isVisible()) << "Enter has done with the line";
    EXPECT_TRUE(window->table().hasFocus());
    click(at(-300, 200));
    EXPECT_EQ(last()->kind, "observation-post");
}

TEST_F(Tray, ALineTakesOneGridAfterTheOtherAndAnEnterWithoutOneEndsIt) {
    openWithFocus();
    type("pl bodkin 5380 9850");
    EXPECT_EQ(tray().meaning(), QStringLiteral("sets point 1 of PL BODKIN on MOVE"));
    key(Qt::Key_Return);
    EXPECT_TRUE(measures().empty());
    EXPECT_EQ(tray().meaning(), QStringLiteral("PL BODKIN needs 2 points, 1 set: type the next grid."));
    type("5420 9870");
    key(Qt::Key_Return);
    EXPECT_EQ(tray().meaning(), QStringLiteral("ends PL BODKIN with 2 points"));
    click(at(600, 800));  // the pointer may go on with it
    type("5480 9890");
    key(Qt::Key_Return);
    key(Qt::Key_Return);
    ASSERT_TRUE(last());
    EXPECT_EQ(last()->kind, "phase-line");
    EXPECT_EQ(last()->name, "BODKIN");
    EXPECT_EQ(last()->points.size(), 4U);
    EXPECT_EQ(tray().field()->text(), QStringLiteral("pl "));
}

TEST_F(Tray, SeveralGridsInOneLineDrawAllOfIt) {
    openWithFocus();
    type("aa moss 5380 9790, 5420 9790, 5400 9820");
    EXPECT_EQ(tray().meaning(), QStringLiteral("draws AA MOSS on MOVE, 3 points"));
    key(Qt::Key_Return);
    ASSERT_TRUE(last());
    EXPECT_EQ(last()->kind, "assembly-area");
    EXPECT_EQ(last()->points.size(), 3U);
    type("5380 9790, 5420 9790");
    EXPECT_EQ(tray().meaning(), QStringLiteral("sets points 1 to 2 of AA A"));
}

TEST_F(Tray, ASignWithAnchorsEndsWithTheLastOfThem) {
    openWithFocus();
    for (const char* grid : {"sbf 5380 9790", "5400 9790", "5370 9830"}) {
        type(grid);
        key(Qt::Key_Return);
        EXPECT_TRUE(measures().empty());
    }
    type("5410 9830");
    EXPECT_EQ(tray().meaning(), QStringLiteral("draws SBF 1 on MOVE, 4 points"));
    key(Qt::Key_Return);
    ASSERT_TRUE(last());
    EXPECT_EQ(last()->kind, "support-by-fire");
}

TEST_F(Tray, UnitWordsMakeAUnitSymbol) {
    openWithFocus();
    type("1/2 inf sqd 5400 9800");
    key(Qt::Key_Return);
    ASSERT_TRUE(last());
    EXPECT_EQ(last()->kind, "unit");
    EXPECT_EQ(last()->fields.at("unit"), "1/2 inf sqd");
}

TEST_F(Tray, ArrowsAndAltWithAFigureChooseAnotherMatch) {
    openWithFocus();
    type("cp");
    key(Qt::Key_Down);
    EXPECT_EQ(tray().chosen(), 1U);
    key(Qt::Key_Up);
    key(Qt::Key_3, Qt::AltModifier);
    EXPECT_EQ(tray().chosen(), 2U);
    const std::string kind(tray().offered()[2].entry->kind);
    type(" 5400 9800");
    EXPECT_EQ(tray().offered()[tray().chosen()].entry->kind, kind) << "a grid does not change the choice";
    key(Qt::Key_Return);
    ASSERT_TRUE(last());
    EXPECT_EQ(last()->kind, kind);
}

TEST_F(Tray, WhatWasUsedLatelyComesFirstAlsoAtTheNextStart) {
    openWithFocus();
    type("pp 5400 9800");
    key(Qt::Key_Return);
    key(Qt::Key_Escape);
    type("point");
    EXPECT_EQ(tray().offered()[0].entry->kind, "passage-point");
    window = fresh();
    openWithFocus();
    type("point");
    EXPECT_EQ(tray().offered()[0].entry->kind, "passage-point");
}

TEST_F(Tray, F2RaisesItToEveryMeasureInTradeGroups) {
    openWithFocus();
    key(Qt::Key_F2);
    ASSERT_TRUE(tray().isVisible());
    EXPECT_TRUE(tray().isRaised());
    EXPECT_EQ(tray().height(), 240);
    EXPECT_EQ(tray().offered().size(), measures::catalogue().size());
    tray::Offer* objective = nullptr;
    for (tray::Offer* offer : tray().findChildren<tray::Offer*>()) {
        if (offer->isVisible() && offer->meant().entry->kind == "objective") {
            objective = offer;
        }
    }
    ASSERT_NE(objective, nullptr);
    QTest::mouseClick(objective, Qt::LeftButton);
    EXPECT_EQ(tray().field()->text().trimmed(), QStringLiteral("obj"));
    EXPECT_EQ(window->table().wet().what, "OBJ A");
    key(Qt::Key_F2);
    EXPECT_FALSE(tray().isRaised());
    EXPECT_EQ(tray().height(), 88);
}

TEST_F(Tray, ARouteIsDrawnByGridsWhileItsToolIsInHand) {
    openWithFocus();
    window->run("route");
    for (const char* grid : {"5400 9800", "5430 9830", "5450 9870"}) {
        type(grid);
        key(Qt::Key_Return);
    }
    EXPECT_EQ(tray().meaning(), QStringLiteral("ends what is being drawn."));
    key(Qt::Key_Return);
    ASSERT_EQ(plan().routes().size(), 1U);
    EXPECT_EQ(plan().routes()[0]->vertices.size(), 3U);
}

TEST_F(Tray, AStrayLetterNeverEndsWhatAnotherToolHasBegun) {
    openWithFocus();
    window->run("route");
    click(at(-1000, -500));
    click(at(0, 0));
    type("cp");
    EXPECT_TRUE(tray().isRefused());
    EXPECT_TRUE(window->table().isBusy());
    key(Qt::Key_Escape);
    click(at(800, 300));
    key(Qt::Key_Return);
    ASSERT_EQ(plan().routes().size(), 1U);
    EXPECT_EQ(plan().routes()[0]->vertices.size(), 3U);
}

TEST_F(Tray, AnotherWordNeverDropsWhatIsWet) {
    openWithFocus();
    type("pl 5380 9850");
    key(Qt::Key_Return);
    type("obj 5400 9800");
    EXPECT_TRUE(tray().isRefused());
    key(Qt::Key_Return);
    EXPECT_TRUE(window->table().isBusy());
    EXPECT_TRUE(measures().empty());
}

TEST_F(Tray, AfterAPlaceALetterBeginsAnotherMeasure) {
    openWithFocus();
    type("cp 5400 9800");
    key(Qt::Key_Return);
    type("op 5410 9810");
    EXPECT_EQ(tray().field()->text(), QStringLiteral("op 5410 9810"));
    key(Qt::Key_Return);
    EXPECT_EQ(last()->kind, "observation-post");
}

TEST_F(Tray, EscapeGivesUpWetPointsFirstThenTheTray) {
    openWithFocus();
    type("pl 5380 9850");
    key(Qt::Key_Return);
    EXPECT_TRUE(window->table().isBusy());
    key(Qt::Key_Escape);
    EXPECT_FALSE(window->table().isBusy());
    EXPECT_TRUE(tray().isVisible());
    key(Qt::Key_Escape);
    EXPECT_FALSE(tray().isVisible());
    EXPECT_FALSE(window->table().isDrawing());
    EXPECT_TRUE(window->table().hasFocus());
    EXPECT_TRUE(measures().empty());
}

TEST_F(Tray, SaysWhyAGridCannotBe) {
    openWithFocus();
    type("cp 5427 98");
    EXPECT_FALSE(tray().isRefused()) << "it is being typed";
    key(Qt::Key_Return);
    EXPECT_TRUE(tray().isRefused());
    EXPECT_TRUE(tray().meaning().contains(QStringLiteral("5427 98 is no whole grid yet")));
    EXPECT_TRUE(measures().empty());
    type("06");
    EXPECT_FALSE(tray().isRefused());
}

TEST_F(Tray, TheRaisedTraySaysWhatAMeasureIsFor) {
    open();
    window->run("tray");
    QTest::keyClicks(tray().field(), QStringLiteral("phase line"));
    const measures::Entry* entry = measures::find("phase-line");
    EXPECT_TRUE(tray().meaning().contains(QString::fromUtf8(entry->help.data(), std::ssize(entry->help))))
        << tray().meaning().toStdString();
    window->run("tray");
    EXPECT_FALSE(tray().meaning().contains(QLatin1Char('\n'))) << "the low one has no room for it";
}

TEST_F(Tray, LeavesTheTableItsShareOfTheWindow) {  // look.md 2: tray 84.4, with card 68.8 %, rim counted
    openWithFocus();
    const auto share = [this] {
        return 100.0 * window->table().width() * window->table().height() / (window->width() * window->height());
    };
    type("cp");
    QTest::qWait(30);
    EXPECT_NEAR(share(), 84.4, 0.6);
    window->run("details");
    QTest::qWait(30);
    EXPECT_NEAR(share(), 68.8, 0.6);
}

}  // namespace
}  // namespace crosstick::window
