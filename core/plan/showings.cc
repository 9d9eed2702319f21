#include "core/plan/showings.h"

#include <algorithm>

namespace crosstick::plan {
namespace {

const Showing* showingOf(const Film& film, const ItemId& item) {
    const auto found = std::find_if(film.shows.begin(), film.shows.end(),
                                    [&](const Showing& showing) { return showing.item == item; });
    return found == film.shows.end() ? nullptr : &*found;
}

/// The film with a change made to one of its showings.
template <class Change>
Plan withShowing(const Plan& plan, const ItemId& item, const FilmId& film, Change&& change) {
    const FilmPtr held = plan.film(film);
    if (!held || showingOf(*held, item) == nullptr) {
        return plan;
    }
    Film next = *held;
    for (Showing& showing : next.shows) {
        if (showing.item == item) {
            change(showing);
        }
    }
    PlanBuilder builder(plan);
    builder.put(std::move(next));
    return std::move(builder).build();
}

/// A row without its leader: the next one leads, from where the leader stood.
void passOn(Film& film, const Showing& leader) {
    std::optional<ItemId> next;
    for (Showing& showing : film.shows) {
        if (showing.standsWith != leader.item) {
            continue;
        }
        if (next) {
            showing.standsWith = next;
        } else {
            next = showing.item;
            showing.standsWith.reset();
            showing.symbolAt = leader.symbolAt;
            showing.pointsTo = leader.pointsTo;
        }
    }
}

}  // namespace

ItemId leaderOf(const Film& film, const ItemId& item) {
    const Showing* showing = showingOf(film, item);
    if (showing == nullptr || !showing->standsWith || *showing->standsWith == item) {
        return item;
    }
    // One step is enough: edits let a unit stand with a leader only. A file that says otherwise is taken at its word
    // no farther.
    const Showing* leader = showingOf(film, *showing->standsWith);
    return leader != nullptr && !leader->standsWith ? leader->item : item;
}

Film filmWithout(const Film& film, const ItemId& item) {
    Film next = film;
    if (const Showing* gone = showingOf(film, item)) {
        std::erase_if(next.shows, [&](const Showing& showing) { return showing.item == item; });
        passOn(next, *gone);
    }
    return next;
}

Plan setAside(const Plan& plan, const ItemId& item, const FilmId& film, std::optional<geodesy::PlanePoint> symbolAt) {
    const FilmPtr held = plan.film(film);
    return !held
               ? plan
               : withShowing(plan, leaderOf(*held, item), film, [&](Showing& showing) { showing.symbolAt = symbolAt; });
}

Plan labelPlaced(const Plan& plan, const ItemId& item, const FilmId& film, std::optional<geodesy::PlanePoint> labelAt) {
    return withShowing(plan, item, film, [&](Showing& showing) {
        showing.labelAt = labelAt;
        if (!labelAt) {
            showing.figures.clear();
        }
    });
}

Plan figuresPlaced(const Plan& plan, const ItemId& route, const FilmId& film, const LegPiece& leg,
                   geodesy::PlanePoint at) {
    return withShowing(plan, route, film, [&](Showing& showing) {
        const auto placed = std::find_if(showing.figures.begin(), showing.figures.end(),
                                         [&](const FiguresAt& one) { return one.leg == leg; });
        if (placed != showing.figures.end()) {
            placed->at = at;
        } else {
            showing.figures.push_back({leg, at});
        }
    });
}

Plan standingWith(const Plan& plan, const ItemId& item, const FilmId& film, std::optional<ItemId> unit) {
    const FilmPtr held = plan.film(film);
    if (!held || showingOf(*held, item) == nullptr || (unit && showingOf(*held, *unit) == nullptr)) {
        return plan;
    }
    const std::optional<ItemId> leader = unit ? std::optional(leaderOf(*held, *unit)) : std::nullopt;
    if (leader == item || (!unit && leaderOf(*held, item) == item)) {
        return plan;  // with itself, or out of a row that it does not follow in
    }
    Film next = *held;
    std::vector<ItemId> joining;
    for (Showing& showing : next.shows) {
        if (showing.item == item || (unit && showing.standsWith == item)) {
            showing.standsWith = leader;
            showing.symbolAt.reset();
            showing.pointsTo.reset();
            joining.push_back(showing.item);
        }
    }
    PlanBuilder builder(plan);
    builder.put(std::move(next));
    const MeasurePtr spot = leader ? plan.measure(*leader) : nullptr;
    for (const ItemId& one : joining) {
        if (const MeasurePtr measure = plan.measure(one); measure && spot && !spot->points.empty()) {
            Measure moved = *measure;
            moved.points = {spot->points.front()};
            builder.put(std::move(moved));
        }
    }
    return std::move(builder).build();
}

Plan pointingTo(const Plan& plan, const ItemId& item, const FilmId& film, std::optional<ItemId> edge) {
    const FilmPtr held = plan.film(film);
    return !held ? plan
                 : withShowing(plan, leaderOf(*held, item), film, [&](Showing& showing) { showing.pointsTo = edge; });
}

}  // namespace crosstick::plan
