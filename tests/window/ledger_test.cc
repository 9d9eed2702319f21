// What the ledger cannot tell it says, and asks for what is missing where it is missing.
#include <QTableView>

#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

using ledger::LegsModel;
using ledger::Want;

class TheLedger : public TheWindow {
  protected:
    /// A route on a plan whose heading was changed, the card put away.
    template <class Change>
    void openWith(Change&& change) {
        open();
        plan::Heading heading = plan().heading();
        change(heading);
        plan::PlanBuilder builder(plan());
        builder.heading(std::move(heading));
        window->work().commit(std::move(builder).build(), "begin");
        drawRoute();
        QTest::keyClick(card().labelField(), Qt::Key_Return);
        window->run("details");
        settle();
    }
    void openBare() {
        openWith([](plan::Heading& heading) {
            heading.pace.reset();
            heading.rate.reset();
        });
    }
    [[nodiscard]] std::string cell(int row, LegsModel::Column column, int role = Qt::DisplayRole) {
        return ledger().legs().index(row, column).data(role).toString().toStdString();
    }
    void answer(const char* words) {
        ledger().field()->clear();
        QTest::keyClicks(ledger().field(), QString::fromUtf8(words));
        QTest::keyClick(ledger().field(), Qt::Key_Return);
    }
};

TEST_F(TheLedger, SaysInEachCellWhyAFigureIsMissing) {
    openBare();
    for (const int row : {0, 1, 2}) {  // two legs and the sums
        EXPECT_EQ(cell(row, LegsModel::Paces), "no count");
        EXPECT_EQ(cell(row, LegsModel::Time), "no rate");
        EXPECT_EQ(cell(row, LegsModel::Arrive), "no start");
        EXPECT_EQ(cell(row, LegsModel::Climb), "no heights");
        for (const auto column : {LegsModel::Paces, LegsModel::Time, LegsModel::Arrive, LegsModel::Climb}) {
            EXPECT_NE(cell(row, column, Qt::ToolTipRole), "");
        }
    }
    EXPECT_EQ(cell(0, LegsModel::Climb, Qt::ToolTipRole), "The sheet has no heights, so climb stays unknown.");
}

TEST_F(TheLedger, AsksForOneThingAfterTheOtherUntilAllIsThere) {
    openBare();
    EXPECT_EQ(ledger().asks(), Want::Pace);
    EXPECT_TRUE(ledger().field()->isVisible());
    EXPECT_FALSE(ledger().field()->hasFocus()) << "it waits, it does not push in";
    ledger().field()->setFocus();
    answer("62");
    EXPECT_EQ(plan().heading().pace->doublePacesPer100, 62);
    EXPECT_EQ(cell(0, LegsModel::Paces), std::to_string(*ledger().legs().paper()->legs[0].paces));
    // By hand: the leg's 1118.2 m are eleven times 100 m and 18 m, and 62 double paces go into 100 m.
    EXPECT_EQ(cell(0, LegsModel::Paces, Qt::ToolTipRole), "the whole leg with beads: 11 pulled, then 11 double paces");
    EXPECT_EQ(ledger().asks(), Want::Rate);
    EXPECT_TRUE(ledger().field()->hasFocus()) << "the next answer can be typed at once";
    answer("2,5");
    EXPECT_EQ(plan().heading().rate->rate, KilometresPerHour(2.5));
    EXPECT_EQ(cell(0, LegsModel::Arrive), "no start");
    EXPECT_EQ(ledger().asks(), Want::Start);
    answer("2100");
    EXPECT_EQ(dateTimeGroup(*plan().routes().front()->start, plan().heading().zone), "132100ZMAR27");
    EXPECT_FALSE(ledger().asks());
    EXPECT_FALSE(ledger().field()->isVisible());
    EXPECT_TRUE(window->table().hasFocus());
    EXPECT_EQ(cell(2, LegsModel::Arrive), ledger().legs().paper()->arrival);
    window->run("undo");
    EXPECT_EQ(cell(2, LegsModel::Arrive), "no start");
}

TEST_F(TheLedger, RefusesAnAnswerInWordsAndChangesNothing) {
    openBare();
    const plan::Plan before = plan();
    for (const char* typed : {"many", "12", "1e9", "-62"}) {
        answer(typed);
        EXPECT_TRUE(ledger().field()->property("refused").toBool()) << typed;
        EXPECT_TRUE(ledger().questionAsked().contains(QStringLiteral("30 to 150")))
            << ledger().questionAsked().toStdString();
    }
    EXPECT_TRUE(plan() == before);
    QTest::keyClick(ledger().field(), Qt::Key_6);
    EXPECT_TRUE(ledger().questionAsked().startsWith(QStringLiteral("How often"))) << "it is asked again when one types";
    ledger().ask(Want::Rate);
    answer("0");
    EXPECT_TRUE(ledger().questionAsked().contains(QStringLiteral("0.1 to 20")));
    ledger().ask(Want::Start);
    answer("soon");
    EXPECT_TRUE(ledger().field()->property("refused").toBool());
    EXPECT_TRUE(plan() == before);
}

