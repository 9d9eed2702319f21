#include "core/plan/pasting.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/measures/catalogue.h"
#include "core/plan/showings.h"

namespace crosstick::plan {
namespace {

constexpr Metres kAsidePaper{5};  // millimetres, as points on the paper have them

geodesy::PlanePoint moved(geodesy::PlanePoint point, const Pasting& how) {
    return {point.easting + how.east, point.northing + how.north};
}

bool isMoved(const Pasting& how) {
    return how.east.value() != 0 || how.north.value() != 0;
}

/// "BODKIN" becomes "BODKIN 2", then 3.
template <class IsTaken>
std::string nameBeside(const std::string& name, IsTaken&& isTaken) {
    std::string next = name;
    for (int n = 2; isTaken(next); ++n) {
        next = name + ' ' + std::to_string(n);
    }
    return next;
}

/// Measures that carry a name of their own: text says the same wherever it stands.
bool isNamed(const Measure& measure) {
    const measures::Entry* entry = measures::find(measure.kind);
    return entry != nullptr && entry->naming == measures::Naming::Letter && entry->shape != measures::Shape::Text;
}

/// Numbers and names that a plan has, by kind: asked for each new thing, so they are looked up, not sought.
class Taken {
  public:
    explicit Taken(const Plan& plan) {
        plan.measures().forEach([this](const MeasurePtr& measure) { add(*measure); });
    }
    void add(const Measure& measure) {
        Kind& kind = kinds_[measure.kind];
        kind.numbers.insert(measure.number);
        kind.names.insert(measure.name);
    }
    /// As it is where that is free, else the next free one.
    [[nodiscard]] std::string numberFor(const Measure& measure) {
        Kind& kind = kinds_[measure.kind];
        if (measure.number.empty() || !kind.numbers.contains(measure.number)) {
            return measure.number;
        }
        while (kind.numbers.contains(std::to_string(kind.next))) {
            ++kind.next;
        }
        return std::to_string(kind.next);
    }
    [[nodiscard]] std::string nameFor(const Measure& measure) {
        const std::set<std::string>& names = kinds_[measure.kind].names;
        const auto isTaken = [&](const std::string& name) { return names.contains(name); };
        if (!isNamed(measure) || measure.name.empty() || !isTaken(measure.name)) {
            return measure.name;
        }
        for (char letter = 'A'; measure.name.size() == 1 && letter <= 'Z'; ++letter) {
            if (!isTaken(std::string(1, letter))) {
                return std::string(1, letter);
            }
        }
        return nameBeside(measure.name, isTaken);
    }

  private:
    struct Kind {
        std::set<std::string> numbers, names;
        int next = 1;
    };
    std::map<std::string, Kind> kinds_;
};

class Paster {
  public:
    Paster(const Plan& plan, const Plan& what, const Pasting& how) : what_(what), how_(how), plan_(plan), taken_(plan) {
        what_.measures().forEach([&](const MeasurePtr& measure) { ids_.emplace(measure->id, how_.newId()); });
        for (const RoutePtr& route : what_.routes()) {
            ids_.emplace(route->id, how_.newId());
        }
    }

    [[nodiscard]] Pasted paste() && {
        what_.measures().forEach([&](const MeasurePtr& measure) { lay(*measure); });
        for (const RoutePtr& route : what_.routes()) {
            lay(*route);
        }
        show();
        return {std::move(plan_), std::move(items_)};
    }

  private:
    const Plan& what_;
    const Pasting& how_;
    Plan plan_;
    Taken taken_;
    std::map<ItemId, ItemId> ids_;
    std::vector<ItemId> items_;

    [[nodiscard]] std::optional<ItemId> newFor(const std::optional<ItemId>& old) const {
        const auto found = old ? ids_.find(*old) : ids_.end();
        return found == ids_.end() ? std::nullopt : std::optional(found->second);
    }

