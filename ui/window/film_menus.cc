// What the menus offer for films, and what it does to how they lie.
#include <QActionGroup>

#include "core/plan/edits.h"
#include "core/plan/faults.h"
#include "core/plan/pinning.h"
#include "ui/phases/film_facts.h"
#include "ui/window/held_key.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

QKeySequence key(const char* keys) {
    return QKeySequence(QString::fromLatin1(keys));
}

}  // namespace

/// How films lie on the table: the working film's by keys, any film's by the menu of its tab or card.
void Window::buildFilmsMenu(QMenu* view) {
    QMenu* menu = view->addMenu(tr("Films on the table"));
    const auto ofWorking = [this](auto does) {
        return [this, does] {
            if (work_.workingFilm()) {
                does(*work_.workingFilm());
            }
        };
    };
    add(menu, "rail", tr("Phase by phase"), key("F3"), [this] { rollRail(); })->setCheckable(true);
    add(menu, "alone", tr("Working film alone"), key("F10"), [this] { layAlone(); })->setCheckable(true);
    lift_ = new HeldKey(Qt::Key_F8, this);
    connect(lift_, &HeldKey::pressed, this, [this] { work_.setTop(work::Top::Lifted); });
    connect(lift_, &HeldKey::letGo, this, [this] { work_.setTop(work::Top::Lies); });
    // Held it is a key of its own; chosen here the film stays off until it is chosen again.
    add(menu, "lift", tr("Top film lifted\tF8 held"), {}, [this] {
        work_.setTop(work_.top() == work::Top::Lies ? work::Top::Lifted : work::Top::Lies);
    })->setCheckable(true);
    menu->addSeparator();
    add(menu, "pin-film", tr("Pinned"), key("Ctrl+B"), ofWorking([this](const plan::FilmId& film) { turnPin(film); }))
        ->setCheckable(true);
    add(menu, "hide-film", tr("Hidden"), key("Ctrl+H"),
        ofWorking([this](const plan::FilmId& film) { turnShown(film); }))
        ->setCheckable(true);
    add(menu, "fainter", tr("Fainter"), key("Ctrl+PgDown"),
        ofWorking([this](const plan::FilmId& film) { fade(film, work::Fading::Fainter); }));
    add(menu, "stronger", tr("Stronger"), key("Ctrl+PgUp"),
        ofWorking([this](const plan::FilmId& film) { fade(film, work::Fading::Stronger); }));
    add(menu, "tint", tr("Next tint"), key("Alt+F8"),
        ofWorking([this](const plan::FilmId& film) { setTint(film, work::tintAfter(work_.look(film).tint)); }));
}

void Window::rollRail() {
    if (pages_->currentWidget() != desk_) {
        return renewHead();
    }
    railDown_ = !railDown_;
    bare_ = bare_ && !railDown_;
    arrange();
    railDown_ ? board_->takeKeyboard() : table_->setFocus();
}

/// What may be done from the rail rolled down by one letter; all but the last rows do it to the working film.
std::vector<phases::Deed> Window::railDeeds() {
    const auto run = [this](const char* action) { return [this, action] { this->run(action); }; };
    return {{QStringLiteral("N"), tr("Next phase from this"), run("next-phase")},
            {QStringLiteral("J"), tr("Join with the next"), run("join-phases")},
            {QStringLiteral("F"), tr("New film"), run("new-film")},
            {QStringLiteral("H"), tr("Hide this film"), run("hide-film")},
            {QStringLiteral("P"), tr("Pin, or take it out"), run("pin-film")},
            {QStringLiteral("A"), tr("This film alone"), run("alone")},
            {QStringLiteral("T"), tr("Next tint"), run("tint")},
            {QStringLiteral("-"), tr("Fainter"), run("fainter")},
            {QStringLiteral("+"), tr("Stronger"), run("stronger")},
            {QStringLiteral("F8"), tr("hold: lift it"), {}},
            {QStringLiteral("F3"), tr("roll up"), run("rail")}};
}

