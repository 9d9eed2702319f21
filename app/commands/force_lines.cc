// Lines that say who we are, in which order we move, what each is to do, and what is reported.
#include <algorithm>

#include "app/commands/line_parts.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

/// The one with a name, or a new one at the end.
template <class Thing>
Thing& named(std::vector<Thing>& things, std::string Thing::*name, const std::string& wanted, IdSource& ids) {
    const auto found =
        std::find_if(things.begin(), things.end(), [&](const Thing& one) { return one.*name == wanted; });
    if (found != things.end()) {
        return *found;
    }
    Thing fresh;
    fresh.id = ids.next();
    fresh.*name = wanted;
    things.push_back(std::move(fresh));
    return things.back();
}

template <class Thing>
void takeOut(std::vector<Thing>& things, std::string Thing::*name, const std::string& wanted) {
    std::erase_if(things, [&](const Thing& one) { return one.*name == wanted; });
}

/// Everybody and everything that stood with an element.
void takeOutElement(plan::Force& force, const Uuid& element) {
    std::erase_if(force.elements, [&](const plan::Element& one) { return one.id == element; });
    std::erase_if(force.tasks, [&](const plan::Task& one) { return one.element == element; });
    for (plan::Column& column : force.columns) {
        std::erase_if(column.serials, [&](const plan::Serial& one) { return one.element == element; });
    }
    for (plan::Task& task : force.tasks) {
        task.attachedTo = task.attachedTo == element ? std::nullopt : task.attachedTo;
    }
    for (plan::Event& event : force.events) {
        event.element = event.element == element ? std::nullopt : event.element;
        event.reporter = event.reporter == element ? std::nullopt : event.reporter;
    }
}

/// "1 Sqd as POINT behind 40".
Result<plan::Serial> serialIn(const PlanLine& line, const plan::Plan& plan, std::string text) {
    plan::Serial serial;
    if (const auto at = text.rfind(" behind "); at != std::string::npos) {
        const auto metres = numberIn(line, trimmed(text.substr(at + 8)), Least::Nothing);
        if (!metres) {
            return tl::unexpected(metres.error());
        }
        serial.behind = Metres(*metres);
        text.resize(at);
    }
    if (const auto at = text.rfind(" as "); at != std::string::npos) {
        serial.role = trimmed(text.substr(at + 4));
        text.resize(at);
    }
    return elementIn(line, plan, trimmed(text)).map([&](const Uuid& element) {
        serial.element = element;
        return serial;
    });
}

Result<void> putSerials(const PlanLine& line, const plan::Plan& plan, const std::string& text, plan::Column& column) {
    std::vector<plan::Serial> serials;
    for (const std::string& part : listed(text)) {
        auto serial = serialIn(line, plan, part);
        if (!serial) {
            return tl::unexpected(serial.error());
        }
        serials.push_back(std::move(*serial));
    }
    column.serials = std::move(serials);
    return {};
}

Result<void> putNumber(const PlanLine& line, const std::string& text, Metres& into) {
    return numberIn(line, text, Least::Nothing).map([&](double metres) { into = Metres(metres); });
}

Result<void> putMoment(const PlanLine& line, const std::string& text, std::optional<Instant>& into) {
    if (text == "none") {
        into.reset();
        return {};
    }
    return momentIn(line, text).map([&](Instant moment) { into = moment; });
}

/// "last of 3 Sqd", "first": whose man, and which.
Result<void> putMan(const PlanLine& line, const plan::Plan& plan, plan::WhichMan man, const std::string& of,
                    plan::Event& event) {
    event.man = man;
    event.element.reset();
    const auto name = after(of, "of");
    if (of.empty()) {
        return {};
    }
    if (!name) {
        return misread(line, of);
    }
    return elementIn(line, plan, *name).map([&](const Uuid& element) { event.element = element; });
}

Result<void> putEvent(const PlanLine& line, const plan::Plan& plan, const std::string& clause, plan::Event& event) {
    if (const auto text = after(clause, "place")) {
        return measureIn(line, plan, *text).map([&](const plan::ItemId& id) { event.place = id; });
    }
    if (const auto text = after(clause, "route")) {
        return routeIn(line, plan, *text).map([&](const plan::ItemId& id) { event.route = id; });
    }
    if (const auto text = after(clause, "first")) {
        return putMan(line, plan, plan::WhichMan::First, *text, event);
    }
    if (const auto text = after(clause, "last")) {
        return putMan(line, plan, plan::WhichMan::Last, *text, event);
    }
    if (const auto text = after(clause, "planned")) {
        return putMoment(line, *text, event.planned);
    }
    if (const auto text = after(clause, "code")) {
        event.codeWord = *text;
        return {};
    }
    if (const auto text = after(clause, "reports")) {
        return elementIn(line, plan, *text).map([&](const Uuid& id) { event.reporter = id; });
    }
    if (const auto text = after(clause, "reported")) {
        return putMoment(line, *text, event.reported);
    }
    if (const auto text = after(clause, "actual")) {
        return putMoment(line, *text, event.actual);
    }
    return misread(line, clause);
}

