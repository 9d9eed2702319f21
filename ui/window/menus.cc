#include <QActionGroup>
#include <QMenuBar>
#include <QSettings>

#include "core/measures/catalogue.h"
#include "core/movement/route_figures.h"
#include "core/plan/edits.h"
#include "ui/details/token_menu.h"
#include "ui/look/spoken.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

constexpr Degrees kTurn{15};

QKeySequence key(const char* keys) {
    return QKeySequence(QString::fromLatin1(keys));
}

}  // namespace

QAction* Window::add(QMenu* menu, const std::string& name, const QString& words, const QKeySequence& keys, Does does) {
    auto* action = new QAction(words, this);
    action->setShortcut(keys);
    connect(action, &QAction::triggered, this, [does = std::move(does)] { does(); });
    menu->addAction(action);
    addAction(action);  // its key works when the head is away
    actions_[name] = action;
    return action;
}

void Window::buildMenus(QMenuBar* bar) {
    buildPlanMenu(bar);
    buildEditMenu(bar);
    buildViewMenu(bar);
    buildDrawMenu(bar);
    buildMakeMenu(bar);
}

void Window::buildPlanMenu(QMenuBar* bar) {
    QMenu* menu = bar->addMenu(tr("&Plan"));
    add(menu, "new", tr("New on a map sheet..."), key("Ctrl+N"), [this] { askForSheet(); });
    add(menu, "register", tr("Register a scan or photo..."), key("Ctrl+Shift+G"), [this] { askForScan(); });
    add(menu, "grid-alone", tr("New from the grid alone..."), key("Ctrl+G"), [this] { askForGrid(); });
    add(menu, "open", tr("Take up a plan..."), key("Ctrl+O"), [this] { askForPlan(); });
    recentMenu_ = menu->addMenu(tr("Plans on this desk"));
    add(menu, "demo", tr("The demo island"), key("Ctrl+D"), [this] { openDemo(); });
    menu->addSeparator();
    add(menu, "save", tr("Save"), key("Ctrl+S"), [this] { save(); });
    add(menu, "save-as", tr("Save as..."), key("Ctrl+Shift+S"), [this] { askAndSaveAs(); });
    sheetsMenu_ = menu->addMenu(tr("Map sheets"));
    add(sheetsMenu_, "sheet-beside", tr("Lay one more..."), key("Ctrl+Shift+N"), [this] { askForSheetBeside(); });
    add(sheetsMenu_, "carry", tr("Put them into the plan's file, for handing on"), {}, [this] { carrySheets(); });
    add(sheetsMenu_, "carry-nothing", tr("Take them out of the file"), {}, [this] { carryNoSheets(); });
    sheetsMenu_->addSeparator();
    connect(sheetsMenu_, &QMenu::aboutToShow, this, &Window::fillSheetsMenu);
    add(menu, "plan-card", tr("What stands on every paper"), key("Ctrl+I"), [this] { showPlanCard(); });
    menu->addSeparator();
    add(menu, "settings", tr("Settings"), key("Ctrl+,"), [this] { showPage(*settingsPage_); });
    add(menu, "close", tr("Lay the plan away"), key("Ctrl+W"), [this] { leave(Next::LayAway); });
    add(menu, "quit", tr("Quit"), key("Ctrl+Q"), [this] { close(); });
}

