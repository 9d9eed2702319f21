// What is looked at: selection, working film, phase, how films lie on the table.
#include <algorithm>

#include "ui/work/work.h"

namespace crosstick::work {
namespace {

bool sitsOn(const plan::Route& route, const plan::ItemId& item) {
    return std::any_of(route.stops.begin(), route.stops.end(),
                       [&](const plan::Stop& stop) { return stop.measure == item; });
}

}  // namespace

/// Selection, working film and phase name things that an edit or an undo may have taken away.
void Work::keepChoices() {
    const plan::Plan& now = committed();
    const auto gone =
        std::erase_if(selection_, [&now](const plan::ItemId& item) { return !now.measure(item) && !now.route(item); });
    if (gone > 0) {
        Q_EMIT selectionChanged();
    }
    const auto films = filmsOnTable();
    const bool onTable =
        std::any_of(films.begin(), films.end(), [&](const plan::FilmPtr& film) { return working_ == film->id; });
    if (!onTable) {
        const auto whole =
            std::find_if(films.rbegin(), films.rend(), [](const plan::FilmPtr& film) { return !film->inset; });
        working_ = films.empty() ? std::nullopt : std::optional((whole == films.rend() ? films.back() : *whole)->id);
        Q_EMIT tableChanged();
    }
}

void Work::select(std::optional<plan::ItemId> item) {
    selectAll(item ? std::vector{*item} : std::vector<plan::ItemId>{});
}

void Work::selectAll(std::vector<plan::ItemId> items) {
    if (selection_ == items) {
        return;
    }
    selection_ = std::move(items);
    chooseLedgerRoute();
    Q_EMIT selectionChanged();
}

/// The route that is selected; for a route point the one shown already where it sits on that, too, else the first.
void Work::chooseLedgerRoute() {
    const auto leading = selected();
    if (!leading) {
        return;
    }
    if (committed().route(*leading)) {
        ledgerRoute_ = leading;
        return;
    }
    const plan::RoutePtr shown = ledgerRoute_ ? committed().route(*ledgerRoute_) : nullptr;
    if (shown && sitsOn(*shown, *leading)) {
        return;
    }
    for (const plan::RoutePtr& route : committed().routes()) {
        if (sitsOn(*route, *leading)) {
            ledgerRoute_ = route->id;
            return;
        }
    }
}

void Work::setWorkingFilm(const plan::FilmId& film) {
    if (working_ != film && plan().film(film)) {
        working_ = film;
        looks_[film].shown = true;
        Q_EMIT tableChanged();
    }
}

void Work::setPhase(int number) {
    if (phase_ != number) {
        phase_ = number;
        keepChoices();
        Q_EMIT tableChanged();
    }
}

FilmLook Work::look(const plan::FilmId& film) const {
    const auto found = looks_.find(film);
    return found == looks_.end() ? FilmLook{} : found->second;
}

void Work::setLook(const plan::FilmId& film, FilmLook look) {
    looks_[film] = look;
    Q_EMIT tableChanged();
}

std::vector<plan::FilmPtr> Work::filmsOnTable() const {
    std::vector<plan::FilmPtr> films;
    for (const plan::FilmPtr& film : plan().films()) {
        if (phase_ == 0 || film->phases.empty() || film->phases.contains(phase_)) {
            films.push_back(film);
        }
    }
    return films;
}

std::vector<plan::FilmPtr> Work::filmsSeen() const {
    std::vector<plan::FilmPtr> films = filmsOnTable();
    const plan::FilmPtr working = working_ ? plan().film(*working_) : nullptr;
    std::erase_if(films, [&](const plan::FilmPtr& film) {
        const bool isAway = working && working->inset ? film->id != working->id : film->inset.has_value();
        return isAway || !look(film->id).shown || (company_ == Company::WorkingAlone && working_ != film->id);
    });
    if (top_ == Top::Lifted && !films.empty()) {  // the working film lies on top of all others
        const auto top = std::find_if(films.begin(), films.end(),
                                      [this](const plan::FilmPtr& film) { return working_ == film->id; });
        films.erase(top == films.end() ? films.end() - 1 : top);
    }
    return films;
}

bool Work::isSeen(const plan::FilmId& film) const {
    const auto films = filmsSeen();
    return std::any_of(films.begin(), films.end(), [&](const plan::FilmPtr& seen) { return seen->id == film; });
}

void Work::setCompany(Company company) {
    if (company_ != company) {
        company_ = company;
        Q_EMIT tableChanged();
    }
}

void Work::setTop(Top top) {
    if (top_ != top) {
        top_ = top;
        Q_EMIT tableChanged();
    }
}

void Work::setPens(Pens pens) {
    if (pens_ != pens) {
        pens_ = pens;
        Q_EMIT tableChanged();
    }
}

void Work::setAngles(geodesy::AngleUnit unit) {
    if (angles_ != unit) {
        angles_ = unit;
        Q_EMIT planChanged();
    }
}

void Work::setWetRoute(std::optional<plan::Plan> with, plan::ItemId route) {
    if (with || wetPlan_) {
        wetPlan_ = std::move(with);
        wetRoute_ = route;
        Q_EMIT wetChanged();
    }
}

plan::RoutePtr Work::ledgerRoute() const {
    if (wetPlan_) {
        return wetPlan_->route(wetRoute_);
    }
    return ledgerRoute_ ? plan().route(*ledgerRoute_) : nullptr;
}

}  // namespace crosstick::work
