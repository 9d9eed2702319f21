#include "core/plan/plan.h"

#include "core/geodesy/crs.h"

namespace crosstick::plan {
namespace {

template <class T>
std::shared_ptr<const T> findById(const std::vector<std::shared_ptr<const T>>& list, const Uuid& id) {
    for (const auto& value : list) {
        if (value->id == id) {
            return value;
        }
    }
    return nullptr;
}

template <class T>
std::shared_ptr<const T> findByName(const std::vector<std::shared_ptr<const T>>& list, std::string_view name) {
    for (const auto& value : list) {
        if (value->name == name) {
            return value;
        }
    }
    return nullptr;
}

/// Equal where the pointers are, else where every value is.
template <class T>
bool sameValues(const std::vector<std::shared_ptr<const T>>& a, const std::vector<std::shared_ptr<const T>>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](const auto& x, const auto& y) { return x == y || *x == *y; });
}

template <class T>
bool same(const std::shared_ptr<const T>& a, const std::shared_ptr<const T>& b) {
    return a == b || *a == *b;
}

template <class T>
using List = std::shared_ptr<const std::vector<std::shared_ptr<const T>>>;

template <class T>
List<T> with(const List<T>& list, T value) {
    auto next = std::make_shared<std::vector<std::shared_ptr<const T>>>(*list);
    auto fresh = std::make_shared<const T>(std::move(value));
    for (auto& held : *next) {
        if (held->id == fresh->id) {
            held = std::move(fresh);
            return next;
        }
    }
    next->push_back(std::move(fresh));
    return next;
}

template <class T>
List<T> without(const List<T>& list, const Uuid& id) {
    auto next = std::make_shared<std::vector<std::shared_ptr<const T>>>(*list);
    std::erase_if(*next, [&](const auto& held) { return held->id == id; });
    return next;
}

}  // namespace

MeasurePtr Plan::measure(const ItemId& id) const {
    return measures_.find(id);
}
RoutePtr Plan::route(const ItemId& id) const {
    return findById(*routes_, id);
}
FilmPtr Plan::film(const FilmId& id) const {
    return findById(*films_, id);
}
FilmPtr Plan::filmNamed(std::string_view name) const {
    return findByName(*films_, name);
}
RoutePtr Plan::routeNamed(std::string_view name) const {
    return findByName(*routes_, name);
}
SheetPtr Plan::sheet(const SheetId& id) const {
    return findById(*sheets_, id);
}

SheetPtr Plan::groundSheet(const Film& film) const {
    if (film.groundSheet) {
        if (auto own = sheet(*film.groundSheet)) {
            return own;
        }
    }
    return sheets_->empty() ? nullptr : sheets_->front();
}

std::string Plan::gridCrs(const Film& film) const {
    const SheetPtr ground = groundSheet(film);
    return ground ? ground->crs : planeCrs();
}

drawing::Gauge Plan::gauge(const Film& film) const {
    return film.gauge ? *film.gauge : heading_->gauge.value_or(drawing::Gauge{});
}

std::string Plan::planeCrs() const {
    return geodesy::crsOfZone(heading_->plane);
}

bool operator==(const Plan& a, const Plan& b) {
    return a.id_ == b.id_ && same(a.heading_, b.heading_) && same(a.phases_, b.phases_) &&
           same(a.registration_, b.registration_) && same(a.force_, b.force_) && sameValues(*a.sheets_, *b.sheets_) &&
           sameValues(*a.films_, *b.films_) && sameValues(*a.routes_, *b.routes_) && a.measures_ == b.measures_;
}

PlanBuilder& PlanBuilder::id(const Uuid& id) {
    plan_.id_ = id;
    return *this;
}
PlanBuilder& PlanBuilder::heading(Heading heading) {
    plan_.heading_ = std::make_shared<const Heading>(std::move(heading));
    return *this;
}
PlanBuilder& PlanBuilder::phases(std::vector<Phase> phases) {
    plan_.phases_ = std::make_shared<const std::vector<Phase>>(std::move(phases));
    return *this;
}
PlanBuilder& PlanBuilder::force(Force force) {
    plan_.force_ = std::make_shared<const Force>(std::move(force));
    return *this;
}

PlanBuilder& PlanBuilder::registration(std::optional<Registration> registration) {
    plan_.registration_ = std::make_shared<const std::optional<Registration>>(std::move(registration));
    return *this;
}
PlanBuilder& PlanBuilder::put(Sheet sheet) {
    plan_.sheets_ = with(plan_.sheets_, std::move(sheet));
    return *this;
}
PlanBuilder& PlanBuilder::put(Film film) {
    std::stable_sort(film.shows.begin(), film.shows.end(),
                     [](const Showing& a, const Showing& b) { return a.order < b.order; });
    plan_.films_ = with(plan_.films_, std::move(film));
    return *this;
}
PlanBuilder& PlanBuilder::put(Route route) {
    plan_.routes_ = with(plan_.routes_, std::move(route));
    return *this;
}
PlanBuilder& PlanBuilder::put(Measure measure) {
    plan_.measures_ = plan_.measures_.with(std::make_shared<const Measure>(std::move(measure)));
    return *this;
}

PlanBuilder& PlanBuilder::put(ChunkedList<Measure> all) {
    plan_.measures_ = std::move(all);
    return *this;
}

PlanBuilder& PlanBuilder::put(std::vector<Measure> many) {
    std::vector<MeasurePtr> all;
    all.reserve(plan_.measures_.size() + many.size());
    plan_.measures_.forEach([&](const MeasurePtr& held) { all.push_back(held); });
    for (Measure& measure : many) {
        all.push_back(std::make_shared<const Measure>(std::move(measure)));
    }
    plan_.measures_ = ChunkedList<Measure>(std::move(all));
    return *this;
}

PlanBuilder& PlanBuilder::removeMeasure(const ItemId& id) {
    plan_.measures_ = plan_.measures_.without(id);
    return *this;
}
PlanBuilder& PlanBuilder::removeRoute(const ItemId& id) {
    plan_.routes_ = without(plan_.routes_, id);
    return *this;
}
PlanBuilder& PlanBuilder::removeFilm(const FilmId& id) {
    plan_.films_ = without(plan_.films_, id);
    return *this;
}
PlanBuilder& PlanBuilder::removeSheet(const SheetId& id) {
    plan_.sheets_ = without(plan_.sheets_, id);
    return *this;
}

PlanBuilder& PlanBuilder::order(const std::vector<Uuid>& sheets, const std::vector<Uuid>& films,
                                const std::vector<Uuid>& routes) {
    const auto arranged = [](const auto& list, const std::vector<Uuid>& order) {
        auto next = std::make_shared<std::remove_cvref_t<decltype(*list)>>(*list);
        const auto place = [&](const auto& value) {
            return std::find(order.begin(), order.end(), value->id) - order.begin();
        };
        std::stable_sort(next->begin(), next->end(), [&](const auto& a, const auto& b) { return place(a) < place(b); });
        return next;
    };
    if (!sheets.empty()) {
        plan_.sheets_ = arranged(plan_.sheets_, sheets);
    }
    if (!films.empty()) {
        plan_.films_ = arranged(plan_.films_, films);
    }
    if (!routes.empty()) {
        plan_.routes_ = arranged(plan_.routes_, routes);
    }
    return *this;
}

Plan PlanBuilder::build() && {
    return std::move(plan_);
}

}  // namespace crosstick::plan
