#include "core/plan/pinning.h"

#include <algorithm>
#include <set>

#include "core/plan/difference.h"

namespace crosstick::plan {
namespace {

/// What of a measure reaches the film.
Measure inked(Measure measure) {
    measure.why.clear();
    measure.tie.clear();
    measure.relations.clear();
    measure.tracedFrom.reset();
    measure.unknown.clear();
    return measure;
}

/// Of a route: its line, its name, its points, and nothing of what is told about its legs.
Route inked(Route route) {
    route.why.clear();
    route.ifNotFound.clear();
    route.start.reset();
    route.notLaterThan.reset();
    route.decision.reset();
    route.contours.clear();
    route.unknown.clear();
    for (Stop& stop : route.stops) {
        stop.leg = {};
        stop.unknown.clear();
    }
    return route;
}

template <class T>
void noteOtherInk(const std::vector<Change<T>>& changes, std::set<ItemId>& items) {
    for (const Change<T>& change : changes) {
        if (change.before && !(change.after && inked(*change.before) == inked(*change.after))) {
            items.insert(change.before->id);
        }
    }
}

}  // namespace

Plan withPin(const Plan& plan, const FilmId& film, Pin pin) {
    const FilmPtr held = plan.film(film);
    if (!held || held->pinned == (pin == Pin::Pinned)) {
        return plan;
    }
    Film next = *held;
    next.pinned = pin == Pin::Pinned;
    PlanBuilder builder(plan);
    builder.put(std::move(next));
    return std::move(builder).build();
}

FilmPtr pinnedAgainst(const Plan& before, const Plan& after) {
    const auto isPinned = [](const FilmPtr& film) { return film->pinned; };
    if (std::none_of(before.films().begin(), before.films().end(), isPinned)) {
        return nullptr;
    }
    const Difference difference = plan::difference(before, after);
    std::set<ItemId> items;
    noteOtherInk(difference.measures, items);
    noteOtherInk(difference.routes, items);
    for (const FilmPtr& film : before.films()) {
        const FilmPtr now = after.film(film->id);
        if (!film->pinned || (now && !now->pinned)) {
            continue;
        }
        const auto changes = [&items](const Showing& showing) { return items.contains(showing.item); };
        if (!now || now->shows != film->shows ||
            (!items.empty() && std::any_of(film->shows.begin(), film->shows.end(), changes))) {
            return film;
        }
    }
    return nullptr;
}

}  // namespace crosstick::plan
