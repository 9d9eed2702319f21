#include <memory>
#include <ostream>

#include "app/command.h"
#include "app/commands/march_forms.h"
#include "app/commands/paper_output.h"
#include "app/commands/route_sources.h"
#include "app/commands/timing_options.h"
#include "core/movement/faults.h"
#include "core/movement/typed_timing.h"
#include "ui/press/pdf.h"

namespace crosstick::app {
namespace {

struct MarchLine {
    std::string plan, column, start, arrive, hHour, known, output, times = "local";
    std::vector<std::string> routes, points, columns, before;
    TimingOptions timing;
    bool json = false;
};

/// The plan with what the line says in place of its own.
plan::Plan asked(const plan::Plan& plan, const MarchLine& line) {
    plan::Plan next = withTiming(plan, line.timing);
    plan::Heading heading = next.heading();
    if (const auto hHour = parseMoment(line.hHour)) {
        heading.hHour = *hHour;
    }
    if (!line.before.empty()) {
        heading.preparations.clear();
        for (const std::string& text : line.before) {
            heading.preparations.push_back(movement::parsePreparation(text).value_or(plan::Preparation{}));
        }
    }
    return std::move(plan::PlanBuilder(next).heading(std::move(heading))).build();
}

Result<const plan::Column*> chosenColumn(const plan::Plan& plan, const std::string& name) {
    const plan::Column* column = plan.force().columnNamed(name);
    if (column == nullptr && !name.empty()) {
        std::string known;
        for (const plan::Column& one : plan.force().columns) {
            known += (known.empty() ? "" : ", ") + one.name;
        }
        return fail(movement::kNoSuchColumn, {{"column", name}, {"known", known.empty() ? "none" : known}});
    }
    return column;
}

Result<MarchContent> contentFrom(const RouteSources& sources, const plan::Column* column, plan::Route route,
                                 std::optional<Instant> start) {
    route.start = start ? start : route.start;
    auto figures = movement::routeFigures(sources.plan, route, sources.modelOrNone(), sources.heights.get());
    if (!figures) {
        return tl::unexpected(figures.error());
    }
    return movement::marchTable(sources.plan, *figures, column).map([&](movement::MarchTable&& table) {
        return MarchContent{std::move(*figures), std::move(table), {}};
    });
}

/// Backwards from when the column has closed; the start is the whole minute before the latest one.
Result<MarchContent> contentBackwards(const RouteSources& sources, const plan::Column* column, const plan::Route& route,
                                      Instant closed) {
    const auto latest = movement::latestStart(closed, [&](Instant start) -> Result<std::optional<Minutes>> {
        return contentFrom(sources, column, route, start).map([](const MarchContent& content) {
            return content.table.closed();
        });
    });
    if (!latest) {
        return tl::unexpected(latest.error());
    }
    if (!*latest) {
        return fail(movement::kNoRate);
    }
    auto content = contentFrom(sources, column, route, std::chrono::floor<std::chrono::minutes>(**latest));
    if (content) {
        content->facts.notLaterThan = closed;
        content->facts.latestStart = **latest;
    }
    return content;
}

Result<std::vector<MarchContent>> contentsOf(const RouteSources& sources, const MarchLine& line, Instant now) {
    const auto routes = chosenRoutes(sources.plan, line.plan, line.routes);
    const auto column = chosenColumn(sources.plan, line.column);
    if (!routes || !column) {
        return tl::unexpected(routes ? column.error() : routes.error());
    }
    const auto start = parseMoment(line.start);
    const auto arrive = parseMoment(line.arrive);
    std::vector<MarchContent> contents;
    for (const plan::RoutePtr& route : *routes) {
        if (line.routes.empty() && route->use == plan::Use::Vehicle) {
            continue;  // nobody walks it
        }
        auto content = arrive ? contentBackwards(sources, *column, *route, *arrive)
                              : contentFrom(sources, *column, *route, start ? std::optional(*start) : std::nullopt);
        if (!content) {
            return tl::unexpected(content.error());
        }
        content->facts.known = parseMoment(line.known).value_or(sources.plan.heading().prepared.value_or(now));
        contents.push_back(std::move(*content));
    }
    return contents;
}

std::vector<press::PaperTable> papers(const plan::Plan& plan, const std::vector<MarchContent>& contents,
                                      const MarchLine& line) {
    std::vector<press::PaperTable> all;
    for (const MarchContent& content : contents) {
        press::PaperTable paper = press::marchPaper(plan, content.figures, content.table, content.facts);
        if (!line.points.empty()) {
            std::vector<std::string> keys{"element"};
            keys.insert(keys.end(), line.points.begin(), line.points.end());
            paper = press::withColumns(std::move(paper), keys);
        }
        all.push_back(std::move(paper));
    }
    return all;
}

Result<std::string> bytesOf(const plan::Plan& plan, const std::vector<MarchContent>& contents, const MarchLine& line,
                            const Surroundings& surroundings) {
    if (std::filesystem::path(line.output).extension() == ".csv") {
        return marchCsv(plan, contents, line.columns);
    }
    return paperBytes(line.output, papers(plan, contents, line), plan.heading(), surroundings);
}

Exit makeTables(const MarchLine& line, const Surroundings& surroundings) {
    auto sources = openRouteSources(line.plan, surroundings);
    if (!sources) {
        return couldNot(surroundings, sources.error());
    }
    sources->plan = asked(sources->plan, line);
    const auto contents = contentsOf(*sources, line, surroundings.now);
    if (!contents) {
        return couldNot(surroundings, contents.error());
    }
    if (!line.output.empty()) {
        const auto written = bytesOf(sources->plan, *contents, line, surroundings).and_then([&](const auto& bytes) {
            return press::writeWhole(line.output, bytes);
        });
        if (!written) {
            return couldNot(surroundings, written.error());
        }
    }
    if (line.json) {
        surroundings.out << marchJson(sources->plan, *contents);
    } else if (line.output.empty()) {
        const Clock clock = line.times == "h" ? Clock::HHour : line.times == "zulu" ? Clock::Zulu : Clock::Local;
        for (std::size_t n = 0; n < contents->size(); ++n) {
            surroundings.out << (n == 0 ? "" : "\n") << marchText(sources->plan, (*contents)[n], clock);
        }
    } else {
        surroundings.out << line.output << ": " << contents->size()
                         << (contents->size() == 1 ? " route\n" : " routes\n");
    }
    return Exit::Done;
}

constexpr std::string_view kManual = R"(March tables: who passes which route point when.

Every element of the column arrives at a point with its first man and is clear of it with its last.
Forwards from --start or the route's own start; or backwards from --arrive, the time by which the
last man must be in, from which the latest start follows. Times in the plan's zone; --json and CSV
also have them in Zulu and from the H-hour. A DTG is written as 132100OMAR27 or 2027-03-13T21:00-02:00.

