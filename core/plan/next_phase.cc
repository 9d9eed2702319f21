#include "core/plan/next_phase.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/measures/afterwards.h"
#include "core/measures/unit_words.h"
#include "core/plan/edits.h"
#include "core/plan/ways_of_phase.h"

namespace crosstick::plan {
namespace {

using measures::Afterwards;

bool isEnemys(const Measure& measure) {
    const auto words = measure.fields.find("unit");
    return measure.whose == Whose::Enemy ||
           (words != measure.fields.end() &&
            measures::readUnit(words->second).affiliation == measures::Affiliation::Hostile);
}

const Phase* phaseOf(const Plan& plan, int number) {
    const auto& phases = plan.phases();
    const auto found =
        std::find_if(phases.begin(), phases.end(), [&](const Phase& phase) { return phase.number == number; });
    return found == phases.end() ? nullptr : &*found;
}

/// Films of the phase that are not of the next one, insets last: what both a film and its inset show lies on the film.
std::vector<FilmPtr> filmsThatEnd(const Plan& plan, int phase) {
    std::vector<FilmPtr> films;
    for (const FilmPtr& film : plan.films()) {
        if (film->phases.contains(phase) && !film->phases.contains(phase + 1)) {
            films.push_back(film);
        }
    }
    std::stable_partition(films.begin(), films.end(), [](const FilmPtr& film) { return !film->inset; });
    return films;
}

/// What a measure's own times say of it when the phase ends; nothing where they say nothing.
std::optional<Because> byItsTimes(const Measure& measure, const Phase& phase) {
    if (!phase.until) {
        return std::nullopt;
    }
    if (measure.until) {
        return *measure.until > *phase.until ? Because::StillToCome : Because::Expired;
    }
    return measure.from && *measure.from >= *phase.until ? std::optional(Because::StillToCome) : std::nullopt;
}

/// What the ways of the phase did to a measure; nothing where they passed it by.
std::optional<std::pair<Because, ItemId>> byTheWays(const Measure& measure, Afterwards afterwards,
                                                    const WaysOfPhase& ways) {
    if (const auto way = ways.standsOn(measure.id)) {
        return std::pair(Because::Walked, *way);
    }
    if (afterwards == Afterwards::BehindOnceCrossed) {
        if (const auto way = ways.across(measure.points)) {
            return std::pair(Because::Crossed, *way);
        }
    }
    const measures::Entry* entry = measures::find(measure.kind);
    if (entry != nullptr && entry->group == measures::Group::Areas && entry->shape == measures::Shape::Area) {
        if (const auto way = ways.outOf(measure.points)) {
            return std::pair(Because::LeftBehind, *way);
        }
    }
    return std::nullopt;
}

Offer unitOffer(const Measure& unit, const std::optional<Because>& times, const WaysOfPhase& ways) {
    Offer offer{unit.id, Passage::Proposed, Because::Stood, times != Because::Expired};
    const auto way =
        unit.points.empty() ? std::nullopt : ways.from(unit.points.front(), isEnemys(unit) ? Whose::Enemy : Whose::Own);
    if (!unit.points.empty()) {
        offer.stands = way ? way->end : unit.points.front();
    }
    if (way) {
        offer.because = Because::Marched;
        offer.way = way->item;
    }
    offer.because = offer.taken ? offer.because : Because::Expired;
    return offer;
}

Offer offerOf(const Measure& measure, const Phase& phase, const WaysOfPhase& ways) {
    const measures::Entry* entry = measures::find(measure.kind);
    const Afterwards afterwards = entry == nullptr ? Afterwards::LivesOn : measures::afterwards(*entry);
    const auto times = byItsTimes(measure, phase);
    if (afterwards == Afterwards::Moves) {
        return unitOffer(measure, times, ways);
    }
    if (times) {
        return {measure.id, Passage::Carried, *times, *times == Because::StillToCome};
    }
    if (const auto done = byTheWays(measure, afterwards, ways)) {
        return {measure.id, Passage::Carried, done->first, false, done->second};
    }
    if (measure.standing == Standing::Planned) {
        return {measure.id, Passage::Carried, Because::StillToCome, true};
    }
    const bool isSpent = afterwards == Afterwards::Spent;
    return {measure.id, Passage::Carried, isSpent ? Because::OfThePhase : Because::LivesOn, !isSpent};
}

std::string freeName(const Plan& plan, const std::string& wanted) {
    std::string name = wanted;
    for (int more = 2; plan.filmNamed(name); ++more) {
        name = wanted + ' ' + std::to_string(more);
    }
    return name;
}

/// The number of the phase after one: as it stands in the plan, else a new one that begins where the last one ends.
Phase nextAfter(const Plan& plan, const Phase& phase) {
    const Phase* known = phaseOf(plan, phase.number + 1);
    return known != nullptr ? *known : Phase{phase.number + 1, {}, phase.until, {}, {}};
}

/// Where a thing's symbol and label stood on a film of the same scale, for the film of the next phase.
Showing alike(const std::vector<FilmPtr>& films, const Film& next, const ItemId& item) {
    for (const FilmPtr& film : films) {
        for (const Showing& showing : film->shows) {
            if (showing.item == item && film->scale == next.scale && !film->inset) {
                return showing;
            }
        }
    }
    return Showing{item, {}, {}, {}};
}

Measure proposedAnew(const Measure& before, const std::optional<geodesy::PlanePoint>& stands, const ItemId& id) {
    Measure next = before;
    next.id = id;
    next.from.reset();
    next.until.reset();
    next.tracedFrom.reset();
    if (!next.points.empty() && stands) {
        next.state = PlaceState::Assumed;
        const Metres east = stands->easting - before.points.front().easting;
        const Metres north = stands->northing - before.points.front().northing;
        for (geodesy::PlanePoint& point : next.points) {
            point = {point.easting + east, point.northing + north};
        }
    }
    return next;
}

Film filmFor(const NextPhase& next, const FilmId& id, const std::vector<FilmPtr>& films) {
    Film film;
    film.id = id;
    film.name = next.film;
    film.phases = {next.phase.number};
    const auto last = std::find_if(films.rbegin(), films.rend(), [](const FilmPtr& one) { return !one->inset; });
    if (last != films.rend()) {
        film.scale = (*last)->scale;
        film.groundSheet = (*last)->groundSheet;
        film.gauge = (*last)->gauge;
    }
    return film;
}

/// Showings name other things: those that were made anew go by their new identity, those left behind by none.
void rename(std::optional<ItemId>& named, const std::map<ItemId, ItemId>& now) {
    if (named) {
        const auto found = now.find(*named);
        named = found == now.end() ? std::nullopt : std::optional(found->second);
    }
}

std::vector<Phase> withPhase(std::vector<Phase> phases, const Phase& phase) {
    const auto at = std::lower_bound(phases.begin(), phases.end(), phase,
                                     [](const Phase& a, const Phase& b) { return a.number < b.number; });
    if (at != phases.end() && at->number == phase.number) {
        *at = phase;
    } else {
        phases.insert(at, phase);
    }
    return phases;
}

}  // namespace

std::optional<NextPhase> proposedNextPhase(const Plan& plan, int after) {
    const Phase* phase = phaseOf(plan, after);
    if (phase == nullptr) {
        return std::nullopt;
    }
    NextPhase next{after, nextAfter(plan, *phase), {}, {}};
    next.film = freeName(plan, "PHASE " + std::to_string(next.phase.number));
    const std::vector<FilmPtr> films = filmsThatEnd(plan, after);
    const WaysOfPhase ways(plan, films);
    std::set<ItemId> offered;
    for (const FilmPtr& film : films) {
        for (const Showing& showing : film->shows) {
            if (!offered.insert(showing.item).second) {
                continue;
            }
            if (const MeasurePtr measure = plan.measure(showing.item)) {
                next.offers.push_back(offerOf(*measure, *phase, ways));
            } else if (const RoutePtr route = plan.route(showing.item)) {
                const bool walked = route->use != Use::Vehicle;
                next.offers.push_back(
                    {route->id, Passage::Carried, walked ? Because::Walked : Because::LivesOn, !walked});
            }
        }
    }
    return next;
}

Plan withNextPhase(const Plan& plan, const NextPhase& next, const FilmId& film, const std::function<Uuid()>& newId) {
    const std::vector<FilmPtr> films = filmsThatEnd(plan, next.after);
    Film fresh = filmFor(next, film, films);
    PlanBuilder builder(plan);
    builder.phases(withPhase(plan.phases(), next.phase));
    std::map<ItemId, ItemId> now;
    for (const Offer& offer : next.offers) {
        const MeasurePtr measure = plan.measure(offer.item);
        if (!offer.taken || (!measure && !plan.route(offer.item))) {
            continue;
        }
        Showing showing = alike(films, fresh, offer.item);
        showing.order = orderBetween(fresh.shows.empty() ? std::string{} : fresh.shows.back().order, "");
        if (measure && offer.passage == Passage::Proposed) {
            const ItemId id = newId();
            showing.item = id;
            if (offer.because == Because::Marched) {  // where its symbol was set aside is far behind
                showing.symbolAt.reset();
                showing.labelAt.reset();
            }
            builder.put(proposedAnew(*measure, offer.stands, id));
        }
        now.emplace(offer.item, showing.item);
        fresh.shows.push_back(std::move(showing));
    }
    for (Showing& showing : fresh.shows) {
        rename(showing.standsWith, now);
        rename(showing.pointsTo, now);
    }
    builder.put(std::move(fresh));
    return std::move(builder).build();
}

}  // namespace crosstick::plan
