#include "core/drafting/wipe_edits.h"

#include <algorithm>
#include <cmath>

#include "core/measures/catalogue.h"
#include "core/plan/edits.h"
#include "core/plan/set_edits.h"

namespace crosstick::drafting {
namespace {

using geodesy::Line;
using geodesy::Stretch;

bool isElsewhere(const plan::Plan& plan, const plan::ItemId& item, const plan::FilmId& film) {
    return std::any_of(plan.films().begin(), plan.films().end(),
                       [&](const plan::FilmPtr& other) { return other->id != film && plan::isShownOn(*other, item); });
}

plan::Plan takenOff(const plan::Plan& plan, const plan::ItemId& item, const plan::FilmId& film) {
    return isElsewhere(plan, item, film) ? plan::notShownOn(plan, item, film) : plan::without(plan, item);
}

/// The longest first: it keeps the identity.
std::vector<Stretch> byLength(const Line& line, std::vector<Stretch> parts) {
    std::stable_sort(parts.begin(), parts.end(),
                     [&](Stretch a, Stretch b) { return lengthOf(lineOf(line, a)) > lengthOf(lineOf(line, b)); });
    return parts;
}

plan::Plan inParts(const plan::Plan& plan, const plan::Measure& whole, std::vector<Line> parts, const NewId& newId) {
    const measures::Entry* entry = measures::find(whole.kind);
    plan::Plan next = plan;
    for (std::size_t n = 0; n < parts.size(); ++n) {
        plan::Measure part = whole;
        part.points = std::move(parts[n]);
        if (n > 0) {
            part.id = newId();
            if (entry != nullptr && entry->naming == measures::Naming::Number) {
                part.number = plan::nextNumber(next, whole.kind);
            }
        }
        const plan::ItemId id = part.id;
        next = std::move(plan::PlanBuilder(next).put(std::move(part))).build();
        next = n > 0 ? plan::shownAbove(next, whole.id, id) : next;
    }
    return next;
}

/// A route's stretch with the stops on it; a halt at a stop that is left stays with it.
plan::Route stretchOf(const plan::Route& whole, Stretch part) {
    plan::Route route = whole;
    route.vertices = lineOf(whole.vertices, part);
    route.stops.clear();
    const auto first = static_cast<std::size_t>(std::ceil(part.from));
    const std::size_t shift = static_cast<double>(first) > part.from ? 1 : 0;
    for (plan::Stop stop : whole.stops) {
        const auto way = static_cast<double>(stop.vertex);
        if (way >= part.from && way <= part.to) {
            stop.vertex = stop.vertex - first + shift;
            route.stops.push_back(std::move(stop));
        }
    }
    if (part.to < static_cast<double>(whole.vertices.size() - 1)) {
        route.onwardTo.reset();
    }
    return route;
}

std::string freeName(const plan::Plan& plan, const std::string& name) {
    for (int number = 2;; ++number) {
        std::string next = name + ' ' + std::to_string(number);
        if (!plan.routeNamed(next)) {
            return next;
        }
    }
}

plan::Plan inParts(const plan::Plan& plan, const plan::Route& whole, const std::vector<Stretch>& parts,
                   const NewId& newId) {
    plan::Plan next = plan;
    for (std::size_t n = 0; n < parts.size(); ++n) {
        plan::Route part = stretchOf(whole, parts[n]);
        if (n > 0) {
            part.id = newId();
            part.name = freeName(next, whole.name);
            part.start.reset();
            part.notLaterThan.reset();
        }
        const plan::ItemId id = part.id;
        next = std::move(plan::PlanBuilder(next).put(std::move(part))).build();
        next = n > 0 ? plan::shownAbove(next, whole.id, id) : next;
    }
    return next;
}

std::vector<Line> linesOf(const Line& line, const std::vector<Stretch>& parts) {
    std::vector<Line> lines;
    std::transform(parts.begin(), parts.end(), std::back_inserter(lines),
                   [&](Stretch part) { return lineOf(line, part); });
    return lines;
}

/// Lines of as many points as one likes may be cut; a sign on set points may not.
bool mayBeCut(const measures::Entry* entry) {
    return entry != nullptr && !entry->points.most && entry->points.least > 1;
}

class RegionWipe {
  public:
    RegionWipe(const plan::FilmId& film, const Line& region, const NewId& newId)
        : film_(film), region_(region), newId_(newId) {}