  crosstick march plan.gpkg --arrive 140115OMAR27 --before orders=60 --before rehearsal=1:30 -o march.pdf)";

}  // namespace

void addMarch(CLI::App& program, Action& action) {
    auto line = std::make_shared<MarchLine>();
    CLI::App* command = program.add_subcommand("march", std::string(kManual));
    const CLI::Validator moment(momentFault, "DTG");
    command->add_option("PLAN", line->plan, "The plan's file")->required();
    command->add_option("--route", line->routes, "Only this route; may be given again. Without it: all");
    command->add_option("--column", line->column, "Which order of march (default: the plan's first)");
    auto* start =
        command->add_option("--start", line->start, "When the column's head is at the start point")->check(moment);
    command->add_option("--arrive", line->arrive, "When the last man must be in, not later")
        ->check(moment)
        ->excludes(start);
    command->add_option("--h-hour", line->hHour, "The H-hour (default: the plan's)")->check(moment);
    command->add_option("--before", line->before, "Done before the start, in its order: orders=60, rehearsal=1:30")
        ->check(CLI::Validator(preparationFault, "NAME=TIME"));
    command->add_option("--known", line->known, "Since when the order is known (default: the plan's date-time group)")
        ->check(moment);
    addTimingOptions(*command, line->timing);
    command->add_option("--times", line->times, "In the table here: local, zulu, or h for the H-hour")
        ->check(CLI::IsMember({"local", "zulu", "h"}));
    command->add_option("--point", line->points, "Only this point on the paper; may be given again");
    command->add_option("--columns", line->columns, "Of the CSV only these, in this order, by their names in it")
        ->delimiter(',');
    command->add_option("-o,--output", line->output, "FILE.pdf, FILE.csv or FILE.html");
    command->add_flag("--json", line->json, "Exact times as one JSON array, null for unknown");
    command->callback([line, &action] {
        action = [line](const Surroundings& surroundings) { return makeTables(*line, surroundings); };
    });
}

}  // namespace crosstick::app
