#include <QMenuBar>
#include <QSettings>

#include "core/measures/catalogue.h"
#include "core/movement/route_figures.h"
#include "core/plan/edits.h"
#include "core/plan/set_edits.h"
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
    add(menu, "steps", tr("Steps to go to..."), key("Ctrl+Alt+Z"), [this] { showSteps(); });
    menu->addSeparator();
    add(menu, "copy", tr("Copy"), key("Ctrl+C"), [this] { copy(); });
    add(menu, "paste", tr("Paste under the hand"), key("Ctrl+V"), [this] { paste(Where::UnderTheHand); });
    add(menu, "paste-here", tr("Paste in the same place"), key("Ctrl+Shift+V"), [this] { paste(Where::SamePlace); });
    add(menu, "duplicate", tr("Duplicate"), key("Ctrl+Shift+D"), [this] { duplicate(); });
    menu->addSeparator();
    add(menu, "label", tr("Name or number"), key("F7"), [this] {
        detailsWanted_ = true;
        arrange();
        details_->askForLabel();
    });
    add(menu, "delete", tr("Wipe off"), key("Del"), [this] { removeSelected(); });
    add(menu, "choose-all", tr("Choose all on the film"), key("Ctrl+A"), [this] { chooseAll(); });
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
                work_.commit(plan::allMovedToFilm(work_.committed(), work_.selection(), *work_.workingFilm(), to),
                             "move to another film");
            });
        }
    });
    add(menu, "show-here", tr("Show on the working film, or take it off"), key("Ctrl+U"), [this] { showHere(); });
    add(menu, "show-on", tr("Shown on..."), key("Ctrl+Shift+U"), [this] { askForFilms(); });
    add(menu, "trace", tr("Trace from another film"), key("Ctrl+T"), [this] { trace(); });
    add(menu, "renew-traces", tr("Renew what was traced"), key("Ctrl+Alt+Y"), [this] { renewTraces(); });
    menu->addSeparator();
    add(menu, "renumber", tr("Renumber along the routes"), {}, [this] { renumber(); });
    QAction* letters = add(menu, "inserted-letters", tr("A checkpoint put between takes a letter (2A)"), {}, [this] {
        setInserted(work_.inserted() == plan::Inserted::Lettered ? plan::Inserted::NextFree : plan::Inserted::Lettered);
    });
    letters->setCheckable(true);
    letters->setToolTip(tr("Where numbers stand on papers given out. Else it takes the next free number."));
    menu->addSeparator();
    add(menu, "new-film", tr("New film"), key("Ctrl+F"), [this] { newFilm(); });
    // Its key is the rail's and the table's alone.
    QAction* name =
        add(menu, "name-film", tr("Name of the film"), key("Shift+F2"), [this] { renameFilm(std::nullopt); });
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
    add(menu, "next-phase", tr("Start the next phase from this one"), key("Ctrl+Alt+N"), [this] { startNextPhase(); });
    add(menu, "join-phases", tr("Join the working film with the next phase"), key("Ctrl+Alt+J"),
        [this] { joinWithNextPhase(); });
    add(menu, "part-phases", tr("Part its phases again"), key("Ctrl+Alt+D"), [this] { partPhases(); });
    add(menu, "inset", tr("Inset: a part, larger"), key("Ctrl+Alt+S"), [this] { drawInset(); });
    add(menu, "inset-at", tr("Inset from corner to corner"), {}, [this] { askForInset(); });
    add(menu, "sizes", tr("Sizes of symbols, pen, letters..."), key("Ctrl+Shift+M"),
        [this] { askForSizes(std::nullopt); });
    add(menu, "ticks", tr("Ticks and window to what is drawn"), key("Ctrl+Alt+M"), [this] { moveRegistration(); });
    add(menu, "ticks-by-hand", tr("Ticks and window by hand"), key("Ctrl+Alt+T"), [this] { holdRegistration(); });
    add(menu, "ticks-at", tr("Ticks on other crossings"), key("Ctrl+Alt+Shift+T"), [this] { askForTicks(); });
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
    buildFilmsMenu(menu);
    const auto toggle = [&](const char* name, const QString& words, const char* keys, Does does) {
        add(menu, name, words, key(keys), std::move(does))->setCheckable(true);
    };
    toggle("details", tr("Details"), "F4", [this] {
        detailsWanted_ = !details_->isVisible();
        timingWanted_ = false;
        arrange();
    });
    toggle("ledger", tr("Legs ledger"), "F5", [this] {
        ledgerHidden_ = !ledgerHidden_;
        arrange();
    });
    addMarchDeeds(menu);
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
    // In the sills this key opens a cell.
    QAction* tray = add(menu, "tray", tr("Every measure by its picture"), key("F2"), [this] { raiseTray(); });
    tray->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    removeAction(tray);
    table_->addAction(tray);
    tray_->addAction(tray);
    menu->addSeparator();
    add(menu, "route", tr("Route"), key("Ctrl+R"), [this] { drawRoute(plan::Use::Primary); });
    add(menu, "alternate", tr("Alternate route"), key("Ctrl+Shift+R"), [this] { drawRoute(plan::Use::Alternate); });
    addRouteDeeds(menu->addMenu(tr("The route as a whole")));
    add(menu, "vehicles", tr("Way of vehicles"), key("Ctrl+Alt+V"), [this] { drawRoute(plan::Use::Vehicle); });
    add(menu, "contours", tr("Read contours along the route"), key("Ctrl+Alt+C"), [this] { readContours(); });
    add(menu, "follow", tr("Follow the map"), key("Ctrl+K"), [this] { followMap(Following::TheLine); });
    add(menu, "handrail", tr("Handrail inside our boundary"), key("Ctrl+Shift+K"),
        [this] { followMap(Following::InsideOurBoundary); });
    addToolMenu(menu);
    addSnapMenu(menu);
    add(menu, "tie", tr("Tie the point to what is there"), key("Ctrl+J"), [this] { tieSelected(); });
    menu->addSeparator();
    std::map<measures::Group, details::TokenMenu*> groups;
    for (const measures::Entry& entry : measures::catalogue()) {
        details::TokenMenu*& group = groups[entry.group];
        if (group == nullptr) {
            group = new details::TokenMenu(look::spoken(measures::nameOf(entry.group)), faces(), light_, menu);
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
        [this] { showCopies(pages_->currentWidget() != copies_.made()); });
    add(menu, "films-pdf", tr("Films and cards as PDF beside the plan"), key("Ctrl+E"), [this] {
        showCopies(true);
        copies_->whenReady([this] {
            const auto base = work_.file().empty() ? work_.folder() / "plan" : work_.file();
            const QString stem = text((base.parent_path() / base.stem()).string());
            copies_->savePdf(stem + QStringLiteral("-films.pdf"), stem + QStringLiteral("-cards.pdf"));
        });
    });
    add(menu, "issue", tr("These papers are given out"), key("Ctrl+Shift+I"), [this] { giveOut({}); });
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
        for (const char* name :
             {"route", "alternate", "follow", "draw-checkpoint", "draw-phase-line", "draw-assembly-area", "tray"}) {
            menu.addAction(actions_.at(name));
        }
        menu.addSeparator();
        menu.addAction(actions_.at("paste"));
        menu.addAction(actions_.at("actions"));
        menu.exec(at);
        return;
    }
    fillThingMenu(menu, at);
    menu.exec(at);
}

void Window::fillThingMenu(QMenu& menu, const QPoint& at) {
    menu.addAction(actions_.at("label"));
    QMenu* films = menu.addMenu(tr("Move to film"));
    for (const plan::FilmPtr& film : work_.plan().films()) {
        if (work_.workingFilm() && film->id != *work_.workingFilm()) {
            const plan::FilmId to = film->id;
            connect(films->addAction(text(film->name)), &QAction::triggered, this, [this, to] {
                work_.commit(plan::allMovedToFilm(work_.committed(), work_.selection(), *work_.workingFilm(), to),
                             "move to another film");
            });
        }
    }
    fillShownOn(*menu.addMenu(tr("Shown on")));
    menu.addAction(actions_.at("trace"));
    addPlacings(menu, *work_.selected());
    addBecomings(menu);
    addRouteDeedsHere(menu, at);
    menu.addSeparator();
    menu.addAction(actions_.at("delete"));
}

}  // namespace crosstick::window