TEST_F(TheLedger, DoesNotAskAgainWhatWasLeftUntilItIsPressed) {
    openBare();
    ledger().field()->setFocus();
    QTest::keyClick(ledger().field(), Qt::Key_Escape);
    EXPECT_EQ(ledger().asks(), Want::Rate);
    ledger().field()->setFocus();
    QTest::keyClick(ledger().field(), Qt::Key_Return);  // nothing typed: that is no answer
    ledger().field()->setFocus();
    QTest::keyClick(ledger().field(), Qt::Key_Escape);
    EXPECT_FALSE(ledger().asks());
    EXPECT_EQ(cell(0, LegsModel::Paces), "no count");
    auto* rows = ledger().findChild<QTableView*>();
    const QRect paces = rows->visualRect(ledger().legs().index(0, LegsModel::Paces));
    QTest::mouseClick(rows->viewport(), Qt::LeftButton, Qt::NoModifier, paces.center());
    EXPECT_EQ(ledger().asks(), Want::Pace);
    EXPECT_TRUE(ledger().field()->hasFocus());
    answer("70");
    EXPECT_EQ(plan().heading().pace->doublePacesPer100, 70);
}

TEST_F(TheLedger, WhatIsKnownIsChangedWhereItStands) {
    openWith([](plan::Heading&) {});
    ledger().field()->setFocus();
    QTest::keyClick(ledger().field(), Qt::Key_Escape);  // the start can wait
    QPushButton* rate = nullptr;
    for (QPushButton* button : ledger().findChildren<QPushButton*>()) {
        rate = button->isVisible() && button->text().contains(QStringLiteral("km/h")) ? button : rate;
    }
    ASSERT_NE(rate, nullptr);
    QTest::mouseClick(rate, Qt::LeftButton);
    EXPECT_EQ(ledger().asks(), Want::Rate);
    answer("4");
    EXPECT_EQ(plan().heading().rate->rate, KilometresPerHour(4));
}

TEST_F(TheLedger, AnswersFillTheLegThatIsBeingDrawn) {
    open();
    plan::Heading heading = plan().heading();
    heading.pace.reset();
    plan::PlanBuilder builder(plan());
    builder.heading(std::move(heading));
    window->work().commit(std::move(builder).build(), "begin");
    window->run("route");
    click(at(-1000, 0));
    QTest::mouseMove(&window->table(), spot(at(0, 0)));
    ASSERT_TRUE(ledger().legs().isLive(0));
    EXPECT_EQ(cell(0, LegsModel::Paces), "no count");
    EXPECT_EQ(ledger().asks(), Want::Pace);
    answer("62");
    EXPECT_NEAR(std::stod(cell(0, LegsModel::Paces)), 620, 8);  // 1000 m at 62, within the pixels clicked
    EXPECT_TRUE(window->table().isDrawing());
    EXPECT_FALSE(ledger().asks()) << "a route that is not drawn yet has no start";
}

TEST_F(TheLedger, WithoutADayItAsksForTheDay) {
    openWith([](plan::Heading& heading) { heading.date = {}; });
    EXPECT_EQ(ledger().legs().rowCount(), 0);
    EXPECT_EQ(ledger().asks(), Want::Day);
    answer("13 March");
    EXPECT_TRUE(ledger().field()->property("refused").toBool());
    answer("2027-03-13");
    EXPECT_EQ(ledger().legs().rowCount(), 3);
}

TEST_F(TheLedger, WithoutTheSheetsAngleItAsksForItOrTakesTheModel) {
    openWith([](plan::Heading& heading) { heading.declination = plan::DeclinationSource::Sheet; });
    EXPECT_EQ(ledger().legs().rowCount(), 0);
    EXPECT_FALSE(ledger().asks()) << "no sheet has an angle to be typed";
    plan::Sheet sheet;
    sheet.id = Uuid{{9}};
    sheet.path = "sheet.tif";
    sheet.crs = "EPSG:32625";
    sheet.columns = sheet.rows = 1000;
    sheet.placement = {at(-5000, 5000), 10, 0, 0, -10};
    plan::PlanBuilder builder(plan());
    builder.put(sheet);
    window->work().commit(std::move(builder).build(), "lay a sheet");
    rest();
    EXPECT_EQ(ledger().asks(), Want::Angle);
    answer("11");
    EXPECT_TRUE(ledger().field()->property("refused").toBool()) << "to which side?";
    answer("11 W");
    ASSERT_TRUE(ledger().legs().figures());
    EXPECT_EQ(ledger().legs().figures()->gm.angle, Degrees(-11));
    window->run("undo");
    ledger().ask(Want::Angle);
    answer("190 mils w");
    EXPECT_NEAR(ledger().legs().figures()->gm.angle.value(), -190 * 360.0 / 6400, 1e-9);
    window->run("undo");
    ledger().ask(Want::Angle);
    answer("model");
    EXPECT_EQ(plan().heading().declination, plan::DeclinationSource::Model);
    EXPECT_TRUE(ledger().legs().figures());
}

TEST_F(TheLedger, WhatItAsksForIsNotCut) {
    openBare();
    for (const Want want : {Want::Pace, Want::Rate, Want::Start}) {
        ledger().ask(want);
        QTest::qWait(20);
        for (const QLabel* label : ledger().findChildren<QLabel*>()) {
            if (label->isVisible()) {
                EXPECT_GE(label->height(), label->heightForWidth(label->width())) << label->text().toStdString();
            }
        }
        EXPECT_LE(ledger().field()->mapTo(&ledger(), ledger().field()->rect().bottomRight()).y(), ledger().height());
        EXPECT_GE(ledger().field()->height(), 24);
    }
}

}  // namespace
}  // namespace crosstick::window
