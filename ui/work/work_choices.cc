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
    if (selected_ && !now.measure(*selected_) && !now.route(*selected_)) {
        selected_.reset();
        Q_EMIT selectionChanged();
    }
    const auto films = filmsOnTable();
    const bool onTable =
        std::any_of(films.begin(), films.end(), [&](const plan::FilmPtr& film) { return working_ == film->id; });
    if (!onTable) {
        working_ = films.empty() ? std::nullopt : std::optional(films.back()->id);
        Q_EMIT tableChanged();
    }
}

void Work::select(std::optional<plan::ItemId> item) {
    if (selected_ == item) {
        return;
    }
    selected_ = item;
    chooseLedgerRoute();
    Q_EMIT selectionChanged();
}

/// The route that is selected; for a route point the one shown already where it sits on that, too, else the first.
void Work::chooseLedgerRoute() {
    if (!selected_) {
        return;
    }
    if (committed().route(*selected_)) {
        ledgerRoute_ = selected_;
        return;
    }
    const plan::RoutePtr shown = ledgerRoute_ ? committed().route(*ledgerRoute_) : nullptr;
    if (shown && sitsOn(*shown, *selected_)) {
        return;
    }
    for (const plan::RoutePtr& route : committed().routes()) {
        if (sitsOn(*route, *selected_)) {
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
    std::erase_if(films, [this](const plan::FilmPtr& film) {
        return !look(film->id).shown || (company_ == Company::WorkingAlone && working_ != film->id);
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
