#include "core/plan/force_edits.h"

#include <algorithm>

namespace crosstick::plan {

Force withoutElement(Force force, const Uuid& element) {
    std::erase_if(force.elements, [&](const Element& one) { return one.id == element; });
    for (Column& column : force.columns) {
        std::erase_if(column.serials, [&](const Serial& serial) { return serial.element == element; });
    }
    std::erase_if(force.tasks, [&](const Task& task) { return task.element == element; });
    for (Task& task : force.tasks) {
        task.attachedTo = task.attachedTo == element ? std::nullopt : task.attachedTo;
    }
    for (Event& event : force.events) {
        event.element = event.element == element ? std::nullopt : event.element;
        event.reporter = event.reporter == element ? std::nullopt : event.reporter;
    }
    return force;
}

Force withTask(Force force, Task task) {
    const auto held = std::find_if(force.tasks.begin(), force.tasks.end(), [&](const Task& one) {
        return one.element == task.element && one.phase == task.phase;
    });
    Task nothing;
    nothing.element = task.element;
    nothing.phase = task.phase;
    if (task == nothing) {
        if (held != force.tasks.end()) {
            force.tasks.erase(held);
        }
    } else if (held != force.tasks.end()) {
        *held = std::move(task);
    } else {
        force.tasks.push_back(std::move(task));
    }
    return force;
}

}  // namespace crosstick::plan