    void over(Wiping& wiping, const plan::ItemId& item) const {
        if (const plan::RoutePtr route = wiping.plan.route(item)) {
            const auto parts = byLength(route->vertices, stretchesOutside(route->vertices, region_));
            if (take(wiping, item, parts == wholeOf(route->vertices), parts.empty())) {
                wiping.plan = inParts(wiping.plan, *route, parts, newId_);
            }
        } else if (const plan::MeasurePtr measure = wiping.plan.measure(item);
                   measure && measure->anchor == plan::Anchor::Ground && !measure->points.empty()) {
            overMeasure(wiping, *measure);
        }
    }

  private:
    const plan::FilmId& film_;
    const Line& region_;
    const NewId& newId_;

    static std::vector<Stretch> wholeOf(const Line& line) { return {{0, static_cast<double>(line.size()) - 1}}; }

    /// Counts, and takes off what goes altogether; true where parts are to be put in its place.
    bool take(Wiping& wiping, const plan::ItemId& item, bool isWhole, bool isGone) const {
        if (isWhole) {
            return false;
        }
        if (isGone) {
            ++wiping.whole;
            wiping.plan = takenOff(wiping.plan, item, film_);
            return false;
        }
        ++wiping.partly;
        wiping.elsewhere += isElsewhere(wiping.plan, item, film_) ? 1U : 0U;
        return true;
    }

    void overMeasure(Wiping& wiping, const plan::Measure& measure) const {
        const measures::Entry* entry = measures::find(measure.kind);
        if (!mayBeCut(entry)) {
            const auto inside = std::count_if(measure.points.begin(), measure.points.end(),
                                              [this](geodesy::PlanePoint at) { return isInside(at, region_); });
            const bool isGone = inside == std::ssize(measure.points);
            wiping.left += inside > 0 && !isGone ? 1U : 0U;
            static_cast<void>(take(wiping, measure.id, !isGone, isGone));
            return;
        }
        if (entry->shape == measures::Shape::Area) {
            auto rings = ringsOutside(measure.points, region_);
            if (take(wiping, measure.id, rings == std::vector<Line>{measure.points}, rings.empty())) {
                wiping.plan = inParts(wiping.plan, measure, std::move(rings), newId_);
            }
            return;
        }
        const auto parts = byLength(measure.points, stretchesOutside(measure.points, region_));
        if (take(wiping, measure.id, parts == wholeOf(measure.points), parts.empty())) {
            wiping.plan = inParts(wiping.plan, measure, linesOf(measure.points, parts), newId_);
        }
    }
};

std::vector<plan::ItemId> shownOn(const plan::Plan& plan, const plan::FilmId& film) {
    std::vector<plan::ItemId> items;
    if (const plan::FilmPtr held = plan.film(film)) {
        std::transform(held->shows.begin(), held->shows.end(), std::back_inserter(items),
                       [](const plan::Showing& showing) { return showing.item; });
    }
    return items;
}

}  // namespace

Wiping regionWiped(const plan::Plan& plan, const plan::FilmId& film, const Line& region, const NewId& newId) {
    Wiping wiping{plan};
    const RegionWipe wipe(film, region, newId);
    if (region.size() > 2) {
        for (const plan::ItemId& item : shownOn(plan, film)) {
            wipe.over(wiping, item);
        }
    }
    return wiping;
}

bool hasPartsToWipe(const plan::Plan& plan, const plan::ItemId& item) {
    const plan::MeasurePtr measure = plan.measure(item);
    const measures::Entry* entry = measure ? measures::find(measure->kind) : nullptr;
    return plan.route(item) != nullptr || (mayBeCut(entry) && entry->shape == measures::Shape::Line &&
                                           measure->anchor == plan::Anchor::Ground && measure->points.size() > 1);
}

plan::Plan stretchWiped(const plan::Plan& plan, const plan::ItemId& item, Stretch stretch, const NewId& newId) {
    if (const plan::RoutePtr route = plan.route(item)) {
        const auto parts = byLength(route->vertices, restOf(route->vertices, stretch));
        return parts.empty() ? plan::without(plan, item) : inParts(plan, *route, parts, newId);
    }
    const plan::MeasurePtr measure = plan.measure(item);
    if (!measure || !hasPartsToWipe(plan, item)) {
        return plan;
    }
    const auto parts = byLength(measure->points, restOf(measure->points, stretch));
    return parts.empty() ? plan::without(plan, item) : inParts(plan, *measure, linesOf(measure->points, parts), newId);
}

Wiping filmWiped(const plan::Plan& plan, const plan::FilmId& film) {
    Wiping wiping{plan};
    for (const plan::ItemId& item : shownOn(plan, film)) {
        const plan::MeasurePtr measure = plan.measure(item);
        if (!measure || measure->anchor == plan::Anchor::Ground) {
            wiping.plan = takenOff(wiping.plan, item, film);
            ++wiping.whole;
        }
    }
    return wiping;
}

}  // namespace crosstick::drafting
