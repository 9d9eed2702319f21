#include "ui/window/window.h"

#include <QAccessible>
#include <QApplication>
#include <QCloseEvent>
#include <QHBoxLayout>
#include <QMenuBar>
#include <QPainter>
#include <QScreen>
#include <QSettings>
#include <QVBoxLayout>

#include "core/sheets/faults.h"
#include "ui/look/spoken.h"

namespace crosstick::window {
namespace {

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

}  // namespace

Window::Window(Outside outside, QWidget* parent)
    : QMainWindow(parent),
      outside_(std::move(outside)),
      settings_(std::make_unique<QSettings>(text(outside_.settings.string()), QSettings::IniFormat)),
      work_({outside_.share, outside_.state, outside_.reader, outside_.seed, outside_.beforeErrand}) {
    setWindowTitle(tr("Crosstick"));
    setMinimumSize(683, 384);
    setAcceptDrops(true);
    const settings::Choices choices = settings::read(*settings_);
    const bool wasNight = settings_->value(QStringLiteral("light")).toString() == QStringLiteral("night");
    const bool isNight =
        choices.opens == settings::Opens::AsLeft ? wasNight : choices.opens == settings::Opens::ByNight;
    light_ = isNight ? look::Light::Night : look::Light::Day;
    dimming_ = choices.dimming;
    // Where no session bus runs, the first look for a screen reader forks a process for one, and that process never
    // ends if another thread is at work just then: so first this, then the first errand.
    (void)QAccessible::isActive();
    if (!outside_.plan.empty()) {  // it is read while the parts are made
        comes_ = true;
        work_.open(outside_.plan, [this](const Result<void>& opened) { takeOpened(opened); });
    }
    // Parts take their face from the application when they are made, so it is dressed before and after.
    if (auto* application = qobject_cast<QApplication*>(QCoreApplication::instance())) {
        look::dress(*application, light_, letters());
    }
    if (auto faces = press::Faces::open(outside_.share / "faces", press::Faces::WideFace::WhenNeeded)) {
        faces_.emplace(std::move(*faces));
    }
    buildParts();
    hold(choices);
    connectParts();
    setLight(light_);
    resize(QSize(1366, 768).boundedTo(screen()->availableSize()));
    restoreGeometry(settings_->value(QStringLiteral("geometry")).toByteArray());
    renewRecent();
    renewLeftovers();
    arrange();
    work_.errands().hear();
}

Window::~Window() {
    (void)end();
    work_.disconnect(this);
    work_.errands().disconnect(doing_);
}

work::Ending Window::end() {
    hide();  // the panels look at the work once more while they are hidden: it must still be there
    return work_.errands().finish();
}

void Window::connectParts() {
    connectWork();
    connectTable();
    connectPages();
    connectTray();
}

void Window::connectWork() {
    connect(&work_, &work::Work::planReplaced, this, [this] {
        offers_->leave();
        tellOfTraces();
        pages_->setCurrentWidget(desk_);
        question_->leave();
        say({});
        layTrayAway();
        table_->setFocus();
    });
    connect(&work_, &work::Work::planChanged, this, [this] {
        arrange();
        tellOfTraces();
        // An undo, a film named: what is looked at is what would print.
        if (copies_.made() != nullptr && pages_->currentWidget() == copies_.made()) {
            copies_->open();
        }
    });
    connect(&work_, &work::Work::wetChanged, this, [this] { arrange(); });
    connect(&work_, &work::Work::tableChanged, this, [this] { renewHead(); });
    connect(&work_, &work::Work::selectionChanged, this, [this] {
        detailsWanted_ = detailsWanted_ || work_.selected().has_value();
        timingWanted_ = timingWanted_ && work_.selected() && work_.plan().route(*work_.selected());
        actionsWanted_ = false;
        arrange();
    });
    connect(&work_, &work::Work::groundChanged, this, &Window::renewGround);
    connect(&work_.sheetGrounds(), &work::SheetGrounds::changed, this, &Window::renewGround);
    connect(&work_, &work::Work::refused, this, [this](const Error& why) { say(outside_.say(why)); });
    connect(&work_, &work::Work::journalFailed, this, [this](const Error& fault) {
        notices_->keep("journal", tr("Unsaved work is not kept against a crash: %1").arg(outside_.say(fault)), {});
    });
}

void Window::connectTable() {
    connect(table_, &table::LightTable::sheetFailed, &work_.sheetGrounds(), &work::SheetGrounds::copyIsDamaged);
    connect(table_, &table::LightTable::labelWanted, this, [this] {
        if (work_.selected() && !trayWanted_) {  // the tray said already what it is called
            detailsWanted_ = true;
            bare_ = false;
            arrange();
            details_->askForLabel();
        }
    });
    connect(table_, &table::LightTable::nextWanted, this, &Window::selectNext);
    connect(table_, &table::LightTable::menuWanted, this, &Window::showThingMenu);
    connect(table_, &table::LightTable::turnedOver, this, [this] { run("wipe-part"); });
    connect(table_, &table::LightTable::refused, this, [this](const Error& why) { say(outside_.say(why)); });
    connect(table_, &table::LightTable::strokeDrawn, this, [this] { stroke_ = work_.selected(); });
    connect(table_, &table::LightTable::said, this, &Window::say);
    connect(table_, &table::LightTable::toolDone, this, [this] { renewHead(); });
}

void Window::connectPages() {
    connect(doing_, &DoingMark::givenUp, this, [this](const QString& what) {
        nothingComes();
        say(tr("Given up: %1.").arg(what));
    });
    connect(details_, &details::Details::left, this, [this] { table_->setFocus(); });
    connect(offers_, &phases::OfferCard::changed, this, [this] {
        arrange();
        if (!offers_->isOffering()) {
            table_->setFocus();
        }
    });
    connect(ledger_, &ledger::Ledger::legChosen, this, &Window::chooseLeg);
    connect(ledger_, &ledger::Ledger::bendsWanted, this, [this] { run("bends"); });
    connect(ledger_, &ledger::Ledger::timingWanted, this, [this] { run("timing"); });
    connect(ledger_, &ledger::Ledger::left, this, [this] {
        ledgerAsks_ = false;
        arrange();
        table_->setFocus();
    });
    connect(ledger_, &ledger::Ledger::roomWanted, this, [this] {
        ledgerAsks_ = true;
        detailsWanted_ = timingWanted_ = false;
        arrange();
    });
    connect(rail_, &phases::Rail::filmMenuWanted, this, &Window::showFilmMenu);
    connect(board_, &phases::PhaseBoard::filmMenuWanted, this, &Window::showFilmMenu);
    connect(board_, &phases::PhaseBoard::left, this, &Window::rollRail);
    connect(rail_, &phases::Rail::named, this, [this] { table_->setFocus(); });
    connect(brief_, &brief::BriefView::ended, this, &Window::endBrief);
    connect(actionsCard_, &ActionsCard::left, this, &Window::leaveActions);
    connect(actionsCard_, &ActionsCard::chosen, this, [this](QAction* action) {
        leaveActions();
        action->trigger();
    });
}

void Window::connectStart(const start::StartPage& page) {
    connect(&page, &start::StartPage::sheetWanted, this, &Window::askForSheet);
    connect(&page, &start::StartPage::scanWanted, this, &Window::askForScan);
    connect(&page, &start::StartPage::planWanted, this, &Window::askForPlan);
    connect(&page, &start::StartPage::gridWanted, this, &Window::askForGrid);
    connect(&page, &start::StartPage::demoWanted, this, &Window::openDemo);
    connect(&page, &start::StartPage::nightWanted, this, [this] { run("night"); });
    connect(&page, &start::StartPage::recentWanted, this,
            [this](const QString& file) { openPlan(file.toStdString()); });
    connect(&page, &start::StartPage::takeUpWanted, this, &Window::takeUp);
    connect(&page, &start::StartPage::leaveWanted, this, [this](const files::Leftover& leftover) {
        std::error_code ignored;
        std::filesystem::remove(leftover.journal, ignored);
        renewLeftovers();
    });
}

void Window::connectCopies(const copies::Copies& copies) {
    connect(&copies, &copies::Copies::left, this, [this] { showCopies(false); });
    connect(&copies, &copies::Copies::givenOut, this, &Window::giveOut);
    connect(&copies, &copies::Copies::written, this, [this](const QString& words) {
        say(words);
        if (next_ == Next::Close) {
            leave(Next::Close);
        }
    });
    connect(&copies, &copies::Copies::failed, this, [this](const QString& words) {
        next_ = Next::GoOn;  // who wanted to leave reads this first
        say(words);
    });
}

void Window::renewHead() {
    const bool open = work_.isOpen();
    setWindowTitle(open ? text(work_.plan().heading().name) + QStringLiteral("[*] \u2013 Crosstick") : tr("Crosstick"));
    setWindowModified(open && work_.isChanged());
    const auto enable = [this](const char* name, bool on) { actions_.at(name)->setEnabled(on); };
    for (const char* name :
         {"save",       "save-as",     "carry",        "carry-nothing", "copies",        "films-pdf",   "close",
          "fit",        "whole-sheet", "true-size",    "route",         "alternate",     "new-film",    "name-film",
          "new-phase",  "ticks",       "ticks-at",     "window-at",     "ticks-by-hand", "north-up",    "page-up",
          "march-up",   "turn-left",   "turn-right",   "next-phase",    "join-phases",   "part-phases", "inset",
          "inset-at",   "trace",       "renew-traces", "alone",         "rail",          "lift",        "pin-film",
          "hide-film",  "fainter",     "stronger",     "tint",          "tray",          "renumber",    "paste",
          "paste-here", "issue",       "steps",        "timing",        "route-reverse", "route-split", "route-join",
          "route-swap", "brief",       "plan-card"}) {
        enable(name, open);
    }
    const std::string undo = work_.undoCaption();
    const std::string redo = work_.redoCaption();
    actions_.at("undo")->setText(undo.empty() ? tr("Undo") : tr("Undo: %1").arg(look::spoken(undo)));
    actions_.at("redo")->setText(redo.empty() ? tr("Redo") : tr("Redo: %1").arg(look::spoken(redo)));
    enable("undo", !undo.empty());
    enable("redo", !redo.empty());
    const bool chosen = open && work_.selected().has_value();
    for (const char* name : {"delete", "label", "show-here", "show-on", "copy", "duplicate"}) {
        enable(name, chosen);
    }
    actions_.at("inserted-letters")->setChecked(work_.inserted() == plan::Inserted::Lettered);
    actions_.at("details")->setChecked(detailsWanted_);
    actions_.at("bends")->setChecked(ledger_->legs().rows() == ledger::Rows::Bends);
    actions_.at("timing")->setChecked(timingWanted_);
    actions_.at("ledger")->setChecked(!ledgerHidden_);
    const char* pages[] = {"march", "elements", "tasks", "events", "matrix", "march-table", "profile", "light"};
    for (int n = 0; n < march::TablesSill::kPages; ++n) {
        actions_.at(pages[n])->setChecked(marchWanted_ && static_cast<int>(tablesPage()) == n);
        enable(pages[n], open);
    }
    actions_.at("drift")->setChecked(driftWanted_);
    enable("drift", open);
    actions_.at("bare")->setChecked(bare_);
    actions_.at("night")->setChecked(light_ == look::Light::Night);
    actions_.at("one-pen")->setChecked(work_.pens() == work::Pens::One);
    const plan::FilmPtr film = work_.workingFilm() ? work_.plan().film(*work_.workingFilm()) : nullptr;
    actions_.at("rail")->setChecked(railDown_);
    actions_.at("alone")->setChecked(work_.company() == work::Company::WorkingAlone);
    actions_.at("lift")->setChecked(work_.top() == work::Top::Lifted);
    actions_.at("pin-film")->setChecked(film && film->pinned);
    actions_.at("hide-film")->setChecked(film && !work_.look(film->id).shown);
    actions_.at("mils")->setChecked(work_.angles() == geodesy::AngleUnit::Mils);
}

/// Thin letters would go where the picture is dimmed far.
look::Weight Window::letters() const {
    return light_ == look::Light::Night && dimming_ <= look::Dimmer::kBoldUpTo ? look::Weight::Bold
                                                                               : look::Weight::Regular;
}

void Window::setDimming(int level) {
    dimming_ = std::clamp(level, 1, look::Dimmer::kLevels);
    settings_->setValue(QStringLiteral("dimming"), dimming_);
    setLight(light_);
}

/// One step darker; from the darkest back to the full night light.
void Window::stepDimmer() {
    if (light_ == look::Light::Day) {
        say(tr("The dimmer belongs to the night light. Ctrl+L turns it on."));
        return;
    }
    setDimming(dimming_ == 1 ? look::Dimmer::kLevels : dimming_ - 1);
    say(tr("Night light at %1 of %2. Ctrl+Shift+L: darker.").arg(dimming_).arg(look::Dimmer::kLevels));
}

void Window::setLight(look::Light light) {
    light_ = light;
    dimmer_.setLevel(light, dimming_);
    if (auto* application = qobject_cast<QApplication*>(QCoreApplication::instance())) {
        look::dress(*application, light, letters());
    }
    const look::Colours c = look::colours(light);
    QPalette p = palette();
    p.setColor(QPalette::Window, c.lino);
    setPalette(p);
    head_->setPalette(p);
    head_->setAutoFillBackground(true);
    notices_->setLight(light);
    question_->setLight(light);
    doing_->setLight(light);
    rail_->setLight(light);
    board_->setLight(light);
    ledger_->setLight(light);
    details_->setLight(light);
    tray_->setLight(light);
    offers_->setLight(light);
    actionsCard_->setLight(light);
    brief_->setLight(light);
    const auto lightAll = [light](const auto&... laters) {
        (laters.ifMade([light](auto& part) { part.setLight(light); }), ...);
    };
    lightAll(start_, tables_, timing_, copies_, register_, settingsPage_, help_);
    table_->setTheme(light == look::Light::Night ? table::Theme::Night : table::Theme::Day);
    settings_->setValue(QStringLiteral("light"),
                        light == look::Light::Night ? QStringLiteral("night") : QStringLiteral("day"));
    renewHead();
}

/// A line that stays until the next one or the next step: nothing goes before it is read.
void Window::say(const QString& words) {
    notices_->say(words);
}

void Window::run(const std::string& action) {
    if (const auto found = actions_.find(action); found != actions_.end() && found->second->isEnabled()) {
        found->second->trigger();
    }
}

/// While a plan is on its way there is nothing to begin with.
void Window::showEvent(QShowEvent* event) {
    work_.errands().hear();
    if (!comes_ && !work_.isOpen() && start_.made() == nullptr) {
        pages_->setCurrentWidget(&*start_);
    }
    QMainWindow::showEvent(event);
}

/// A save that runs is not broken off, nor is a print: the window closes when it has come to pass.
void Window::closeEvent(QCloseEvent* event) {
    if (work_.isSaving() || isWritingCopies()) {
        event->ignore();
        leave(Next::Close);
        return;
    }
    settings_->setValue(QStringLiteral("geometry"), saveGeometry());
    settings_->sync();
    event->accept();
}

void Window::changeEvent(QEvent* event) {
    QMainWindow::changeEvent(event);
    if (event->type() == QEvent::ActivationChange && isActiveWindow() && notices_ != nullptr &&
        (!notices_->kept("sheet").isEmpty() || !notices_->kept("heights").isEmpty())) {
        work_.lookAtGround();
    }
}

}  // namespace crosstick::window
