#include "core/plan/joined_phases.h"

#include <algorithm>
#include <set>
#include <utility>
#include <vector>

#include "core/plan/edits.h"
#include "core/plan/next_phase.h"
#include "core/plan/showings.h"

namespace crosstick::plan {
namespace {

const Phase* phaseOf(const Plan& plan, int number) {
    const auto& phases = plan.phases();
    const auto found =
        std::find_if(phases.begin(), phases.end(), [&](const Phase& phase) { return phase.number == number; });
    return found == phases.end() ? nullptr : &*found;
}

FilmPtr uppermostThatBegins(const Plan& plan, int phase) {
    const auto& films = plan.films();
    const auto found = std::find_if(films.rbegin(), films.rend(), [phase](const FilmPtr& film) {
        return !film->inset && !film->phases.empty() && *film->phases.begin() == phase;
    });
    return found == films.rend() ? nullptr : *found;
}

void layOnto(Film& film, const Film& upper) {
    for (const Showing& showing : upper.shows) {
        if (!isShownOn(film, showing.item)) {
            film.shows.push_back(showing);
            film.shows.back().order = orderBetween(film.shows.size() > 1 ? film.shows.end()[-2].order : "", "");
        }
    }
    film.phases.insert(upper.phases.begin(), upper.phases.end());
}

/// Does the film show a unit of the same words whose place is of a state: the one that an assumed one was made from, or
/// the other way round?
bool hasTwin(const Plan& plan, const Film& film, const Measure& unit, PlaceState state) {
    return std::any_of(film.shows.begin(), film.shows.end(), [&](const Showing& showing) {
        const MeasurePtr other = plan.measure(showing.item);
        return other && other->id != unit.id && other->kind == unit.kind && other->fields == unit.fields &&
               other->name == unit.name && other->number == unit.number && other->state == state;
    });
}

/// On which of the two films a thing goes on.
enum class Side { Earlier, Later, Both };

Side sideOf(const Plan& plan, const Film& film, const Phase& phase, const Offer& offer) {
    const MeasurePtr measure = plan.measure(offer.item);
    if (measure && measure->from && phase.until && *measure->from >= *phase.until) {
        return Side::Later;
    }
    if (measure && offer.passage == Passage::Proposed) {
        const bool isAssumed = measure->state == PlaceState::Assumed;
        if (hasTwin(plan, film, *measure, isAssumed ? PlaceState::Confirmed : PlaceState::Assumed)) {
            return isAssumed ? Side::Later : Side::Earlier;
        }
        return offer.because == Because::Marched ? Side::Earlier : Side::Both;
    }
    return offer.taken ? Side::Both : Side::Earlier;
}

/// The film's part of the plan alone, of one phase: what the rules of the next phase say of its things.
std::vector<Offer> offersOf(const Plan& plan, const Film& film, int phase) {
    Film alone = film;
    alone.phases = {phase};
    PlanBuilder builder(plan);
    for (const FilmPtr& other : plan.films()) {
        if (other->id != film.id) {
            builder.removeFilm(other->id);
        }
    }
    builder.put(std::move(alone));
    const auto next = proposedNextPhase(std::move(builder).build(), phase);
    return next ? next->offers : std::vector<Offer>{};
}

Plan rightAbove(const Plan& plan, const FilmId& film, const FilmId& later) {
    std::vector<Uuid> order;
    for (const FilmPtr& held : plan.films()) {
        if (held->id != later) {
            order.push_back(held->id);
        }
        if (held->id == film) {
            order.push_back(later);
        }
    }
    PlanBuilder builder(plan);
    builder.order({}, order, {});
    return std::move(builder).build();
}

}  // namespace

std::optional<int> nextPhaseOf(const Plan& plan, const Film& film) {
    if (film.inset || film.phases.empty() || phaseOf(plan, *film.phases.rbegin() + 1) == nullptr) {
        return std::nullopt;
    }
    return *film.phases.rbegin() + 1;
}

Plan joinedWithNextPhase(const Plan& plan, const FilmId& film) {
    const FilmPtr held = plan.film(film);
    const auto next = held ? nextPhaseOf(plan, *held) : std::nullopt;
    if (!next) {
        return plan;
    }
    Film joined = *held;
    joined.phases.insert(*next);
    PlanBuilder builder(plan);
    if (const FilmPtr upper = uppermostThatBegins(plan, *next)) {
        layOnto(joined, *upper);
        for (const FilmPtr& other : plan.films()) {
            if (other->inset && other->inset->parent == upper->id) {
                Film inset = *other;
                inset.inset->parent = film;
                builder.put(std::move(inset));
            }
        }
        builder.removeFilm(upper->id);
    }
    builder.put(std::move(joined));
    return std::move(builder).build();
}

Plan partedAfterPhase(const Plan& plan, const FilmId& film, int phase, const FilmId& later, std::string name) {
    const FilmPtr held = plan.film(film);
    const Phase* ending = phaseOf(plan, phase);
    if (!held || ending == nullptr || held->inset || held->phases.empty() || *held->phases.begin() > phase ||
        *held->phases.rbegin() <= phase) {
        return plan;
    }
    Film first = *held;
    first.phases.erase(first.phases.upper_bound(phase), first.phases.end());
    Film second = *held;
    second.id = later;
    second.name = std::move(name);
    second.phases.erase(second.phases.begin(), second.phases.upper_bound(phase));
    for (const Offer& offer : offersOf(plan, *held, phase)) {
        const Side side = sideOf(plan, *held, *ending, offer);
        if (side == Side::Earlier) {
            second = filmWithout(second, offer.item);
        } else if (side == Side::Later) {
            first = filmWithout(first, offer.item);
        }
    }
    PlanBuilder builder(plan);
    builder.put(std::move(first)).put(std::move(second));
    return rightAbove(std::move(builder).build(), film, later);
}

}  // namespace crosstick::plan