void Window::buildEditMenu(QMenuBar* bar) {
    QMenu* menu = bar->addMenu(tr("&Edit"));
    add(menu, "undo", tr("Undo"), key("Ctrl+Z"), [this] { work_.undo(); });
    add(menu, "redo", tr("Redo"), key("Ctrl+Shift+Z"), [this] { work_.redo(); });
    menu->addSeparator();
    add(menu, "label", tr("Name or number"), key("F7"), [this] {
        detailsWanted_ = true;
        arrange();
        details_->askForLabel();
    });
    add(menu, "delete", tr("Wipe off"), key("Del"), [this] { removeSelected(); });
    QMenu* films = menu->addMenu(tr("Move to film"));
    connect(films, &QMenu::aboutToShow, this, [this, films] {
        films->clear();
        if (!work_.selected() || !work_.workingFilm()) {
            return;
        }
        for (const plan::FilmPtr& film : work_.plan().films()) {
            const plan::FilmId to = film->id;
            QAction* action = films->addAction(text(film->name));
            action->setEnabled(to != *work_.workingFilm());
            connect(action, &QAction::triggered, this, [this, to] {
                work_.commit(plan::movedToFilm(work_.committed(), *work_.selected(), *work_.workingFilm(), to),
                             "move to another film");
            });
        }
    });
    menu->addSeparator();
    add(menu, "new-film", tr("New film"), key("Ctrl+F"), [this] { newFilm(); });
    // Its key is the rail's and the table's alone: in the sills it opens a cell.
    QAction* name = add(menu, "name-film", tr("Name of the film"), key("F2"), [this] { renameFilm(std::nullopt); });
    name->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    removeAction(name);
    rail_->addAction(name);
    table_->addAction(name);
    QMenu* working = menu->addMenu(tr("Working film"));
    connect(working, &QMenu::aboutToShow, this, [this, working] {
        working->clear();
        if (work_.workingFilm()) {
            fillFilmMenu(*working, *work_.workingFilm());
        }
    });
    add(menu, "new-phase", tr("New phase"), key("Ctrl+Shift+F"), [this] { newPhase(); });
    add(menu, "sizes", tr("Sizes of symbols, pen, letters..."), key("Ctrl+Shift+M"),
        [this] { askForSizes(std::nullopt); });
    add(menu, "ticks", tr("Ticks and window to what is drawn"), {}, [this] { moveRegistration(); });
    add(menu, "ticks-by-hand", tr("Ticks and window by hand"), key("Ctrl+Alt+T"), [this] { holdRegistration(); });
    add(menu, "ticks-at", tr("Ticks on other crossings"), key("Ctrl+T"), [this] { askForTicks(); });
    add(menu, "window-at", tr("Window from corner to corner"), key("Ctrl+Shift+T"), [this] { askForWindow(); });
}

void Window::buildViewMenu(QMenuBar* bar) {
    QMenu* menu = bar->addMenu(tr("&View"));
    add(menu, "nearer", tr("Nearer"), key("Ctrl++"), [this] { table_->zoomBy(1.25); });
    add(menu, "farther", tr("Farther"), key("Ctrl+-"), [this] { table_->zoomBy(0.8); });
    add(menu, "fit", tr("All that is drawn"), key("Ctrl+0"), [this] { table_->fit(); });
    add(menu, "whole-sheet", tr("The whole sheet"), key("Ctrl+9"), [this] { table_->fitSheet(); });
    add(menu, "true-size", tr("True size"), key("Ctrl+1"), [this] { table_->showTrueSize(); });
    menu->addSeparator();
    add(menu, "north-up", tr("Grid north up"), key("Ctrl+Up"), [this] { table_->turnTo(Degrees(0)); });
    add(menu, "page-up", tr("Page of the sheet up"), key("Ctrl+Shift+Up"),
        [this] { table_->turnTo(table_->pageUp()); });
    add(menu, "march-up", tr("Direction of march up"), key("Ctrl+Alt+Up"), [this] { turnToMarch(); });
    add(menu, "turn-left", tr("Turn to the left"), key("Ctrl+Left"),
        [this] { table_->turnTo(table_->view().up() + kTurn); });
    add(menu, "turn-right", tr("Turn to the right"), key("Ctrl+Right"),
        [this] { table_->turnTo(table_->view().up() - kTurn); });
    menu->addSeparator();
    const auto toggle = [&](const char* name, const QString& words, const char* keys, Does does) {
        add(menu, name, words, key(keys), std::move(does))->setCheckable(true);
    };
    toggle("details", tr("Details"), "F4", [this] {
        detailsWanted_ = !details_->isVisible();
        arrange();
    });
    toggle("ledger", tr("Legs ledger"), "F5", [this] {
        ledgerHidden_ = !ledgerHidden_;
        arrange();
    });
    toggle("march", tr("Order of march"), "Ctrl+Shift+O", [this] {
        marchWanted_ = !marchWanted_;
        arrange();
    });
    toggle("bare", tr("Bare table"), "F9", [this] {
        bare_ = !bare_;
        arrange();
    });
    add(menu, "brief", tr("Brief, film by film"), key("F11"), [this] { beginBrief(); });
    toggle("night", tr("Night light"), "Ctrl+L",
           [this] { setLight(light_ == look::Light::Day ? look::Light::Night : look::Light::Day); });
    add(menu, "dimmer", tr("Night light, darker"), key("Ctrl+Shift+L"), [this] { stepDimmer(); });
    toggle("one-pen", tr("One pen, all black"), "Ctrl+Shift+P",
           [this] { work_.setPens(work_.pens() == work::Pens::One ? work::Pens::InColour : work::Pens::One); });
    toggle("mils", tr("Azimuths in mils"), "Ctrl+M", [this] {
        work_.setAngles(work_.angles() == geodesy::AngleUnit::Mils ? geodesy::AngleUnit::Degrees
                                                                   : geodesy::AngleUnit::Mils);
    });
}