    void lay(Measure measure) {
        measure.id = ids_.at(measure.id);
        for (geodesy::PlanePoint& point : measure.points) {
            if (measure.anchor == Anchor::Ground) {
                point = moved(point, how_);
            } else if (isMoved(how_)) {
                point = {point.easting + kAsidePaper, point.northing + kAsidePaper};
            }
        }
        measure.number = taken_.numberFor(measure);
        measure.name = taken_.nameFor(measure);
        taken_.add(measure);
        items_.push_back(measure.id);
        plan_ = std::move(PlanBuilder(plan_).put(std::move(measure))).build();
    }

    void lay(Route route) {
        route.id = ids_.at(route.id);
        route.name = nameBeside(route.name, [&](const std::string& name) { return plan_.routeNamed(name) != nullptr; });
        for (geodesy::PlanePoint& vertex : route.vertices) {
            vertex = moved(vertex, how_);
        }
        for (ContourSpot& spot : route.contours) {
            spot.at = moved(spot.at, how_);
        }
        std::erase_if(route.stops, [&](const Stop& stop) { return !ids_.contains(stop.measure); });
        for (Stop& stop : route.stops) {
            stop.measure = ids_.at(stop.measure);
            stop.leg.rally = newFor(stop.leg.rally);
        }
        route.onwardTo = newFor(route.onwardTo);
        items_.push_back(route.id);
        plan_ = std::move(PlanBuilder(plan_).put(std::move(route))).build();
    }

    /// In the order in which the films of theirs show them, those shown nowhere last.
    void show() {
        const FilmPtr held = plan_.film(how_.film);
        if (!held) {
            return;
        }
        Film film = *held;
        std::set<ItemId> shown;
        const auto add = [&](Showing showing) {
            if (shown.insert(showing.item).second) {
                showing.order = orderBetween(film.shows.empty() ? std::string{} : film.shows.back().order, "");
                film.shows.push_back(std::move(showing));
            }
        };
        for (const FilmPtr& from : what_.films()) {
            for (Showing showing : from->shows) {
                const auto item = newFor(showing.item);
                if (!item) {
                    continue;
                }
                showing.item = *item;
                for (auto* place : {&showing.symbolAt, &showing.labelAt}) {
                    *place = *place ? std::optional(moved(**place, how_)) : std::nullopt;
                }
                for (FiguresAt& figures : showing.figures) {
                    figures.at = moved(figures.at, how_);
                    figures.leg.from = newFor(figures.leg.from).value_or(ItemId{});
                    figures.leg.to = newFor(figures.leg.to).value_or(ItemId{});
                }
                showing.standsWith = newFor(showing.standsWith);
                showing.pointsTo = newFor(showing.pointsTo);
                add(std::move(showing));
            }
        }
        for (const ItemId& item : items_) {
            add({item, {}, {}, {}});
        }
        plan_ = std::move(PlanBuilder(plan_).put(std::move(film))).build();
    }
};

}  // namespace

Pasted pasted(const Plan& plan, const Plan& what, const Pasting& how) {
    return Paster(plan, what, how).paste();
}

Plan excerpt(const Plan& plan, const std::vector<ItemId>& items) {
    std::set<ItemId> wanted(items.begin(), items.end());
    for (const RoutePtr& route : plan.routes()) {
        for (const Stop& stop : route->stops) {
            if (wanted.contains(route->id)) {
                wanted.insert(stop.measure);
            }
        }
    }
    PlanBuilder builder(Plan{});
    builder.id(plan.id()).heading(plan.heading());
    plan.measures().forEach([&](const MeasurePtr& measure) {
        if (wanted.contains(measure->id)) {
            builder.put(*measure);
        }
    });
    for (const RoutePtr& route : plan.routes()) {
        if (wanted.contains(route->id)) {
            builder.put(*route);
        }
    }
    for (const FilmPtr& held : plan.films()) {
        Film film = *held;
        for (const Showing& showing : held->shows) {
            if (!wanted.contains(showing.item)) {
                film = filmWithout(film, showing.item);
            }
        }
        if (!film.shows.empty()) {
            builder.put(std::move(film));
        }
    }
    return std::move(builder).build();
}

}  // namespace crosstick::plan
