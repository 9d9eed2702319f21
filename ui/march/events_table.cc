#include "ui/march/events_table.h"

#include <algorithm>

#include "core/movement/faults.h"
#include "core/movement/paper_figures.h"
#include "core/movement/typed_timing.h"
#include "ui/march/faults.h"

namespace crosstick::march {
namespace {

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

bool isSame(const std::string& a, const std::string& b) {
    return text(a).compare(text(b), Qt::CaseInsensitive) == 0;
}

/// "132123O": day and time to the minute.
QString dayAndTime(const std::optional<Instant>& when, TimeZone zone) {
    return when ? text(dateTimeGroup(*when + std::chrono::seconds(30), zone)).left(7) : QString();
}

}  // namespace

int EventsTable::read() {
    tables_.clear();
    rows_.clear();
    for (const auto& [id, figures] : work_.figures()) {
        if (auto table = movement::marchTable(work_.plan(), figures, force_.columnNamed({}))) {
            tables_.push_back(std::move(*table));
        }
    }
    if (work_.isOpen()) {
        if (auto rows = movement::executionChecklist(work_.plan(), tables_)) {
            rows_ = std::move(*rows);
        }
    }
    return static_cast<int>(rows_.size());
}

std::vector<TypedTable::Head> EventsTable::headsNow() const {
    return {{tr("Event"), 170},  {tr("Place"), 90},    {tr("Route"), 76},         {tr("Man"), 48},
            {tr("Of"), 76},      {tr("Planned"), 80},  {tr("Now expected"), 100}, {tr("Code word"), 86},
            {tr("Reports"), 76}, {tr("Reported"), 80}, {tr("Actual"), 80}};
}

std::optional<Instant> EventsTable::timeAt(int n, int field) const {
    const movement::ChecklistRow& one = row(n);
    switch (field) {
        case Planned:
            return one.planned;
        case Expected:
            return one.event.actual ? std::nullopt : one.expected;
        case Reported:
            return one.event.reported;
        case Actual:
            return one.event.actual;
        default:
            return std::nullopt;
    }
}

QString EventsTable::cell(int n, int field) const {
    const plan::Event& event = row(n).event;
    switch (field) {
        case What:
            return text(event.what);
        case Place:
            return text(row(n).place);
        case Route: {
            const plan::RoutePtr route = event.route ? work_.plan().route(*event.route) : nullptr;
            return route ? text(route->name) : QString();
        }
        case Man:
            return event.route ? (event.man == plan::WhichMan::First ? tr("first") : tr("last")) : QString();
        case Whose:
            return event.route && !event.element ? tr("column") : nameOf(force_, event.element);
        case CodeWord:
            return text(event.codeWord);
        case Reporter:
            return nameOf(force_, event.reporter);
        default:
            return dayAndTime(timeAt(n, field), work_.plan().heading().zone);
    }
}

QString EventsTable::toType(int n, int field) const {
    const auto when = timeAt(n, field);
    return when ? text(dateTimeGroup(*when, work_.plan().heading().zone)) : cell(n, field);
}

QString EventsTable::hint(int n, int field) const {
    const bool byMarch = row(n).event.route && (field == Planned || field == Expected);
    return byMarch           ? tr("From the march table of its route. Empty the route to give a time of your own.")
           : field == Actual ? tr("When it was. What is planned after it moves by as much.")
                             : QString();
}

bool EventsTable::isTyped(int n, int field) const {
    return field != Expected && !(field == Planned && row(n).event.route);
}

QStringList EventsTable::choices(int n, int field) const {
    QStringList all;
    switch (field) {
        case Place:
            for (const movement::MarchTable& table : tables_) {
                for (const movement::MarchPoint& point : table.points) {
                    all << text(point.label);
                }
            }
            all.removeDuplicates();
            return all;
        case Route:
            for (const plan::RoutePtr& route : work_.plan().routes()) {
                all << text(route->name);
            }
            return all;
        case Man:
            return row(n).event.route ? QStringList{tr("first"), tr("last")} : QStringList{};
        case Whose:
        case Reporter:
            return elementNames(force_);
        default:
            return {};
    }
}

std::optional<plan::ItemId> EventsTable::routeOver(const plan::ItemId& place) const {
    const plan::RoutePtr shown = work_.ledgerRoute();
    std::optional<plan::ItemId> found;
    for (const movement::MarchTable& table : tables_) {
        const bool isOver = std::any_of(table.points.begin(), table.points.end(),
                                        [&](const movement::MarchPoint& point) { return point.item == place; });
        const bool isBetter = !found || (shown && shown->id == table.route) ||
                              (table.use == plan::Use::Primary && !(shown && shown->id == *found));
        if (isOver && isBetter) {
            found = table.route;
        }
    }
    return found;
}

/// A measure by what it is called; its route follows where the event has no time of its own.
Result<plan::Event> EventsTable::withPlace(plan::Event event, const std::string& words) const {
    if (words.empty()) {
        event.place.reset();
        event.route.reset();
        return event;
    }
    std::optional<plan::ItemId> found;
    work_.plan().measures().forEach([&](const plan::MeasurePtr& measure) {
        if (isSame(movement::label(*measure), words) && (!found || routeOver(measure->id))) {
            found = measure->id;
        }
    });
    if (!found) {
        return fail(kNoSuchPlace, {{"typed", words}});
    }
    event.place = found;
    if (!event.planned) {
        event.route = routeOver(*found);
    }
    return event;
}

Result<plan::Event> EventsTable::withRoute(plan::Event event, const std::string& words) const {
    event.route.reset();
    if (words.empty()) {
        return event;
    }
    std::string known;
    for (const plan::RoutePtr& route : work_.plan().routes()) {
        if (isSame(route->name, words) || isSame(movement::routeTitle(route->name), words)) {
            event.route = route->id;
            event.planned.reset();
            return event;
        }
        known += (known.empty() ? "" : ", ") + route->name;
    }
    return fail(movement::kNoSuchRoute, {{"route", words}, {"known", known.empty() ? "none" : known}});
}

Result<plan::Event> EventsTable::withTime(plan::Event event, int n, int field, const std::string& words) const {
    std::optional<Instant>& time = field == Planned ? event.planned : field == Reported ? event.reported : event.actual;
    if (words.empty()) {
        time.reset();
        return event;
    }
    const plan::Heading& heading = work_.plan().heading();
    const plan::RoutePtr route = work_.ledgerRoute();
    const auto near = field == Planned ? std::nullopt : row(n).event.actual ? row(n).event.actual : row(n).planned;
    const auto when =
        near ? movement::momentNear(heading, words, near)
             : movement::momentTyped(heading, words, movement::notBefore(heading, route ? route->start : std::nullopt));
    if (!when) {
        return tl::unexpected(when.error());
    }
    time = *when;
    return event;
}

Result<plan::Event> EventsTable::typedEvent(int n, int field, const std::string& words) const {
    plan::Event event = row(n).event;
    switch (field) {
        case What:
            event.what = words;
            return event;
        case CodeWord:
            event.codeWord = words;
            return event;
        case Place:
            return withPlace(std::move(event), words);
        case Route:
            return withRoute(std::move(event), words);
        case Man:
            if (!isSame(words, "first") && !isSame(words, "last")) {
                return fail(kBadMan, {{"typed", words}});
            }
            event.man = isSame(words, "first") ? plan::WhichMan::First : plan::WhichMan::Last;
            return event;
        case Whose:
        case Reporter: {
            const bool isColumn = field == Whose && isSame(words, "column");
            return elementTyped(force_, isColumn ? std::string() : words).map([&](const std::optional<Uuid>& element) {
                (field == Whose ? event.element : event.reporter) = element;
                return event;
            });
        }
        default:
            return withTime(std::move(event), n, field, words);
    }
}

Result<plan::Force> EventsTable::typed(int n, int field, const std::string& words) const {
    return typedEvent(n, field, words).map([&](plan::Event&& event) {
        plan::Force force = force_;
        force.events[static_cast<std::size_t>(n)] = std::move(event);
        return force;
    });
}

int EventsTable::add(int after) {
    plan::Force force = force_;
    plan::Event fresh;
    fresh.id = work_.newId();
    const std::size_t count = force.events.size();
    const std::size_t at = after < 0 ? count : std::min(count, static_cast<std::size_t>(after) + 1);
    force.events.insert(force.events.begin() + static_cast<std::ptrdiff_t>(at), std::move(fresh));
    commit(std::move(force), "add an event");
    return static_cast<int>(at);
}

void EventsTable::takeOut(int n) {
    if (n >= 0 && n < rowCount()) {
        plan::Force force = force_;
        force.events.erase(force.events.begin() + n);
        commit(std::move(force), "take out an event");
    }
}

}  // namespace crosstick::march