Result<void> putTask(const PlanLine& line, const plan::Plan& plan, const std::string& clause, plan::Task& task) {
    if (const auto text = after(clause, "under")) {
        if (*text == "none") {
            task.attachedTo.reset();
            return {};
        }
        return elementIn(line, plan, *text).map([&](const Uuid& id) { task.attachedTo = id; });
    }
    const std::pair<std::string_view, std::string plan::Task::*> texts[]{{"task", &plan::Task::task},
                                                                         {"purpose", &plan::Task::purpose},
                                                                         {"place", &plan::Task::place},
                                                                         {"trigger", &plan::Task::trigger},
                                                                         {"code", &plan::Task::codeWord}};
    for (const auto& [word, member] : texts) {
        if (const auto text = after(clause, word)) {
            task.*member = *text;
            return {};
        }
    }
    return misread(line, clause);
}

}  // namespace

LineTaken takeElement(const PlanLine& line, const plan::Plan& plan, IdSource& ids) {
    if (line.name.empty()) {
        return misread(line, "element");
    }
    plan::Force force = plan.force();
    if (saysNone(line)) {
        return elementIn(line, plan, line.name).map([&](const Uuid& element) {
            takeOutElement(force, element);
            return withForce(plan, std::move(force));
        });
    }
    plan::Element& element = named(force.elements, &plan::Element::name, line.name, ids);
    for (const std::string& clause : line.clauses) {
        if (const auto text = after(clause, "people")) {
            const auto people = parseWhole(*text);
            constexpr std::int64_t kMost = 100000;
            if (!people || *people < 0 || *people > kMost) {
                return misread(line, clause);
            }
            element.people = static_cast<int>(*people);
        } else if (const auto call = after(clause, "call")) {
            element.callSign = *call;
        } else if (const auto symbol = after(clause, "symbol")) {
            element.unit = *symbol;
        } else {
            return misread(line, clause);
        }
    }
    return withForce(plan, std::move(force));
}

LineTaken takeColumn(const PlanLine& line, const plan::Plan& plan, IdSource& ids) {
    if (line.name.empty()) {
        return misread(line, "column");
    }
    plan::Force force = plan.force();
    if (saysNone(line)) {
        takeOut(force.columns, &plan::Column::name, line.name);
        return withForce(plan, std::move(force));
    }
    plan::Column& column = named(force.columns, &plan::Column::name, line.name, ids);
    for (const std::string& clause : line.clauses) {
        Result<void> put = misread(line, clause);
        if (const auto text = after(clause, "elements")) {
            put = putSerials(line, plan, *text, column);
        } else if (const auto apart = after(clause, "apart")) {
            put = putNumber(line, *apart, column.apart);
        } else if (const auto interval = after(clause, "interval")) {
            put = putNumber(line, *interval, column.interval);
        } else if (const auto files = after(clause, "files")) {
            const auto count = parseWhole(*files);
            if (count && *count >= 1 && *count <= 100) {
                column.files = static_cast<int>(*count);
                put = {};
            }
        }
        if (!put) {
            return tl::unexpected(put.error());
        }
    }
    return withForce(plan, std::move(force));
}

LineTaken takeTask(const PlanLine& line, const plan::Plan& plan, IdSource& /*ids*/) {
    const auto in = line.name.rfind(" in ");
    const auto phase = in == std::string::npos ? std::nullopt : parseWhole(trimmed(line.name.substr(in + 4)));
    if (!phase || *phase < 1 || *phase > 1000) {
        return misread(line, line.name);
    }
    const auto element = elementIn(line, plan, trimmed(line.name.substr(0, in)));
    if (!element) {
        return tl::unexpected(element.error());
    }
    plan::Force force = plan.force();
    const auto isIt = [&](const plan::Task& one) { return one.element == *element && one.phase == *phase; };
    if (saysNone(line)) {
        std::erase_if(force.tasks, isIt);
        return withForce(plan, std::move(force));
    }
    auto found = std::find_if(force.tasks.begin(), force.tasks.end(), isIt);
    if (found == force.tasks.end()) {
        plan::Task fresh;
        fresh.element = *element;
        fresh.phase = static_cast<int>(*phase);
        found = force.tasks.insert(found, std::move(fresh));
    }
    for (const std::string& clause : line.clauses) {
        if (const auto put = putTask(line, plan, clause, *found); !put) {
            return tl::unexpected(put.error());
        }
    }
    return withForce(plan, std::move(force));
}

LineTaken takeEvent(const PlanLine& line, const plan::Plan& plan, IdSource& ids) {
    if (line.name.empty()) {
        return misread(line, "event");
    }
    plan::Force force = plan.force();
    if (saysNone(line)) {
        takeOut(force.events, &plan::Event::what, line.name);
        return withForce(plan, std::move(force));
    }
    plan::Event& event = named(force.events, &plan::Event::what, line.name, ids);
    for (const std::string& clause : line.clauses) {
        if (const auto put = putEvent(line, plan, clause, event); !put) {
            return tl::unexpected(put.error());
        }
    }
    return withForce(plan, std::move(force));
}

}  // namespace crosstick::app
