#include "ui/window/list_names.h"

#include "core/measures/catalogue.h"
#include "core/movement/paper_figures.h"

namespace crosstick::window {
namespace {

/// The units on both sides of a boundary.
std::string bothSides(const plan::Measure& measure) {
    std::string units;
    for (const char* side : {"left_unit", "right_unit"}) {
        const auto unit = measure.fields.find(side);
        if (unit != measure.fields.end() && !unit->second.empty()) {
            units += (units.empty() ? "" : ", ") + unit->second;
        }
    }
    return units;
}

}  // namespace

QString listName(const plan::Plan& plan, const plan::ItemId& item) {
    if (const plan::RoutePtr route = plan.route(item)) {
        return QString::fromStdString(movement::routeTitle(route->name));
    }
    const plan::MeasurePtr measure = plan.measure(item);
    const measures::Entry* entry = measure ? measures::find(measure->kind) : nullptr;
    if (!measure) {
        return {};
    }
    std::string name = movement::label(*measure);
    const bool saysItsKind = entry == nullptr || name == entry->name || measure->fields.contains("unit") ||
                             (!entry->abbreviation.empty() && entry->wording != measures::Wording::Bare);
    if (!saysItsKind) {
        name = std::string(entry->name) + ' ' + name;
    }
    const std::string sides = bothSides(*measure);
    return QString::fromStdString(sides.empty() ? name : name + ' ' + sides);
}

}  // namespace crosstick::window
