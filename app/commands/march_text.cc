#include <fmt/format.h>

#include "app/commands/csv.h"
#include "app/commands/march_forms.h"
#include "app/commands/text_table.h"
#include "core/movement/paper_figures.h"
#include "core/movement/rate_text.h"
#include "core/movement/route_light.h"

namespace crosstick::app {
namespace {

using movement::MarchPoint;
using movement::MarchTable;

std::string written(const MarchTable& table, const std::optional<Minutes>& since, Clock clock, TimeZone zone) {
    if (clock == Clock::HHour) {
        const auto toHHour = table.toHHour(since);
        return toHHour ? movement::hHourText(*toHHour) : "-";
    }
    const auto when = table.when(since);
    return when    ? clockTime(*when, clock == Clock::Zulu ? TimeZone{} : zone)
           : since ? "+" + movement::timeText(*since)
                   : "-";
}

std::string cell(const MarchTable& table, const movement::Passing& passing, Clock clock, TimeZone zone) {
    return written(table, passing.arrive, clock, zone) + (clock == Clock::HHour ? " to " : "-") +
           written(table, passing.clear, clock, zone);
}

std::string headText(const plan::Plan& plan, const MarchContent& content) {
    const TimeZone zone = plan.heading().zone;
    const MarchTable& table = content.table;
    std::string text =
        fmt::format("{}, {}\n", plain(movement::routeTitle(table.routeName)), movement::useText(table.use));
    text += table.start ? "Start " + dateTimeGroup(*table.start, zone) : std::string("Start not given");
    if (content.facts.notLaterThan && content.facts.latestStart) {
        text +=
            fmt::format("; closed not later than {}, so the latest start is {}",
                        dateTimeGroup(*content.facts.notLaterThan, zone), isoTime(*content.facts.latestStart, zone));
    }
    text += table.hHour ? "\nH-hour " + dateTimeGroup(*table.hHour, zone) : std::string{};
    for (const movement::DatedLight& dated : movement::routeLight(plan, content.figures)) {
        text += "\nLight " + isoDate(dated.date) + ": " + movement::lightText(dated.light, zone);
    }
    text += "\nRate " + plain(movement::rateText(content.figures, zone)) + '\n';
    text += table.elements.empty()
                ? std::string("No column in the plan: the head alone\n")
                : fmt::format("Column {}, {} people, {} m, passes in {} min\n", plain(table.columnName), table.people,
                              numberText(table.length.value(), 1),
                              table.passTime ? numberText(table.passTime->value(), 2) : "unknown");
    return text;
}

std::string beforeText(const plan::Plan& plan, const MarchContent& content) {
    const TimeZone zone = plan.heading().zone;
    std::string text;
    for (const movement::PreparationTime& one : content.table.before) {
        text += fmt::format("  {}  {}\n",
                            one.from && one.until ? clockTime(*one.from, zone) + " to " + clockTime(*one.until, zone)
                                                  : movement::timeText(one.lasts) + " long",
                            plain(one.name));
    }
    if (text.empty()) {
        return text;
    }
    if (const auto left =
            content.facts.known ? movement::timeBeforeOrders(content.table, *content.facts.known) : std::nullopt) {
        text += fmt::format("  {}{} from {} to the first of them\n", left->value() < 0 ? "-" : "",
                            movement::timeText(abs(*left)), dateTimeGroup(*content.facts.known, zone));
    }
    return "Before the start\n" + text;
}

std::vector<std::string> record(const plan::Plan& plan, const MarchTable& table, const MarchPoint& point,
                                const std::string& element, const std::string& people,
                                const movement::Passing& passing) {
    const auto at = [&](const std::optional<Minutes>& since, TimeZone zone) {
        const auto when = table.when(since);
        return when ? isoTime(*when, zone) : std::string{};
    };
    const TimeZone zone = plan.heading().zone;
    return {harmless(table.routeName),
            harmless(point.label),
            csvFigure(point.ground, 3),
            harmless(element),
            people,
            at(passing.arrive, zone),
            at(passing.clear, zone),
            at(passing.arrive, TimeZone{}),
            at(passing.clear, TimeZone{}),
            csvFigure(table.toHHour(passing.arrive), 2),
            csvFigure(table.toHHour(passing.clear), 2),
            csvFigure(passing.arrive, 2),
            csvFigure(passing.clear, 2)};
}

}  // namespace

std::string marchText(const plan::Plan& plan, const MarchContent& content, Clock clock) {
    const MarchTable& table = content.table;
    const TimeZone zone = plan.heading().zone;
    std::vector<TextTable::Column> columns{{"point", Side::Left}, {"ground m"}, {"time"}, {"column"}};
    for (const movement::MarchingElement& element : table.elements) {
        columns.push_back({plain(element.name)});
    }
    TextTable rows(std::move(columns));
    for (const MarchPoint& point : table.points) {
        std::vector<std::string> cells{plain(point.label), numberText(point.ground.value(), 1),
                                       point.column.arrive ? movement::timeText(*point.column.arrive) : "-",
                                       cell(table, point.column, clock, zone)};
        for (const movement::Passing& passing : point.elements) {
            cells.push_back(cell(table, passing, clock, zone));
        }
        rows.add(std::move(cells));
    }
    return headText(plan, content) + '\n' + rows.text() + '\n' + beforeText(plan, content) +
           "Each: first man arrives - last man clear. Planning and training aid.\n";
}

Result<std::string> marchCsv(const plan::Plan& plan, const std::vector<MarchContent>& routes,
                             const std::vector<std::string>& columns) {
    std::vector<std::vector<std::string>> records{{"route", "point", "ground_distance_so_far_m", "element", "people",
                                                   "arrive", "clear", "arrive_zulu", "clear_zulu", "arrive_h_minutes",
                                                   "clear_h_minutes", "arrive_minutes", "clear_minutes"}};
    for (const MarchContent& content : routes) {
        const MarchTable& table = content.table;
        for (const MarchPoint& point : table.points) {
            for (std::size_t n = 0; n < point.elements.size(); ++n) {
                const movement::MarchingElement& element = table.elements[n];
                records.push_back(record(plan, table, point, element.name,
                                         element.people == 0 ? "" : std::to_string(element.people), point.elements[n]));
            }
            records.push_back(record(plan, table, point, "column", std::to_string(table.people), point.column));
        }
    }
    return csvOf(records, columns);
}

}  // namespace crosstick::app
