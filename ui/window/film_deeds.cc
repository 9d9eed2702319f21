#include <algorithm>

#include "core/plan/edits.h"
#include "ui/window/window.h"

// What is done to films and phases as such.

namespace crosstick::window {
namespace {

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

}  // namespace

void Window::newFilm() {
    std::set<int> phases;
    if (work_.phase() != 0) {
        phases.insert(work_.phase());
    }
    const std::string name = "FILM " + std::to_string(work_.plan().films().size() + 1);
    const Uuid id = work_.newId();
    work_.commit(plan::withFilm(work_.committed(), id, name, phases), "new film");
    work_.setWorkingFilm(id);
    renameFilm(id);
}

/// In the rail, where it hangs: the film whose tab has the keyboard, else the working one.
void Window::renameFilm(std::optional<plan::FilmId> film) {
    const auto named = film ? film : rail_->focusedFilm() ? rail_->focusedFilm() : work_.workingFilm();
    if (!named) {
        say(tr("There is no film to name. Edit, New film makes one."));
        return;
    }
    bare_ = false;
    arrange();
    rail_->askForName(*named);
}

void Window::setFilmPhases(const plan::FilmId& film, int phase, bool on) {
    const plan::FilmPtr held = work_.plan().film(film);
    if (!held) {
        return;
    }
    plan::Film next = *held;
    on ? static_cast<void>(next.phases.insert(phase)) : static_cast<void>(next.phases.erase(phase));
    plan::PlanBuilder builder(work_.committed());
    builder.put(std::move(next));
    work_.commit(std::move(builder).build(), "give a film its phases");
}

void Window::newPhase() {
    int number = 1;
    for (const plan::Phase& phase : work_.committed().phases()) {
        number = std::max(number, phase.number + 1);
    }
    question_->ask(tr("Name of phase %1:").arg(number), {}, [this, number](const QString& name) {
        std::vector<plan::Phase> all = work_.committed().phases();
        all.push_back({number, name.toStdString(), {}, {}, {}});
        plan::PlanBuilder builder(work_.committed());
        builder.phases(std::move(all));
        work_.commit(std::move(builder).build(), "new phase");
        work_.setPhase(number);
        return std::optional<QString>();
    });
}

/// Of the plan, or of one film that is to differ.
void Window::askForSizes(std::optional<plan::FilmId> film) {
    const plan::FilmPtr held = film ? work_.plan().film(*film) : nullptr;
    const auto usual = work_.plan().heading().gauge.value_or(drawing::Gauge{});
    const auto take = [this, film](const QString& typed) -> std::optional<QString> {
        const auto gauge = settings::sizesTyped(typed);
        if (!gauge && !typed.trimmed().isEmpty()) {
            return tr("Three sizes in mm: symbols 4 to 8, pen 0.25 to 0.7, letters 1.8 to 4. Empty: the usual ones.");
        }
        plan::PlanBuilder builder(work_.committed());
        if (const plan::FilmPtr now = film ? work_.committed().film(*film) : nullptr) {
            plan::Film next = *now;
            next.gauge = gauge;
            builder.put(std::move(next));
        } else {
            plan::Heading next = work_.committed().heading();
            next.gauge = gauge;
            builder.heading(std::move(next));
        }
        work_.commit(std::move(builder).build(), "other sizes of symbols, pen and letters");
        return std::nullopt;
    };
    question_->ask(held ? tr("Symbols, pen, letters of film %1 in mm:").arg(text(held->name))
                        : tr("Symbols, pen, letters of all films in mm:"),
                   settings::sizesShown(held && held->gauge ? *held->gauge : usual), take);
}

}  // namespace crosstick::window
