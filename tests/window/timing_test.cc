// Times and paces are set on a card, every field answers wrong input where it is typed, and the ledger shows at once
// what follows.
#include <QLabel>
#include <QPushButton>

#include "core/movement/rate_text.h"
#include "tests/window/the_window.h"
#include "ui/timing/timing_card.h"

namespace crosstick::window {
namespace {

using ledger::LegsModel;

class TheTimingCard : public TheWindow {
  protected:
    void SetUp() override {
        open();
        drawRoute();
        QTest::keyClick(card().labelField(), Qt::Key_Return);
        window->run("timing");
        settle();
    }
    [[nodiscard]] timing::TimingCard& timing() { return *window->findChild<timing::TimingCard*>(); }
    [[nodiscard]] QLineEdit& edit(const char* name) {
        for (QLineEdit* one : timing().findChildren<QLineEdit*>()) {
            if (one->accessibleName() == QString::fromUtf8(name) && one->isVisibleTo(&timing())) {
                return *one;
            }
        }
        ADD_FAILURE() << "no field " << name;
        return *timing().findChild<QLineEdit*>();
    }
    void type(const char* name, const char* words) {
        QLineEdit& field = edit(name);
        field.setFocus();
        field.clear();
        QTest::keyClicks(&field, QString::fromUtf8(words));
        QTest::keyClick(&field, Qt::Key_Return);
    }
    void press(const char* words) {
        for (QPushButton* one : timing().findChildren<QPushButton*>()) {
            if (one->text() == QString::fromUtf8(words)) {
                QTest::mouseClick(one, Qt::LeftButton);
                return;
            }
        }
        ADD_FAILURE() << "no button " << words;
    }
    [[nodiscard]] bool tells(const char* words) {
        for (QLabel* one : timing().findChildren<QLabel*>()) {
            if (one->isVisibleTo(&timing()) && one->text().contains(QString::fromUtf8(words))) {
                return true;
            }
        }
        return false;
    }
    [[nodiscard]] std::string total(LegsModel::Column column) {
        return ledger().legs().index(2, column).data(Qt::DisplayRole).toString().toStdString();
    }
    [[nodiscard]] std::string start() {
        return dateTimeGroup(plan().routes().front()->start.value(), plan().heading().zone);
    }
};

TEST_F(TheTimingCard, TakesTheRuleAndItsRates) {
    const std::string before = total(LegsModel::Time);
    press("ground and light");
    ASSERT_TRUE(plan().heading().timing);
    EXPECT_EQ(edit("Road, by day").text().toStdString(), "4");
    EXPECT_EQ(edit("Cross-country, night").text().toStdString(), "1.6");
    EXPECT_TRUE(tells("FM 21-18"));
    EXPECT_NE(total(LegsModel::Time), before) << "the ledger follows at once";
    type("Cross-country, night", "2,5");
    EXPECT_EQ(plan().heading().timing->rates.crossCountryByNight, KilometresPerHour(2.5));
    EXPECT_TRUE(tells("Yours where not"));
    const plan::Plan unchanged = plan();
    type("Cross-country, night", "fast");
    EXPECT_TRUE(plan() == unchanged);
    EXPECT_TRUE(edit("Cross-country, night").property("refused").toBool());
    EXPECT_TRUE(tells("0.1 to 20"));
    QTest::keyClick(&edit("Cross-country, night"), Qt::Key_Escape);
    EXPECT_EQ(edit("Cross-country, night").text().toStdString(), "2.5");
    EXPECT_TRUE(window->table().hasFocus());
    press("on roads");
    EXPECT_EQ(plan().heading().timing->going, plan::Going::Road);
    press("Tobler");
    EXPECT_EQ(plan().heading().timing->rule, plan::TimeRule::Tobler);
    EXPECT_TRUE(tells("6 exp(-3.5"));
    press("one rate");
    EXPECT_FALSE(plan().heading().timing);
    window->run("undo");
    EXPECT_EQ(plan().heading().timing->rule, plan::TimeRule::Tobler);
}

TEST_F(TheTimingCard, TakesAStartOrGoesBackwardsFromWhenAllHaveToBeIn) {
    type("The route's time", "2100");
    EXPECT_EQ(start(), "132100ZMAR27");
    EXPECT_TRUE(tells("Closes 1322")) << "2 km at 2 km/h, head and tail alike without a column";
    press("closed NLT");
    type("The route's time", "soon");
    EXPECT_TRUE(edit("The route's time").property("refused").toBool());
    EXPECT_EQ(start(), "132100ZMAR27");
    type("The route's time", "140115ZMAR27");
    EXPECT_EQ(edit("The route's time").text().toStdString(), "140115ZMAR27");
    const auto arrival = ledger().legs().figures()->arrival.value();
    const Instant asked = parseDateTimeGroup("140115ZMAR27").value();
    EXPECT_LE(arrival, asked);
    EXPECT_GT(arrival, asked - std::chrono::seconds(61));
    EXPECT_TRUE(tells("min before 0115"));
    press("ground and light");  // a slower rate: the start stays, and the card says that it is late
    EXPECT_TRUE(tells("after 0115. Give the time again."));
    const auto closed = plan().routes().front()->notLaterThan;
    EXPECT_EQ(closed, asked) << "it is the plan's, so that a saved plan still knows what its start is for";
    type("The route's time", "");
    EXPECT_FALSE(plan().routes().front()->notLaterThan);
}

TEST_F(TheTimingCard, TakesTheNavigatorsOwnErrorsAndSaysHowLongALegIsSafeByThem) {
    const std::string name = "Navigator off by: pace in %, compass in degrees";
    EXPECT_TRUE(tells("Without them 5 % 2\u00b0, our own figures from no publication."));
    EXPECT_TRUE(tells("50 m: 1000 m."));
    type(name.c_str(), "4 1.5");
    EXPECT_EQ(plan().heading().navigator, (plan::NavigatorErrors{0.04, Degrees(1.5)}));
    EXPECT_TRUE(tells("50 m: 1250 m."));
    EXPECT_FALSE(tells("our own figures"));
    type(name.c_str(), "much");
    EXPECT_TRUE(edit(name.c_str()).property("refused").toBool());
    type(name.c_str(), "");
    EXPECT_FALSE(plan().heading().navigator);
}

TEST_F(TheTimingCard, WorksBackwardsThroughWhatIsDoneBefore) {
    type("The route's time", "2100");
    type("Preparation: one more", "orders 60");
    EXPECT_TRUE(edit("Preparation: one more").hasFocus()) << "who adds one may add another";
    type("Preparation: one more", "rehearsal 1:30");
    ASSERT_EQ(plan().heading().preparations.size(), 2U);
    EXPECT_EQ(plan().heading().preparations[1].lasts, Minutes(90));
    EXPECT_TRUE(tells("1830 to 1930"));
    EXPECT_TRUE(tells("1930 to 2100"));
    type("Preparation: one more", "rest");
    EXPECT_TRUE(tells("write what is done and how long"));
    EXPECT_EQ(plan().heading().preparations.size(), 2U);
    type("Preparation 1", "orders 45");
    EXPECT_TRUE(tells("1845 to 1930"));
    type("Preparation 1", "");
    ASSERT_EQ(plan().heading().preparations.size(), 1U);
    EXPECT_EQ(plan().heading().preparations.front().name, "rehearsal");
    type("H-hour", "2330");
    EXPECT_EQ(dateTimeGroup(*plan().heading().hHour, plan().heading().zone), "132330ZMAR27");
}

TEST_F(TheTimingCard, CountsPacesByCoursesAndSaysWhereAFactorIsOurs) {
    type("Course: one more", "600 372");
    EXPECT_TRUE(tells("cross-country by day, measured over 600 m"));
    EXPECT_TRUE(tells("x 1.1 for the night, our own factor"));
    EXPECT_EQ(ledger().legs().figures()->counts.front().pace.basis, movement::PaceBasis::OurFactor) << "no start yet";
    type("The route's time", "1200");
    EXPECT_EQ(ledger().legs().figures()->counts.front().pace.basis, movement::PaceBasis::Measured);
    EXPECT_EQ(total(LegsModel::Paces), std::to_string(ledger().legs().paper()->paces.value()));
    type("Course: one more", "600 20");
    EXPECT_TRUE(tells("30 to 150 are walked"));
    EXPECT_EQ(plan().heading().courses.size(), 1U);
    type("Or one count: double paces per 100 m", "70");
    EXPECT_TRUE(plan().heading().courses.empty());
    EXPECT_EQ(movement::shortPaceText(*ledger().legs().figures()), "70 paces per 100 m, yours");
}

TEST_F(TheTimingCard, TakesTheDetailsPlaceAndGivesItBack) {
    EXPECT_TRUE(timing().isVisible());
    EXPECT_FALSE(card().isVisible());
    window->run("details");
    EXPECT_FALSE(timing().isVisible());
    EXPECT_TRUE(card().isVisible());
    window->run("timing");
    window->run("timing");
    EXPECT_FALSE(timing().isVisible());
}

}  // namespace
}  // namespace crosstick::window