void Window::buildDrawMenu(QMenuBar* bar) {
    QMenu* menu = bar->addMenu(tr("&Draw"));
    add(menu, "route", tr("Route"), key("Ctrl+R"), [this] { drawRoute(plan::Use::Primary); });
    add(menu, "alternate", tr("Alternate route"), key("Ctrl+Shift+R"), [this] { drawRoute(plan::Use::Alternate); });
    add(menu, "follow", tr("Follow the map"), key("Ctrl+K"), [this] { followMap(std::nullopt); });
    add(menu, "handrail-left", tr("Handrail on the left, 100 m"), key("Ctrl+Shift+K"),
        [this] { followMap(terrain::Side::Left); });
    add(menu, "handrail-right", tr("Handrail on the right, 100 m"), key("Ctrl+Alt+K"),
        [this] { followMap(terrain::Side::Right); });
    add(menu, "tie", tr("Tie the point to what is there"), key("Ctrl+J"), [this] { tieSelected(); });
    menu->addSeparator();
    std::map<measures::Group, details::TokenMenu*> groups;
    for (const measures::Entry& entry : measures::catalogue()) {
        details::TokenMenu*& group = groups[entry.group];
        if (group == nullptr) {
            group = new details::TokenMenu(
                look::spoken(measures::nameOf(entry.group)), [this] { return details_->faces(); }, light_, menu);
            menu->addMenu(group);
        }
        QString words = look::spoken(entry.name);
        if (!entry.abbreviation.empty()) {
            words += QLatin1Char('\t') + text(entry.abbreviation);
        }
        const std::string kind(entry.kind);
        QAction* action = add(group, "draw-" + kind, words, {}, [this, kind] { draw(kind); });
        action->setToolTip(look::spoken(entry.help));
        group->show(action, entry);
    }
}

void Window::buildMakeMenu(QMenuBar* bar) {
    QMenu* menu = bar->addMenu(tr("&Make"));
    add(menu, "copies", tr("Copies: films and cards..."), key("Ctrl+P"),
        [this] { showCopies(pages_->currentWidget() != copies_); });
    add(menu, "films-pdf", tr("Films and cards as PDF beside the plan"), key("Ctrl+E"), [this] {
        showCopies(true);
        copies_->whenReady([this] {
            const auto base = work_.file().empty() ? work_.folder() / "plan" : work_.file();
            const QString stem = text((base.parent_path() / base.stem()).string());
            copies_->savePdf(stem + QStringLiteral("-films.pdf"), stem + QStringLiteral("-cards.pdf"));
        });
    });
    add(menu, "paper-stretch", tr("Fit films to paper that has stretched..."), key("Ctrl+Alt+P"),
        [this] { askForStretch(); });
    QMenu* help = bar->addMenu(tr("&Help"));
    add(help, "help", tr("Help on one page"), key("F1"), [this] { showPage(*help_); });
    add(help, "actions", tr("What can I do"), key("F12"), [this] { showActions(); });
    add(help, "about", tr("About Crosstick"), {}, [this] {
        say(tr("Crosstick %1: films, route cards and figures for a map sheet. A planning and training aid: check "
               "declination and datum; local rules, a current map and the leader's judgement come first.")
                .arg(outside_.version));
    });
}

