#include "core/movement/checklist.h"

#include <algorithm>

#include "core/movement/work_grid.h"

namespace crosstick::movement {
namespace {

/// When the event's man is at its place by the march table; nothing where the table has neither.
std::optional<Instant> byMarch(const plan::Event& event, const std::vector<MarchTable>& tables) {
    const auto table = std::find_if(tables.begin(), tables.end(),
                                    [&](const MarchTable& one) { return event.route && one.route == *event.route; });
    if (table == tables.end() || !event.place) {
        return std::nullopt;
    }
    const auto point = std::find_if(table->points.begin(), table->points.end(),
                                    [&](const MarchPoint& one) { return one.item == *event.place; });
    if (point == table->points.end()) {
        return std::nullopt;
    }
    Passing passing = point->column;
    for (std::size_t n = 0; event.element && n < table->elements.size(); ++n) {
        if (table->elements[n].element == *event.element) {
            passing = point->elements[n];
        }
    }
    return table->when(event.man == plan::WhichMan::First ? passing.arrive : passing.clear);
}

std::string reporterOf(const plan::Plan& plan, const plan::Event& event) {
    const plan::Element* element = event.reporter ? plan.force().element(*event.reporter) : nullptr;
    if (element == nullptr) {
        return {};
    }
    return element->callSign.empty() ? element->name : element->name + ", " + element->callSign;
}

/// Of a point; a line lies at many.
std::string gridOf(const plan::Measure& measure, const WorkGrid& grid) {
    if (measure.points.size() != 1) {
        return {};
    }
    const auto onGrid = grid.onGrid(measure.points.front());
    return onGrid ? grid.gridText(*onGrid) : std::string{};
}

/// The latest event that has happened says how late everything after it will be.
void moveWhatFollows(std::vector<ChecklistRow>& rows) {
    const ChecklistRow* last = nullptr;
    for (const ChecklistRow& row : rows) {
        if (row.planned && row.event.actual && (last == nullptr || *row.planned >= *last->planned)) {
            last = &row;
        }
    }
    if (last == nullptr) {
        return;
    }
    const Instant until = *last->planned;
    const auto late = *last->event.actual - until;
    for (ChecklistRow& row : rows) {
        if (row.planned && !row.event.actual && *row.planned >= until) {
            row.expected = *row.planned + late;
        }
    }
}

}  // namespace

Result<std::vector<ChecklistRow>> executionChecklist(const plan::Plan& plan, const std::vector<MarchTable>& tables) {
    const auto grid = WorkGrid::of(plan);
    if (!grid) {
        return tl::unexpected(grid.error());
    }
    std::vector<ChecklistRow> rows;
    for (const plan::Event& event : plan.force().events) {
        ChecklistRow row{event, {}, {}, reporterOf(plan, event), byMarch(event, tables), {}};
        if (!row.planned) {
            row.planned = event.planned;
        }
        row.expected = event.actual ? event.actual : row.planned;
        if (const auto measure = event.place ? plan.measure(*event.place) : nullptr) {
            row.place = label(*measure);
            row.grid = gridOf(*measure, *grid);
        }
        rows.push_back(std::move(row));
    }
    moveWhatFollows(rows);
    return rows;
}

}  // namespace crosstick::movement
