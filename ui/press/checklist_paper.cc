#include "ui/press/checklist_paper.h"

#include <algorithm>

#include <fmt/format.h>

#include "ui/press/said.h"

namespace crosstick::press {
namespace {

using drawing::Weight;
using movement::ChecklistRow;

PaperHead headOf(const plan::Plan& plan, const char* kind) {
    const plan::Heading& heading = plan.heading();
    PaperHead head;
    head.title = heading.name;
    head.purpose = joined({heading.unit, heading.prepared ? dateTimeGroup(*heading.prepared, heading.zone) : ""}, ", ");
    head.kind = said(kind);
    head.marking = heading.marking;
    head.left = {{said("Sheet"), sheetText(plan)}};
    if (heading.hHour) {
        head.right.push_back({said("H-hour"), dateTimeGroup(*heading.hHour, heading.zone)});
    }
    head.right.push_back({said("Times"), said("zone %1, to the minute", {std::string(1, heading.zone.letter)})});
    return head;
}

/// "132123O": day and time, rounded to the minute.
std::string dayAndTime(const std::optional<Instant>& when, TimeZone zone) {
    return when ? dateTimeGroup(*when + std::chrono::seconds(30), zone).substr(0, 7) : std::string{};
}

PaperColumn column(const char* key, const char* head, double width, double most, Align align = Align::Left) {
    PaperColumn one;
    one.key = key;
    one.heads = {said(head)};
    one.width = width;
    one.most = most;
    one.align = align;
    one.first = {2.4, Weight::Regular};
    one.second = {2.0, Weight::Regular};
    one.rows = 3;
    return one;
}

std::vector<PaperColumn> checklistColumns(bool moved) {
    std::vector<PaperColumn> columns{column("number", "No.", 10, 10, Align::Right), column("event", "Event", 50, 80),
                                     column("place", "Place", 34, 50),
                                     column("planned", "Planned", 22, 26, Align::Middle)};
    columns.back().first.weight = Weight::Bold;
    if (moved) {
        columns.push_back(column("expected", "Now expected", 24, 26, Align::Middle));
    }
    columns.push_back(column("code_word", "Code word", 28, 34));
    columns.back().first.weight = Weight::Bold;
    columns.push_back(column("reporter", "Reports", 26, 36));
    columns.push_back(column("reported", "Reported at", 24, 28, Align::Middle));
    columns.push_back(column("actual", "Actual time", 24, 28, Align::Middle));
    return columns;
}

/// The lines crossed in a phase's time, with the time of the column's head.
std::string linesOf(const plan::Phase& phase, const std::vector<movement::MarchTable>& tables, TimeZone zone) {
    std::vector<std::string> lines;
    for (const movement::MarchTable& table : tables) {
        for (const movement::MarchPoint& point : table.points) {
            const auto when = table.when(point.column.arrive);
            if (point.kind == movement::MarchPoint::Kind::Line && when && phase.from && phase.until &&
                *when >= *phase.from && *when < *phase.until) {
                lines.push_back(point.label + ' ' + clockTime(*when, zone));
            }
        }
    }
    return joined(lines, ", ");
}

std::string spanOf(const plan::Phase& phase, TimeZone zone) {
    return phase.from || phase.until ? said("%1 to %2", {dayAndTime(phase.from, zone), dayAndTime(phase.until, zone)})
                                     : said("times not given");
}

PaperCell taskCell(const plan::Force& force, const plan::Task* task) {
    if (task == nullptr) {
        return {};
    }
    const plan::Element* with = task->attachedTo ? force.element(*task->attachedTo) : nullptr;
    return {task->task, joined({task->purpose, task->place.empty() ? "" : said("at %1", {task->place}),
                                task->trigger.empty() ? "" : said("on %1", {task->trigger}), task->codeWord,
                                with == nullptr ? "" : said("under %1", {with->name})},
                               "; ")};
}

std::vector<PaperColumn> matrixColumns(const plan::Plan& plan, const std::vector<movement::MarchTable>& tables) {
    PaperColumn element = column("element", "Element", 34, 40);
    element.heads.push_back(said("people, call sign"));
    element.first = {2.4, Weight::Bold};
    std::vector<PaperColumn> columns{element};
    for (const plan::Phase& phase : plan.phases()) {
        PaperColumn one = column("", "", 44, 90);
        one.key = fmt::format("phase_{}", phase.number);
        one.heads = {fmt::format("{} {}", phase.number, phase.name), spanOf(phase, plan.heading().zone)};
        if (const std::string lines = linesOf(phase, tables, plan.heading().zone); !lines.empty()) {
            one.heads.push_back(lines);
        }
        one.first = {2.2, Weight::Bold};
        one.rows = 6;
        columns.push_back(std::move(one));
    }
    return columns;
}

}  // namespace

PaperTable checklistPaper(const plan::Plan& plan, const std::vector<ChecklistRow>& rows) {
    const TimeZone zone = plan.heading().zone;
    const bool moved = std::any_of(rows.begin(), rows.end(), [](const ChecklistRow& row) {
        return !row.event.actual && row.expected != row.planned;
    });
    PaperTable paper;
    paper.head = headOf(plan, "EXECUTION CHECKLIST");
    paper.columns = checklistColumns(moved);
    for (const ChecklistRow& row : rows) {
        std::vector<PaperCell> cells{{std::to_string(paper.rows.size() + 1)},
                                     {row.event.what},
                                     {row.place, row.grid},
                                     {dayAndTime(row.planned, zone)}};
        if (moved) {
            cells.push_back({row.event.actual ? "" : dayAndTime(row.expected, zone)});
        }
        cells.push_back({row.event.codeWord});
        cells.push_back({row.reporter});
        cells.push_back({dayAndTime(row.event.reported, zone)});
        cells.push_back({dayAndTime(row.event.actual, zone)});
        paper.rows.push_back(std::move(cells));
    }
    paper.head.source = said(
        "Planned times of a march are those of its march table. An actual time moves what follows by as much as it is "
        "late or early. Planning and training aid.");
    return paper;
}

PaperTable matrixPaper(const plan::Plan& plan, const std::vector<movement::MarchTable>& tables) {
    const plan::Force& force = plan.force();
    PaperTable paper;
    paper.head = headOf(plan, "EXECUTION MATRIX");
    paper.columns = matrixColumns(plan, tables);
    paper.kept = 1;
    for (const plan::Element& element : force.elements) {
        std::vector<PaperCell> row{
            {element.name.empty() ? element.unit : element.name,
             joined({element.people == 0 ? "" : said("%1 people", {std::to_string(element.people)}), element.callSign},
                    ", ")}};
        for (const plan::Phase& phase : plan.phases()) {
            row.push_back(taskCell(force, force.task(element.id, phase.number)));
        }
        paper.rows.push_back(std::move(row));
    }
    paper.head.source = said(
        "In a cell: the task; then purpose, place, trigger, code word, under whom. Under a phase: its time, and the "
        "lines that the column's head crosses in it. Planning and training aid.");
    return paper;
}

}  // namespace crosstick::press