void Window::showThingMenu(const QPoint& at) {
    QMenu menu;
    if (!work_.selected()) {
        for (const char* name : {"route", "alternate", "draw-checkpoint", "draw-phase-line", "draw-assembly-area"}) {
            menu.addAction(actions_.at(name));
        }
        menu.exec(at);
        return;
    }
    menu.addAction(actions_.at("label"));
    QMenu* films = menu.addMenu(tr("Move to film"));
    for (const plan::FilmPtr& film : work_.plan().films()) {
        if (work_.workingFilm() && film->id != *work_.workingFilm()) {
            const plan::FilmId to = film->id;
            connect(films->addAction(text(film->name)), &QAction::triggered, this, [this, to] {
                work_.commit(plan::movedToFilm(work_.committed(), *work_.selected(), *work_.workingFilm(), to),
                             "move to another film");
            });
        }
    }
    addPlacings(menu, *work_.selected());
    menu.addSeparator();
    menu.addAction(actions_.at("delete"));
    menu.exec(at);
}

void Window::showFilmMenu(const plan::FilmId& film, const QPoint& at) {
    QMenu menu;
    fillFilmMenu(menu, film);
    menu.exec(at);
}

void Window::fillFilmMenu(QMenu& menu, const plan::FilmId& film) {
    const plan::FilmPtr held = work_.plan().film(film);
    if (!held) {
        return;
    }
    connect(menu.addAction(tr("Name")), &QAction::triggered, this, [this, film] { renameFilm(film); });
    connect(menu.addAction(tr("Sizes...")), &QAction::triggered, this, [this, film] { askForSizes(film); });
    QAction* shown = menu.addAction(tr("Shown"));
    shown->setCheckable(true);
    shown->setChecked(work_.look(film).shown);
    connect(shown, &QAction::toggled, this, [this, film](bool on) {
        work_.setLook(film, {on, work_.look(film).strength});
    });
    QMenu* fade = menu.addMenu(tr("Strength"));
    auto* strengths = new QActionGroup(fade);
    for (const int share : {100, 70, 50, 30}) {
        QAction* action = strengths->addAction(fade->addAction(tr("%1 %").arg(share)));
        action->setCheckable(true);
        action->setChecked(qRound(work_.look(film).strength * 100) == share);
        connect(action, &QAction::triggered, this, [this, film, share] {
            work_.setLook(film, {work_.look(film).shown, share / 100.0});
        });
    }
    menu.addSeparator();
    for (const auto& [words, step] :
         {std::pair(tr("Up in the stack"), plan::Step::Up), std::pair(tr("Down in the stack"), plan::Step::Down)}) {
        connect(menu.addAction(words), &QAction::triggered, this, [this, film, step = step] {
            work_.commit(plan::restacked(work_.committed(), film, step), "restack a film");
        });
    }
    if (!work_.plan().phases().empty()) {
        QMenu* phases = menu.addMenu(tr("Phases"));
        for (const plan::Phase& phase : work_.plan().phases()) {
            QAction* action = phases->addAction(tr("%1  %2").arg(phase.number).arg(text(phase.name)));
            action->setCheckable(true);
            action->setChecked(held->phases.contains(phase.number));
            const int number = phase.number;
            connect(action, &QAction::toggled, this,
                    [this, film, number](bool on) { setFilmPhases(film, number, on); });
        }
    }
    menu.addSeparator();
    connect(menu.addAction(tr("Lay the film away")), &QAction::triggered, this, [this, film] {
        plan::PlanBuilder builder(work_.committed());
        builder.removeFilm(film);
        work_.commit(std::move(builder).build(), "lay a film away");
    });
}

}  // namespace crosstick::window
