// Settings, the plan's own card, the list of everything that can be done, the page of help.
#include <random>
#include <set>

#include <QAbstractSpinBox>
#include <QComboBox>
#include <QFile>
#include <QMenuBar>
#include <QRegularExpression>
#include <QSettings>
#include <QSpinBox>
#include <QToolButton>

#include "tests/places.h"
#include "tests/window/the_window.h"

namespace crosstick::window {
namespace {

class Choices : public TheWindow {
  protected:
    [[nodiscard]] settings::SettingsPage& page() { return window->settingsPage(); }
    template <class Control>
    [[nodiscard]] Control* named(QWidget& in, const char* name) {
        for (Control* control : in.findChildren<Control*>()) {
            if (control->accessibleName() == QString::fromUtf8(name)) {
                return control;
            }
        }
        ADD_FAILURE() << "no control " << name;
        return nullptr;
    }
    void type(QWidget& in, const char* name, const char* words) {
        auto* field = named<QLineEdit>(in, name);
        ASSERT_NE(field, nullptr);
        field->setFocus();
        field->selectAll();
        QTest::keyClicks(field, QString::fromUtf8(words));
        QTest::keyClick(field, Qt::Key_Return);
    }
};

TEST_F(Choices, LawWhatIsWrittenIsRead) {
    std::mt19937 chance(11);
    for (int n = 0; n < 60; ++n) {
        SCOPED_TRACE("round " + std::to_string(n) + " of seed 11");
        settings::Choices choices;
        choices.angles = chance() % 2 == 0 ? geodesy::AngleUnit::Mils : geodesy::AngleUnit::Degrees;
        choices.gauge = drawing::Gauge::of(4 + 0.5 * static_cast<double>(chance() % 9), 0.5, 2);
        choices.marking = chance() % 2 == 0 ? QStringLiteral("EXERCISE, \"x\" = y; z") : QString();
        choices.author = QStringLiteral("Lt Arden");
        choices.zone = "ABCZYNK"[chance() % 7];
        choices.opens = static_cast<settings::Opens>(chance() % 3);
        choices.inserted = chance() % 2 == 0 ? plan::Inserted::Lettered : plan::Inserted::NextFree;
        choices.snap.lines = chance() % 2 == 0 ? drafting::SnapWish::Lines::Yes : drafting::SnapWish::Lines::No;
        choices.snap.grid = chance() % 2 == 0 ? drafting::SnapWish::Grid::Yes : drafting::SnapWish::Grid::No;
        choices.handrail = Metres(1 + static_cast<int>(chance() % 10000));
        choices.dimming = 1 + static_cast<int>(chance() % 6);
        choices.cacheGigabytes = 1 + static_cast<int>(chance() % 500);
        {
            QSettings to(QString::fromStdString((folder / "law.ini").string()), QSettings::IniFormat);
            settings::write(choices, to);
        }
        const QSettings from(QString::fromStdString((folder / "law.ini").string()), QSettings::IniFormat);
        EXPECT_TRUE(settings::read(from) == choices);
    }
}

TEST_F(Choices, AFileOfNonsenseGivesTheDefaults) {
    QSettings to(QString::fromStdString((folder / "bad.ini").string()), QSettings::IniFormat);
    for (const char* key :
         {"choices/azimuths", "choices/sizes", "choices/zone", "choices/opens", "dimming", "choices/cacheGigabytes",
          "insertedNumbers", "choices/drawnToLines", "choices/drawnToGrid", "choices/handrail"}) {
        to.setValue(QString::fromLatin1(key), QStringLiteral("99 furlongs"));
    }
    EXPECT_TRUE(settings::read(to) == settings::Choices{});
}

TEST_F(Choices, ASettingHoldsAtOnceAndAtTheNextStart) {
    window->run("settings");
    ASSERT_TRUE(page().isVisible());
    auto* angles = named<QComboBox>(page(), "Azimuths");
    angles->setCurrentIndex(1);
    Q_EMIT angles->activated(1);
    EXPECT_EQ(window->work().angles(), geodesy::AngleUnit::Mils);
    type(page(), "Marking of new plans", "EXERCISE");
    type(page(), "Time zone of new plans, its letter", "o");
    type(page(), "Symbols, pen, letters of new plans, mm", "7 0.5 2.5");
    QTest::keyClick(&page(), Qt::Key_Escape);
    EXPECT_FALSE(page().isVisible());
    window = fresh();
    EXPECT_EQ(window->work().angles(), geodesy::AngleUnit::Mils);
    window->run("grid-alone");
    window->question().field()->setText(QStringLiteral("25T FL 54 97"));
    QTest::keyClick(window->question().field(), Qt::Key_Return);
    QTest::keyClick(window->question().field(), Qt::Key_Return);
    rest();
    ASSERT_TRUE(window->work().isOpen());
    EXPECT_EQ(plan().heading().marking, "EXERCISE");
    EXPECT_EQ(plan().heading().zone.letter, 'O');
    EXPECT_EQ(plan().heading().zone.offset, std::chrono::minutes(-120));
    EXPECT_EQ(plan().heading().gauge, drawing::Gauge::of(7, 0.5, 2.5));
}

TEST_F(Choices, WhatHoldsWhileDrawingIsChosenOnceAndSeenInTheMenus) {
    window->run("settings");
    const auto choose = [this](const char* name, int which) {
        auto* box = named<QComboBox>(page(), name);
        box->setCurrentIndex(which);
        Q_EMIT box->activated(which);
    };
    choose("A checkpoint put between numbers given out", 1);
    choose("The hand is drawn to", 3);
    type(page(), "Handrail, m beside what it runs along", "150");
    type(page(), "Handrail, m beside what it runs along", "0");
    EXPECT_TRUE(page().refusal().contains(QStringLiteral("1 to 10000"))) << page().refusal().toStdString();
    window = fresh();
    EXPECT_EQ(window->work().inserted(), plan::Inserted::Lettered);
    EXPECT_EQ(window->table().snapWish().lines, drafting::SnapWish::Lines::Yes);
    EXPECT_EQ(window->table().snapWish().grid, drafting::SnapWish::Grid::Yes);
    for (const char* name : {"inserted-letters", "snap-lines", "snap-grid"}) {
        EXPECT_TRUE(window->actionsByName().at(name)->isChecked()) << name;
    }
    open();
    window->run("handrail-far");
    EXPECT_EQ(window->question().field()->text(), QStringLiteral("150"));
    QTest::keyClick(window->question().field(), Qt::Key_Escape);
    window->run("inserted-letters");
    window->run("settings");
    EXPECT_EQ(named<QComboBox>(page(), "A checkpoint put between numbers given out")->currentIndex(), 0)
        << "the menu's word and the page's are one";
}

TEST_F(Choices, AWrongSettingIsRefusedWhereItIsTyped) {
    window->run("settings");
    type(page(), "Symbols, pen, letters of new plans, mm", "12 0.5 2");
    EXPECT_TRUE(page().refusal().contains(QStringLiteral("symbols 4 to 8"))) << page().refusal().toStdString();
    EXPECT_EQ(page().choices().gauge, drawing::Gauge{});
    type(page(), "Time zone of new plans, its letter", "J");
    EXPECT_EQ(page().choices().zone, 'Z');
}

TEST_F(Choices, NightAtTheStartIsAsTheSettingSays) {
    window->setLight(look::Light::Day);
    window->run("settings");
    auto* opens = named<QComboBox>(page(), "The window opens");
    opens->setCurrentIndex(2);
    Q_EMIT opens->activated(2);
    window = fresh();
    EXPECT_TRUE(window->actionsByName().at("night")->isChecked());
}

TEST_F(Choices, EachSettingSaysItsDefaultAndWhy) {
    window->run("settings");
    int controls = 0;
    for (QWidget* control : page().findChildren<QWidget*>()) {
        const bool isOne = qobject_cast<QComboBox*>(control) != nullptr ||
                           qobject_cast<QSpinBox*>(control) != nullptr ||
                           (qobject_cast<QLineEdit*>(control) != nullptr &&
                            qobject_cast<QSpinBox*>(control->parentWidget()) == nullptr);
        if (isOne) {
            EXPECT_FALSE(control->accessibleDescription().isEmpty()) << control->accessibleName().toStdString();
            ++controls;
        }
    }
    EXPECT_EQ(controls, 12);
}

TEST_F(Choices, ThePlansCardTakesWhatStandsOnEveryPaper) {
    open();
    window->run("plan-card");
    ASSERT_TRUE(card().isVisible());
    ASSERT_TRUE(QApplication::focusWidget());
    EXPECT_EQ(QApplication::focusWidget()->accessibleName(), QStringLiteral("Title"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_EQ(QApplication::focusWidget()->accessibleName(), QStringLiteral("Marking"))
        << "one is typed after the other";
    type(card(), "Title", "SLOW KETTLE");
    window->run("plan-card");
    type(card(), "Marking", "EXERCISE");
    type(card(), "Prepared by", "Lt Arden");
    type(card(), "Unit", "2/C");
    type(card(), "Distribution", "squads, HQ");
    type(card(), "Cautions", "No fires");
    type(card(), "Time zone, its letter", "o");
    type(card(), "Date of the work: year, month, day", "2027-03-14");
    type(card(), "Effective, date-time group", "132100OMAR27");
    const plan::Heading& heading = plan().heading();
    EXPECT_EQ(heading.name, "SLOW KETTLE");
    EXPECT_EQ(heading.marking, "EXERCISE");
    EXPECT_EQ(heading.author, "Lt Arden");
    EXPECT_EQ(heading.unit, "2/C");
    EXPECT_EQ(heading.distribution, "squads, HQ");
    EXPECT_EQ(heading.cautions, "No fires");
    EXPECT_EQ(heading.zone.letter, 'O');
    EXPECT_EQ(isoDate(heading.date), "2027-03-14");
    ASSERT_TRUE(heading.effective.has_value());
    EXPECT_EQ(dateTimeGroup(*heading.effective, heading.zone), "132100OMAR27");
    EXPECT_EQ(card().title(), QStringLiteral("SLOW KETTLE"));
    for (int n = 0; n < 9; ++n) {
        window->run("undo");
    }
    EXPECT_EQ(plan().heading(), smallPlan().heading()) << "each is one step";
    EXPECT_EQ(named<QLineEdit>(card(), "Marking")->text(), QString()) << "the fields follow";
}

TEST_F(Choices, ThePlansCardRefusesWhatCannotBe) {
    open();
    window->run("plan-card");
    const plan::Plan before = plan();
    for (const auto& [name, words] : {std::pair("Title", ""), std::pair("Time zone, its letter", "J"),
                                      std::pair("Date of the work: year, month, day", "2027-02-30"),
                                      std::pair("Effective, date-time group", "tomorrow")}) {
        auto* field = named<QLineEdit>(card(), name);
        ASSERT_NE(field, nullptr);
        field->setFocus();
        field->setText(QString::fromLatin1(words));
        QTest::keyClick(field, Qt::Key_Return);
        EXPECT_TRUE(field->property("refused").toBool()) << name;
        EXPECT_TRUE(plan() == before) << name;
    }
}

TEST_F(Choices, EverythingThatCanBeDoneIsListedFoundAndDone) {
    open();
    window->run("actions");
    auto* list = window->findChild<ActionsCard*>();
    ASSERT_TRUE(list->isVisible());
    EXPECT_EQ(QApplication::focusWidget(), list->field());
    std::set<QString> listed;
    for (int n = 0; n < list->list()->count(); ++n) {
        listed.insert(list->list()->item(n)->text());
    }
    for (const auto& [name, action] : window->actionsByName()) {
        const QString words = action->text().section(QLatin1Char('\t'), 0, 0).remove(QLatin1Char('&'));
        EXPECT_TRUE(listed.contains(words)) << name;
    }
    QTest::keyClicks(list->field(), QStringLiteral("mils az"));
    ASSERT_EQ(list->list()->count(), 1) << "all words, in any order";
    QTest::keyClick(list->field(), Qt::Key_Return);
    EXPECT_EQ(window->work().angles(), geodesy::AngleUnit::Mils);
    EXPECT_FALSE(list->isVisible());
    window->run("actions");
    QTest::keyClicks(list->field(), QStringLiteral("no such thing"));
    EXPECT_EQ(list->list()->count(), 0);
    const auto isSaid = [list] {
        const auto labels = list->findChildren<QLabel*>();
        return std::any_of(labels.begin(), labels.end(), [](const QLabel* label) {
            return label->isVisible() && label->text().contains(QStringLiteral("Nothing is called that"));
        });
    };
    EXPECT_TRUE(isSaid());
    list->field()->clear();
    EXPECT_FALSE(isSaid());
    QTest::keyClicks(list->field(), QStringLiteral("no such thing"));
    QTest::keyClick(list->field(), Qt::Key_Return);
    QTest::keyClick(list->field(), Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), &window->table());
}

TEST_F(Choices, WhatOnlyTheMenuOfAThingOffersIsListedWhileTheThingIsChosen) {
    open();
    const auto rows = [this](const char* typed) {
        window->run("actions");
        auto* list = window->findChild<ActionsCard*>();
        QTest::keyClicks(list->field(), QString::fromUtf8(typed));
        QStringList words;
        for (int n = 0; n < list->list()->count(); ++n) {
            words << list->list()->item(n)->text();
        }
        QTest::keyClick(list->field(), Qt::Key_Escape);
        return words;
    };
    EXPECT_TRUE(rows("becomes").isEmpty());
    window->run("draw-phase-line");
    click(at(-1500, 0));
    click(at(1500, 0));
    QTest::keyClick(&window->table(), Qt::Key_Return);
    const plan::ItemId line = *window->work().selected();
    const QStringList becomes = rows("becomes limit");
    EXPECT_TRUE(becomes.contains(QStringLiteral("Limit of advance"))) << becomes.join(QLatin1Char('|')).toStdString();
    EXPECT_TRUE(rows("move film look").contains(QStringLiteral("LOOK"))) << "what fills itself when it opens";
    EXPECT_EQ(rows("wipe off").count(QStringLiteral("Wipe off")), 1) << "each once";
    window->run("actions");
    auto* list = window->findChild<ActionsCard*>();
    QTest::keyClicks(list->field(), QStringLiteral("becomes limit of adv"));
    QTest::keyClick(list->field(), Qt::Key_Return);
    EXPECT_EQ(plan().measure(line)->kind, "limit-of-advance");
}

TEST_F(Choices, AKeyThatATipNamesDoesSomething) {
    open();
    std::set<QString> keys;
    for (const auto& [name, action] : window->actionsByName()) {
        keys.insert(action->shortcut().toString());
    }
    static const QRegularExpression kKey(QStringLiteral("\\b((?:Ctrl\\+|Shift\\+|Alt\\+)+[A-Z0-9,]|F\\d+)"));
    int named = 0;
    const auto walk = [&](const char* where) {
        settle();
        for (const QWidget* part : window->findChildren<QWidget*>()) {
            for (auto found = kKey.globalMatch(part->toolTip()); found.hasNext(); ++named) {
                const QString key = found.next().captured(1);
                EXPECT_TRUE(keys.contains(key)) << where << ": " << part->toolTip().toStdString();
            }
        }
    };
    drawRoute();
    walk("card of a route");
    window->run("tray");
    walk("tray");
    window->run("settings");
    walk("settings");
    window->run("settings");
    window->run("copies");
    EXPECT_TRUE(QTest::qWaitFor([this] { return window->copies().isReady(); }, 20000));
    walk("copies");
    EXPECT_GT(named, 4);
}

TEST_F(Choices, AnActionThatCannotBeDoneNowIsListedAndNotDone) {
    window->run("actions");
    auto* list = window->findChild<ActionsCard*>();
    ASSERT_TRUE(list->isVisible()) << "in the empty window too";
    QTest::keyClicks(list->field(), QStringLiteral("save as"));
    ASSERT_GE(list->list()->count(), 1);
    QTest::keyClick(list->field(), Qt::Key_Return);
    EXPECT_TRUE(list->isVisible());
    QTest::keyClick(list->field(), Qt::Key_Escape);
    EXPECT_TRUE(window->findChild<start::StartPage*>()->isVisible());
}

TEST_F(Choices, TheKeysThatHelpNamesAreThoseOfTheWindow) {
    QFile page(QString::fromStdString((places::share() / "manual" / "help.md").string()));
    ASSERT_TRUE(page.open(QIODevice::ReadOnly));
    const QString words = QString::fromUtf8(page.readAll());
    std::set<QString> keys;
    for (const auto& [name, action] : window->actionsByName()) {
        keys.insert(action->shortcut().toString());
    }
    static const QRegularExpression kKey(
        QStringLiteral("\\*\\*((?:Ctrl\\+|Shift\\+|Alt\\+)+[A-Z0-9+-]\\w*|F\\d+)\\*\\*"));
    int named = 0;
    for (auto found = kKey.globalMatch(words); found.hasNext(); ++named) {
        const QString key = found.next().captured(1);
        EXPECT_TRUE(keys.contains(key)) << key.toStdString() << " does nothing";
    }
    EXPECT_GT(named, 20);
}

TEST_F(Choices, EveryButtonAndFieldThatIsSeenHasATip) {
    open();
    const auto walk = [this](const char* where) {
        settle();
        int seen = 0;
        for (const QWidget* part : window->findChildren<QWidget*>()) {
            const bool isOne = qobject_cast<const QPushButton*>(part) != nullptr ||
                               qobject_cast<const QToolButton*>(part) != nullptr ||
                               (qobject_cast<const QLineEdit*>(part) != nullptr &&
                                qobject_cast<const QAbstractSpinBox*>(part->parentWidget()) == nullptr);
            if (isOne && part->isVisible() && !part->objectName().startsWith(QStringLiteral("qt_"))) {
                EXPECT_FALSE(part->toolTip().isEmpty() && part->accessibleDescription().isEmpty())
                    << where << ": " << part->metaObject()->className() << ' ' << part->accessibleName().toStdString();
                ++seen;
            }
        }
        EXPECT_GT(seen, 0) << where;
    };
    drawRoute();
    walk("card of a route");
    window->run("draw-unit");
    click(at(300, 300));
    walk("card of a unit");
    window->run("plan-card");
    walk("card of the plan");
    window->run("new-phase");
    walk("question");
    QTest::keyClick(window->question().field(), Qt::Key_Escape);
    window->run("settings");
    walk("settings");
    window->run("settings");
    window->run("copies");
    EXPECT_TRUE(QTest::qWaitFor([this] { return window->copies().isReady(); }, 20000));
    walk("copies");
}

TEST_F(Choices, HelpComesAndGoesByItsKeys) {
    open();
    window->run("help");
    auto* help = window->findChild<HelpPage*>();
    ASSERT_TRUE(help->isVisible());
    EXPECT_TRUE(help->toPlainText().contains(QStringLiteral("Crosstick in one page")));
    settle();
    EXPECT_LE(help->document()->size().width(), help->viewport()->width()) << "no line is cut off";
    EXPECT_GT(help->document()->textWidth(), 600);
    window->resize(700, 500);
    settle();
    EXPECT_LE(help->document()->size().width(), help->viewport()->width());
    window->resize(1366, 768);
    QTest::keyClick(help, Qt::Key_Escape);
    EXPECT_TRUE(window->table().isVisible());
    window->run("help");
    window->run("settings");
    QTest::keyClick(&page(), Qt::Key_Escape);
    EXPECT_TRUE(window->table().isVisible()) << "not back to help: one page lies over the desk";
}

}  // namespace
}  // namespace crosstick::window