void Window::layAlone() {
    const bool isAlone = work_.company() == work::Company::WorkingAlone;
    work_.setCompany(isAlone ? work::Company::All : work::Company::WorkingAlone);
    const plan::FilmPtr film = work_.workingFilm() ? work_.plan().film(*work_.workingFilm()) : nullptr;
    say(isAlone || !film ? QString() : tr("%1 lies alone. F10 lays the others back.").arg(text(film->name)));
}

void Window::turnPin(const plan::FilmId& film) {
    if (const plan::FilmPtr held = work_.committed().film(film)) {
        work_.commit(plan::withPin(work_.committed(), film, held->pinned ? plan::Pin::Loose : plan::Pin::Pinned),
                     held->pinned ? "take a film's pin out" : "pin a film");
    }
}

void Window::turnShown(const plan::FilmId& film) {
    work::FilmLook look = work_.look(film);
    look.shown = !look.shown;
    work_.setLook(film, look);
}

void Window::fade(const plan::FilmId& film, work::Fading by) {
    work_.setLook(film, work::faded(work_.look(film), by));
}

void Window::setTint(const plan::FilmId& film, work::Tint tint) {
    work::FilmLook look = work_.look(film);
    look.tint = tint;
    work_.setLook(film, look);
}

bool Window::hasFilmToDrawOn() {
    const plan::FilmPtr film =
        work_.isOpen() && work_.workingFilm() ? work_.plan().film(*work_.workingFilm()) : nullptr;
    if (!film) {
        say(tr("There is no film to draw on. Edit, New film makes one."));
    } else if (film->pinned) {
        say(outside_.say(Error{plan::kFilmPinned, {{"film", film->name}}}));
    }
    return film && !film->pinned;
}

void Window::showFilmMenu(const plan::FilmId& film, const QPoint& at) {
    QMenu menu;
    fillFilmMenu(menu, film);
    menu.exec(at);
}

void Window::fillLooks(QMenu& menu, const plan::FilmId& film) {
    const work::FilmLook look = work_.look(film);
    QAction* shown = menu.addAction(tr("Shown"));
    shown->setCheckable(true);
    shown->setChecked(look.shown);
    connect(shown, &QAction::triggered, this, [this, film] { turnShown(film); });
    QMenu* strength = menu.addMenu(tr("Strength"));
    auto* strengths = new QActionGroup(strength);
    for (const int share : work::kStrengths) {
        QAction* action = strengths->addAction(strength->addAction(tr("%1 %").arg(share)));
        action->setCheckable(true);
        action->setChecked(qRound(look.strength * 100) == share);
        connect(action, &QAction::triggered, this, [this, film, share] {
            work::FilmLook next = work_.look(film);
            next.strength = share / 100.0;
            work_.setLook(film, next);
        });
    }
    QMenu* tint = menu.addMenu(tr("Tint, on the table alone"));
    auto* tints = new QActionGroup(tint);
    for (const work::Tint one : work::kTints) {
        const QString word = phases::tintWord(one);
        QAction* action = tints->addAction(tint->addAction(word.isEmpty() ? tr("none: its own pens") : word));
        action->setCheckable(true);
        action->setChecked(look.tint == one);
        connect(action, &QAction::triggered, this, [this, film, one] { setTint(film, one); });
    }
}

/// The menu of a film's tab, of its card, and of the working film: one function fills them all.
void Window::fillFilmMenu(QMenu& menu, const plan::FilmId& film) {
    const plan::FilmPtr held = work_.plan().film(film);
    if (!held) {
        return;
    }
    connect(menu.addAction(tr("Name")), &QAction::triggered, this, [this, film] { renameFilm(film); });
    connect(menu.addAction(tr("Sizes...")), &QAction::triggered, this, [this, film] { askForSizes(film); });
    QAction* pinned = menu.addAction(tr("Pinned"));
    pinned->setCheckable(true);
    pinned->setChecked(held->pinned);
    connect(pinned, &QAction::triggered, this, [this, film] { turnPin(film); });
    menu.addSeparator();
    fillLooks(menu, film);
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
