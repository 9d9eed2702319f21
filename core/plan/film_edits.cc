#include "core/plan/film_edits.h"

#include <algorithm>

namespace crosstick::plan {

Plan restackedTo(const Plan& plan, const FilmId& film, std::size_t place) {
    std::vector<Uuid> order;
    for (const FilmPtr& held : plan.films()) {
        order.push_back(held->id);
    }
    const auto at = std::find(order.begin(), order.end(), film);
    if (at == order.end()) {
        return plan;
    }
    const auto to = order.begin() + static_cast<std::ptrdiff_t>(std::min(place, order.size() - 1));
    if (at == to) {
        return plan;
    }
    at < to ? std::rotate(at, at + 1, to + 1) : std::rotate(to, at, at + 1);
    PlanBuilder builder(plan);
    builder.order({}, order, {});
    return std::move(builder).build();
}

Plan withPhasesOf(const Plan& plan, const FilmId& film, std::set<int> phases) {
    const FilmPtr held = plan.film(film);
    if (!held || held->phases == phases) {
        return plan;
    }
    Film next = *held;
    next.phases = std::move(phases);
    PlanBuilder builder(plan);
    builder.put(std::move(next));
    return std::move(builder).build();
}

}  // namespace crosstick::plan
