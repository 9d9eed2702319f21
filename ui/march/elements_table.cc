#include "ui/march/elements_table.h"

#include <algorithm>
#include <cmath>

#include "core/plan/force_edits.h"
#include "core/units/number_text.h"
#include "ui/march/faults.h"

namespace crosstick::march {
namespace {

constexpr double kMostPeople = 999;

QString text(std::string_view utf8) {
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

/// The task of an element in a phase, to be changed.
plan::Task taskIn(const plan::Force& force, const Uuid& element, int phase) {
    if (const plan::Task* held = force.task(element, phase)) {
        return *held;
    }
    plan::Task task;
    task.element = element;
    task.phase = phase;
    return task;
}

Result<plan::Force> withUnder(const plan::Force& force, plan::Task task, const std::string& words) {
    return elementTyped(force, words).and_then([&](const std::optional<Uuid>& under) -> Result<plan::Force> {
        if (under == task.element) {
            return fail(kUnderItself, {{"typed", words}});
        }
        task.attachedTo = under;
        return plan::withTask(force, task);
    });
}

QStringList othersThan(const plan::Force& force, const Uuid& element) {
    QStringList names = elementNames(force);
    names.removeAll(nameOf(force, element));
    return names;
}

}  // namespace

Result<int> strengthTyped(const std::string& typed) {
    const auto number = typed.empty() ? std::optional(0.0) : parseNumber(typed);
    if (!number || *number != std::floor(*number) || *number < 0 || *number > kMostPeople) {
        return fail(kBadStrength, {{"typed", typed}});
    }
    return static_cast<int>(*number);
}

int ElementsTable::read() {
    return static_cast<int>(force_.elements.size());
}

std::vector<TypedTable::Head> ElementsTable::headsNow() const {
    std::vector<Head> heads{
        {tr("Unit, in words"), 170}, {tr("Name"), 110}, {tr("Call sign"), 80}, {tr("People"), 60, true}};
    for (const plan::Phase& phase : work_.plan().phases()) {
        heads.push_back({tr("Under, in %1 %2").arg(phase.number).arg(text(phase.name)), 150});
    }
    return heads;
}

int ElementsTable::phaseOf(int field) const {
    return work_.plan().phases()[static_cast<std::size_t>(field - kOwn)].number;
}

QString ElementsTable::cell(int row, int field) const {
    const plan::Element& one = element(row);
    switch (field) {
        case Unit:
            return text(one.unit);
        case Name:
            return text(one.name);
        case CallSign:
            return text(one.callSign);
        case People:
            return one.people == 0 ? QString() : QString::number(one.people);
        default:
            return nameOf(force_, taskIn(force_, one.id, phaseOf(field)).attachedTo);
    }
}

bool ElementsTable::isTyped(int /*row*/, int /*field*/) const {
    return true;
}

QStringList ElementsTable::choices(int row, int field) const {
    return field < kOwn ? QStringList() : othersThan(force_, element(row).id);
}

Result<plan::Force> ElementsTable::typed(int row, int field, const std::string& words) const {
    plan::Force force = force_;
    plan::Element& one = force.elements[static_cast<std::size_t>(row)];
    if (field >= kOwn) {
        return withUnder(force, taskIn(force, one.id, phaseOf(field)), words);
    }
    if (field == People) {
        return strengthTyped(words).map([&](int people) {
            one.people = people;
            return force;
        });
    }
    (field == Unit ? one.unit : field == Name ? one.name : one.callSign) = words;
    return force;
}

int ElementsTable::add(int after) {
    plan::Force force = force_;
    plan::Element fresh;
    fresh.id = work_.newId();
    fresh.unit = "inf sqd";
    fresh.name = std::to_string(force.elements.size() + 1);
    const std::size_t count = force.elements.size();
    const std::size_t at = after < 0 ? count : std::min(count, static_cast<std::size_t>(after) + 1);
    force.elements.insert(force.elements.begin() + static_cast<std::ptrdiff_t>(at), std::move(fresh));
    commit(std::move(force), "add an element");
    return static_cast<int>(at);
}

void ElementsTable::takeOut(int row) {
    if (row >= 0 && row < rowCount()) {
        commit(plan::withoutElement(force_, element(row).id), "take an element out of the force");
    }
}

void TasksTable::setPhase(int number) {
    phase_ = number;
    renew();
}

int TasksTable::phase() const {
    const auto& phases = work_.plan().phases();
    const bool isThere =
        std::any_of(phases.begin(), phases.end(), [this](const plan::Phase& one) { return one.number == phase_; });
    return isThere ? phase_ : phases.empty() ? 1 : phases.front().number;
}

int TasksTable::read() {
    return static_cast<int>(force_.elements.size());
}

std::vector<TypedTable::Head> TasksTable::headsNow() const {
    return {{tr("Element"), 110}, {tr("Task"), 190},     {tr("Purpose"), 220}, {tr("Place"), 90},
            {tr("Trigger"), 110}, {tr("Code word"), 90}, {tr("Under"), 90}};
}

plan::Task TasksTable::task(int row) const {
    return taskIn(force_, force_.elements[static_cast<std::size_t>(row)].id, phase());
}

QString TasksTable::cell(int row, int field) const {
    const plan::Task one = task(row);
    switch (field) {
        case Name:
            return nameOf(force_, one.element);
        case What:
            return text(one.task);
        case Purpose:
            return text(one.purpose);
        case Place:
            return text(one.place);
        case Trigger:
            return text(one.trigger);
        case CodeWord:
            return text(one.codeWord);
        default:
            return nameOf(force_, one.attachedTo);
    }
}

bool TasksTable::isTyped(int /*row*/, int field) const {
    return field != Name;
}

QStringList TasksTable::choices(int row, int field) const {
    return field == Under ? othersThan(force_, task(row).element) : QStringList();
}

Result<plan::Force> TasksTable::typed(int row, int field, const std::string& words) const {
    plan::Task one = task(row);
    if (field == Under) {
        return withUnder(force_, one, words);
    }
    (field == What      ? one.task
     : field == Purpose ? one.purpose
     : field == Place   ? one.place
     : field == Trigger ? one.trigger
                        : one.codeWord) = words;
    return plan::withTask(force_, std::move(one));
}

int TasksTable::add(int /*after*/) {
    return rowCount() - 1;  // an element has one task in a phase: its row is there already
}

void TasksTable::takeOut(int row) {
    if (row >= 0 && row < rowCount()) {
        plan::Task nothing;
        nothing.element = task(row).element;
        nothing.phase = phase();
        commit(plan::withTask(force_, nothing), "take out a task");
    }
}

}  // namespace crosstick::march
