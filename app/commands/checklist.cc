#include "core/movement/checklist.h"

#include <memory>
#include <ostream>

#include "app/command.h"
#include "app/commands/answers.h"
#include "app/commands/paper_output.h"
#include "app/commands/route_sources.h"
#include "ui/press/checklist_paper.h"
#include "ui/press/pdf.h"

namespace crosstick::app {
namespace {

enum class Paper { Checklist, Matrix };

struct PaperLine {
    std::string plan, output;
    std::vector<std::string> routes, columns;
    bool json = false;
};

/// The march tables that times are taken from: of the routes on the line, else of the primary ones.
Result<std::vector<movement::MarchTable>> tablesOf(const RouteSources& sources, const PaperLine& line) {
    std::vector<movement::MarchTable> tables;
    if (sources.plan.routes().empty()) {
        return tables;
    }
    const auto routes = chosenRoutes(sources.plan, line.plan, line.routes);
    if (!routes) {
        return tl::unexpected(routes.error());
    }
    for (const plan::RoutePtr& route : *routes) {
        if (line.routes.empty() && route->use != plan::Use::Primary) {
            continue;
        }
        const auto figures = movement::routeFigures(sources.plan, *route, sources.modelOrNone(), sources.heights.get());
        if (!figures) {
            return tl::unexpected(figures.error());
        }
        auto table = movement::marchTable(sources.plan, *figures, sources.plan.force().columnNamed(""));
        if (!table) {
            return tl::unexpected(table.error());
        }
        tables.push_back(std::move(*table));
    }
    return tables;
}

Json checklistJson(const plan::Plan& plan, const std::vector<movement::ChecklistRow>& rows) {
    const TimeZone zone = plan.heading().zone;
    const auto time = [&](const std::optional<Instant>& when) { return when ? Json(isoTime(*when, zone)) : Json(); };
    Json list = Json::array();
    for (const movement::ChecklistRow& row : rows) {
        list.push_back({{"event", row.event.what},
                        {"place", row.place},
                        {"grid", row.grid},
                        {"planned", time(row.planned)},
                        {"expected", time(row.expected)},
                        {"code_word", row.event.codeWord},
                        {"reporter", row.reporter},
                        {"reported", time(row.event.reported)},
                        {"actual", time(row.event.actual)}});
    }
    return list;
}

Json matrixJson(const plan::Plan& plan) {
    Json list = Json::array();
    for (const plan::Task& task : plan.force().tasks) {
        const plan::Element* element = plan.force().element(task.element);
        const plan::Element* with = task.attachedTo ? plan.force().element(*task.attachedTo) : nullptr;
        list.push_back({{"element", element == nullptr ? Json() : Json(element->name)},
                        {"phase", task.phase},
                        {"task", task.task},
                        {"purpose", task.purpose},
                        {"place", task.place},
                        {"trigger", task.trigger},
                        {"code_word", task.codeWord},
                        {"attached_to", with == nullptr ? Json() : Json(with->name)}});
    }
    return list;
}

Result<void> write(const PaperLine& line, const press::PaperTable& paper, const plan::Heading& heading,
                   const Surroundings& surroundings) {
    const bool isCsv = std::filesystem::path(line.output).extension() == ".csv";
    return (isCsv ? Result<std::string>(tableCsv(paper)) : paperBytes(line.output, {paper}, heading, surroundings))
        .and_then([&](const std::string& bytes) { return press::writeWhole(line.output, bytes); });
}

Exit makePaper(const PaperLine& line, Paper which, const Surroundings& surroundings) {
    const auto sources = openRouteSources(line.plan, surroundings);
    if (!sources) {
        return couldNot(surroundings, sources.error());
    }
    const auto tables = tablesOf(*sources, line);
    if (!tables) {
        return couldNot(surroundings, tables.error());
    }
    const auto rows = movement::executionChecklist(sources->plan, *tables);
    if (!rows) {
        return couldNot(surroundings, rows.error());
    }
    const auto chosen = withChosenColumns(which == Paper::Checklist ? press::checklistPaper(sources->plan, *rows)
                                                                    : press::matrixPaper(sources->plan, *tables),
                                          line.columns);
    if (!chosen) {
        return couldNot(surroundings, chosen.error());
    }
    const press::PaperTable& paper = *chosen;
    if (!line.output.empty()) {
        if (const auto written = write(line, paper, sources->plan.heading(), surroundings); !written) {
            return couldNot(surroundings, written.error());
        }
    }
    if (line.json) {
        say(surroundings.out,
            which == Paper::Checklist ? checklistJson(sources->plan, *rows) : matrixJson(sources->plan));
    } else {
        surroundings.out << (line.output.empty() ? paperText(paper) : line.output + " written.\n");
    }
    return Exit::Done;
}

void addPaper(CLI::App& program, Action& action, Paper which, const char* name, const char* help) {
    auto line = std::make_shared<PaperLine>();
    CLI::App* command = program.add_subcommand(name, help);
    command->add_option("PLAN", line->plan, "The plan's file")->required();
    command->add_option("--route", line->routes, "Times by this route's march; again for more (default: primary ones)");
    command->add_option("--columns", line->columns, "Only these columns in this order, by their names in the CSV")
        ->delimiter(',');
    command->add_option("-o,--output", line->output, "FILE.pdf, FILE.csv or FILE.html");
    command->add_flag("--json", line->json, "One JSON array, null for unknown");
    command->callback([line, which, &action] {
        action = [line, which](const Surroundings& surroundings) { return makePaper(*line, which, surroundings); };
    });
}

}  // namespace

void addChecklist(CLI::App& program, Action& action) {
    addPaper(program, action, Paper::Checklist, "checklist",
             "Execution checklist: event, place, planned time, code word, who reports.");
}

void addMatrix(CLI::App& program, Action& action) {
    addPaper(program, action, Paper::Matrix, "matrix",
             "Execution matrix: elements down, phases across; task, purpose, place, trigger, code word.");
}

}  // namespace crosstick::app
