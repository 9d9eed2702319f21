#include "ui/window/window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QHBoxLayout>
#include <QMenuBar>
#include <QPainter>
#include <QSettings>
#include <QVBoxLayout>

#include "core/sheets/faults.h"
#include "ui/look/spoken.h"

namespace crosstick::window {
namespace {

constexpr int kHeadHigh = 32;
constexpr int kMenusWide = 372;
constexpr int kNarrow = 1100;  ///< below it the card lies over the table
constexpr int kDoingWide = 300;
constexpr int kDoingNarrow = 130;

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
    work_.setAngles(choices.angles);
    // Parts take their face from the application when they are made, so it is dressed before and after.
    if (auto* application = qobject_cast<QApplication*>(QCoreApplication::instance())) {
        look::dress(*application, light_, letters());
    }
    buildParts();
    connectParts();
    setLight(light_);
    resize(1366, 768);
    restoreGeometry(settings_->value(QStringLiteral("geometry")).toByteArray());
    renewRecent();
    renewLeftovers();
    arrange();
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

void Window::buildParts() {
    head_ = new QWidget(this);
    head_->setFixedHeight(kHeadHigh);
    bar_ = new QMenuBar(head_);
    bar_->setAccessibleName(tr("Menus"));
    bar_->setNativeMenuBar(false);
    bar_->setFixedHeight(kHeadHigh);
    folded_ = new QMenu(tr("&Menu"), bar_);
    rail_ = new phases::Rail(work_, head_);
    auto* row = new QHBoxLayout(head_);
    row->setContentsMargins(0, 0, 12, 0);
    row->setSpacing(0);
    row->addWidget(bar_);
    row->addWidget(rail_, 1);
    doing_ = new DoingMark(work_.errands(), head_);
    row->addWidget(doing_);
    setMenuWidget(head_);
    auto* middle = new QWidget(this);
    pages_ = new QStackedWidget(middle);
    foot_ = new QWidget(middle);
    notices_ = new Notices(foot_);
    question_ = new Question(foot_);
    start_ = new start::StartPage(pages_);
    desk_ = new QWidget(pages_);
    table_ = new table::LightTable(work_, outside_.share, desk_);
    ledger_ = new ledger::Ledger(work_, outside_.say, desk_);
    march_ = new march::MarchSill(work_, outside_.say, outside_.share, desk_);
    cards_ = new QStackedWidget(desk_);
    details_ = new details::Details(work_, outside_.say, outside_.share, cards_);
    actionsCard_ = new ActionsCard([this] { return doingsOf(allMenus()); }, cards_);
    cards_->addWidget(details_);
    cards_->addWidget(actionsCard_);
    auto* rows = new QVBoxLayout(middle);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(0);
    rows->addWidget(pages_, 1);
    auto* said = new QVBoxLayout(foot_);
    said->setContentsMargins(0, 0, 0, 0);
    said->setSpacing(0);
    said->addWidget(notices_);
    said->addWidget(question_);
    rows->addWidget(foot_);
    setCentralWidget(middle);
    copies_ = new copies::Copies(work_, outside_.say, outside_.share, pages_);
    register_ = new registering::RegisterPage(work_.errands(), work_.reader(), outside_.say, outside_.share, pages_);
    across_ = new QHBoxLayout(desk_);
    across_->setContentsMargins(0, 0, 0, 0);
    across_->setSpacing(0);
    auto* down = new QVBoxLayout;
    down->setSpacing(0);
    down->addWidget(table_, 1);
    down->addWidget(ledger_);
    down->addWidget(march_);
    across_->addLayout(down, 1);
    across_->addWidget(cards_);
    settingsPage_ = new settings::SettingsPage(text(outside_.settings.string()), pages_);
    help_ = new HelpPage(outside_.share / "manual" / "help.md", pages_);
    for (QWidget* page :
         {static_cast<QWidget*>(start_), desk_, static_cast<QWidget*>(copies_), static_cast<QWidget*>(register_),
          static_cast<QWidget*>(settingsPage_), static_cast<QWidget*>(help_)}) {
        pages_->addWidget(page);
    }
    brief_ = new brief::BriefView(work_, *table_, middle);
    buildMenus(bar_);
    fitMenus();
    table_->installEventFilter(this);
    middle->installEventFilter(this);
}

void Window::connectParts() {
    connectWork();
    connectTable();
    connectPages();
}

void Window::connectWork() {
    connect(&work_, &work::Work::planReplaced, this, [this] {
        pages_->setCurrentWidget(desk_);
        question_->leave();
        say({});
        arrange();
        table_->setFocus();
    });
    connect(&work_, &work::Work::planChanged, this, [this] {
        arrange();
        if (pages_->currentWidget() == copies_) {  // an undo, a film named: what is looked at is what would print
            copies_->open();
        }
    });
    connect(&work_, &work::Work::wetChanged, this, [this] { arrange(); });
    connect(&work_, &work::Work::tableChanged, this, [this] { renewHead(); });
    connect(&work_, &work::Work::selectionChanged, this, [this] {
        detailsWanted_ = detailsWanted_ || work_.selected().has_value();
        actionsWanted_ = false;
        arrange();
    });
    connect(&work_, &work::Work::groundChanged, this, &Window::renewGround);
    connect(&work_.sheetGrounds(), &work::SheetGrounds::changed, this, &Window::renewGround);
    connect(&work_, &work::Work::journalFailed, this, [this](const Error& fault) {
        notices_->keep("journal", tr("Unsaved work is not kept against a crash: %1").arg(outside_.say(fault)), {});
    });
}

void Window::connectTable() {
    connect(table_, &table::LightTable::sheetFailed, &work_.sheetGrounds(), &work::SheetGrounds::copyIsDamaged);
    connect(table_, &table::LightTable::labelWanted, this, [this] {
        if (work_.selected()) {
            detailsWanted_ = true;
            bare_ = false;
            arrange();
            details_->askForLabel();
        }
    });
    connect(table_, &table::LightTable::nextWanted, this, &Window::selectNext);
    connect(table_, &table::LightTable::menuWanted, this, &Window::showThingMenu);
    connect(table_, &table::LightTable::refused, this, [this](const Error& why) { say(outside_.say(why)); });
    connect(table_, &table::LightTable::toolDone, this, [this] { renewHead(); });
}

void Window::connectPages() {
    connect(doing_, &DoingMark::givenUp, this, [this](const QString& what) { say(tr("Given up: %1.").arg(what)); });
    connect(details_, &details::Details::left, this, [this] { table_->setFocus(); });
    connect(ledger_, &ledger::Ledger::left, this, [this] {
        ledgerAsks_ = false;
        arrange();
        table_->setFocus();
    });
    connect(ledger_, &ledger::Ledger::roomWanted, this, [this] {
        ledgerAsks_ = true;
        detailsWanted_ = false;
        arrange();
    });
    connect(march_, &march::MarchSill::left, this, [this] { table_->setFocus(); });
    connect(march_, &march::MarchSill::refused, this, [this](const QString& why) { say(why); });
    connect(rail_, &phases::Rail::filmMenuWanted, this, &Window::showFilmMenu);
    connect(rail_, &phases::Rail::named, this, [this] { table_->setFocus(); });
    connect(copies_, &copies::Copies::left, this, [this] { showCopies(false); });
    connect(copies_, &copies::Copies::written, this, [this](const QString& words) {
        say(words);
        if (next_ == Next::Close) {
            leave(Next::Close);
        }
    });
    connect(copies_, &copies::Copies::failed, this, [this](const QString& words) {
        next_ = Next::GoOn;  // who wanted to leave reads this first
        say(words);
    });
    connect(register_, &registering::RegisterPage::laid, this, &Window::laidByHand);
    connect(register_, &registering::RegisterPage::left, this, &Window::leaveRegister);
    connect(brief_, &brief::BriefView::ended, this, &Window::endBrief);
    connect(actionsCard_, &ActionsCard::left, this, &Window::leaveActions);
    connect(actionsCard_, &ActionsCard::chosen, this, [this](QAction* action) {
        leaveActions();
        action->trigger();
    });
    connect(settingsPage_, &settings::SettingsPage::left, this, &Window::leavePage);
    connect(settingsPage_, &settings::SettingsPage::changed, this, &Window::take);
    connect(help_, &HelpPage::left, this, &Window::leavePage);
    connect(start_, &start::StartPage::sheetWanted, this, &Window::askForSheet);
    connect(start_, &start::StartPage::scanWanted, this, &Window::askForScan);
    connect(start_, &start::StartPage::planWanted, this, &Window::askForPlan);
    connect(start_, &start::StartPage::gridWanted, this, &Window::askForGrid);
    connect(start_, &start::StartPage::demoWanted, this, &Window::openDemo);
    connect(start_, &start::StartPage::nightWanted, this, [this] { run("night"); });
    connect(start_, &start::StartPage::recentWanted, this,
            [this](const QString& file) { openPlan(file.toStdString()); });
    connect(start_, &start::StartPage::takeUpWanted, this, &Window::takeUp);
    connect(start_, &start::StartPage::leaveWanted, this, [this](const files::Leftover& leftover) {
        std::error_code ignored;
        std::filesystem::remove(leftover.journal, ignored);
        renewLeftovers();
    });
}

/// One card at a time, the ledger only with a route; an open card folds the ledger to its live row.
void Window::arrange() {
    const bool open = work_.isOpen();
    const bool briefs = brief_->telling() != nullptr;
    const bool card = ((open && detailsWanted_) || actionsWanted_) && !bare_ && !briefs;
    const plan::MeasurePtr block = open ? chosenMarch() : nullptr;
    const bool march = open && !bare_ && !briefs && (marchWanted_ || block != nullptr);
    const bool sill = open && !bare_ && !briefs && !march && !ledgerHidden_ && ledger_->isWanted();
    if (march) {
        const auto name = block ? block->fields.find("column") : decltype(block->fields.end()){};
        march_->show(block && name != block->fields.end() ? name->second : std::string{});
    }
    march_->setVisible(march);
    ledger_->renew();
    ledger_->setVisible(sill);
    ledger_->setFolded(card || (isNarrow() && !ledgerAsks_));
    cards_->setCurrentWidget(actionsWanted_ ? static_cast<QWidget*>(actionsCard_) : details_);
    cards_->setVisible(card);
    head_->setVisible(!bare_ && !briefs);
    foot_->setVisible(!briefs);
    renewHead();
}

bool Window::isNarrow() const {
    return width() < kNarrow;
}

plan::MeasurePtr Window::chosenMarch() const {
    const plan::MeasurePtr measure = work_.selected() ? work_.plan().measure(*work_.selected()) : nullptr;
    return measure && measure->kind == "order-of-march" ? measure : nullptr;
}

void Window::renewHead() {
    const bool open = work_.isOpen();
    setWindowTitle(open ? text(work_.plan().heading().name) + QStringLiteral("[*] \u2013 Crosstick") : tr("Crosstick"));
    setWindowModified(open && work_.isChanged());
    const auto enable = [this](const char* name, bool on) { actions_.at(name)->setEnabled(on); };
    for (const char* name :
         {"save",      "save-as",     "carry",      "carry-nothing", "copies",        "films-pdf", "close",
          "fit",       "whole-sheet", "true-size",  "route",         "alternate",     "new-film",  "name-film",
          "new-phase", "ticks",       "ticks-at",   "window-at",     "ticks-by-hand", "north-up",  "page-up",
          "march-up",  "turn-left",   "turn-right", "march",         "brief",         "plan-card"}) {
        enable(name, open);
    }
    const std::string undo = work_.undoCaption();
    const std::string redo = work_.redoCaption();
    actions_.at("undo")->setText(undo.empty() ? tr("Undo") : tr("Undo: %1").arg(look::spoken(undo)));
    actions_.at("redo")->setText(redo.empty() ? tr("Redo") : tr("Redo: %1").arg(look::spoken(redo)));
    enable("undo", !undo.empty());
    enable("redo", !redo.empty());
    const bool chosen = open && work_.selected().has_value();
    for (const char* name : {"delete", "label"}) {
        enable(name, chosen);
    }
    actions_.at("details")->setChecked(detailsWanted_);
    actions_.at("ledger")->setChecked(!ledgerHidden_);
    actions_.at("march")->setChecked(marchWanted_);
    actions_.at("bare")->setChecked(bare_);
    actions_.at("night")->setChecked(light_ == look::Light::Night);
    actions_.at("one-pen")->setChecked(work_.pens() == work::Pens::One);
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
    ledger_->setLight(light);
    march_->setLight(light);
    details_->setLight(light);
    copies_->setLight(light);
    register_->setLight(light);
    actionsCard_->setLight(light);
    settingsPage_->setLight(light);
    help_->setLight(light);
    start_->setLight(light);
    brief_->setLight(light);
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

/// A save that runs is not broken off, nor is a print: the window closes when it has come to pass.
void Window::closeEvent(QCloseEvent* event) {
    if (work_.isSaving() || copies_->isWriting()) {
        event->ignore();
        leave(Next::Close);
        return;
    }
    settings_->setValue(QStringLiteral("geometry"), saveGeometry());
    settings_->sync();
    event->accept();
}

void Window::resizeEvent(QResizeEvent* event) {
    QMainWindow::resizeEvent(event);
    foldMenus(isNarrow());
    doing_->setMostWide(isNarrow() ? kDoingNarrow : kDoingWide);
    notices_->fit();
    layCard();
    ledger_->setFolded(cards_->isVisible() || (isNarrow() && !ledgerAsks_));
}

bool Window::eventFilter(QObject* watched, QEvent* event) {
    if (watched == table_ && event->type() == QEvent::Resize) {
        placeCard();
    }
    if (watched == centralWidget() && event->type() == QEvent::Resize) {
        brief_->setGeometry(centralWidget()->rect());
    }
    return QMainWindow::eventFilter(watched, event);
}

/// In another language the menus may need more than their usual room.
void Window::fitMenus() {
    const int needed = bar_->sizeHint().width();
    bar_->setFixedWidth(folded_->isEmpty() ? std::max(kMenusWide, needed) : needed);
}

void Window::foldMenus(bool fold) {
    if (fold == !folded_->isEmpty()) {
        return;
    }
    if (fold) {
        for (QAction* menu : bar_->actions()) {
            bar_->removeAction(menu);
            folded_->addAction(menu);
        }
        bar_->addMenu(folded_);
    } else {
        bar_->removeAction(folded_->menuAction());
        for (QAction* menu : folded_->actions()) {
            folded_->removeAction(menu);
            bar_->addAction(menu);
        }
    }
    fitMenus();
}

void Window::layCard() {
    const bool over = isNarrow();
    cards_->setFixedWidth(std::min(details::Details::kWidth, width() / 2));
    details_->setFixedWidth(cards_->width());
    if (over == (across_->indexOf(cards_) >= 0)) {
        over ? across_->removeWidget(cards_) : across_->addWidget(cards_);
        cards_->raise();
    }
    placeCard();
}

/// Also while the desk is being laid out, when nothing may come into its layout or leave it.
void Window::placeCard() {
    if (across_->indexOf(cards_) < 0) {
        cards_->setGeometry(desk_->width() - cards_->width(), 0, cards_->width(), table_->height());
    }
}

/// Who comes back from another program may have mended there what is missing here.
void Window::changeEvent(QEvent* event) {
    QMainWindow::changeEvent(event);
    if (event->type() == QEvent::ActivationChange && isActiveWindow() && notices_ != nullptr &&
        (!notices_->kept("sheet").isEmpty() || !notices_->kept("heights").isEmpty())) {
        work_.lookAtGround();
    }
}

}  // namespace crosstick::window
