#include "ui/press/march_paper.h"

#include <cmath>

#include <fmt/format.h>

#include "core/movement/paper_figures.h"
#include "core/movement/rate_text.h"
#include "core/units/number_text.h"
#include "symbols/unit_symbol.h"
#include "ui/press/route_paper.h"
#include "ui/press/said.h"

namespace crosstick::press {
namespace {

using drawing::Weight;
using movement::MarchPoint;
using movement::MarchTable;

constexpr double kSymbol = 6;  // millimetres: look, march table

std::string whole(double value) {
    return numberText(std::floor(value + 0.5), 0);
}

/// To a decimetre, and no more figures than are said.
std::string metresText(Metres length) {
    return numberText(std::round(length.value() * 10) / 10) + " m";
}

std::string clock(const std::optional<Instant>& when, TimeZone zone) {
    return when ? clockTime(*when, zone) : std::string("—");
}

std::string minutes(const std::optional<Minutes>& time) {
    return time ? said("%1 min", {whole(time->value())}) : said("unknown");
}

drawing::Drawing symbolOf(const std::string& words) {
    if (words.empty()) {
        return {};
    }
    drawing::Gauge gauge;
    gauge.symbol = kSymbol;
    auto sketch = symbols::sketchUnit(measures::withoutAmplifiers(measures::readUnit(words)), {}, gauge);
    sketch.ink.append(std::move(sketch.letters));
    return std::move(sketch.ink);
}

std::string columnText(const plan::Column& column, const MarchTable& table) {
    return joined({table.columnName, said("%1 people", {std::to_string(table.people)}),
                   said("%1 long", {metresText(table.length)}),
                   column.files == 1 ? said("single file") : said("%1 files", {std::to_string(column.files)}),
                   said("%1 m apart", {numberText(column.apart.value())})},
                  ", ");
}

std::vector<CardFact> leftFacts(const plan::Plan& plan, const MarchTable& table) {
    const TimeZone zone = plan.heading().zone;
    std::vector<CardFact> facts{{said("Sheet"), sheetText(plan)},
                                {said("Start"), table.start ? dateTimeGroup(*table.start, zone) : said("not given")}};
    if (table.hHour) {
        facts.push_back({said("H-hour"), dateTimeGroup(*table.hHour, zone)});
    }
    for (const plan::Column& column : plan.force().columns) {
        if (column.name == table.columnName && !table.elements.empty()) {
            facts.push_back({said("Column"), columnText(column, table)});
            break;
        }
    }
    return facts;
}

std::vector<CardFact> rightFacts(const plan::Plan& plan, const movement::RouteFigures& figures, const MarchTable& table,
                                 const MarchFacts& given) {
    const TimeZone zone = plan.heading().zone;
    std::vector<CardFact> facts{{said("Rate"), movement::rateText(figures, zone)},
                                {said("Passes in"), said("%1 at the start", {minutes(table.passTime)})}};
    if (const auto closed = table.when(table.closed())) {
        facts.push_back({said("Closed"), dateTimeGroup(*closed + std::chrono::seconds(30), zone), Weight::Bold});
    }
    const plan::RoutePtr route = plan.route(figures.route);
    const auto asked = route ? route->notLaterThan : std::nullopt;
    if (given.notLaterThan && given.latestStart) {
        facts.push_back({said("Not later"),
                         said("%1, so the latest start is %2", {dateTimeGroup(*given.notLaterThan, zone),
                                                                isoTime(*given.latestStart, zone).substr(11, 8)})});
    } else if (asked) {
        facts.push_back({said("Not later"), dateTimeGroup(*asked, zone)});
    }
    return facts;
}

PaperColumn pointColumn(const MarchPoint& point) {
    PaperColumn column;
    column.key = point.label;
    column.heads = {point.label, whole(point.ground.value()) + " m",
                    point.column.arrive ? movement::timeText(*point.column.arrive) : "—"};
    if (point.halt) {
        column.heads.push_back(said("halt %1", {minutes(point.halt)}));
    }
    column.align = Align::Middle;
    column.width = 18;
    column.most = 25;
    column.first = {2.6, Weight::Bold};
    column.second = {2.2, Weight::Regular};
    return column;
}

std::vector<PaperColumn> columnsOf(const MarchTable& table) {
    PaperColumn element;
    element.key = "element";
    element.heads = {said("Element"), said("ground from the start"), said("time of the head")};
    element.width = 42;
    element.most = 50;
    element.first = {2.4, Weight::Bold};
    element.second = {1.8, Weight::Regular};
    element.symbolRoom = table.elements.empty() ? 0 : 12;
    std::vector<PaperColumn> columns{element};
    for (const MarchPoint& point : table.points) {
        columns.push_back(pointColumn(point));
    }
    return columns;
}

std::vector<PaperCell> elementRow(const MarchTable& table, std::size_t n, TimeZone zone) {
    const movement::MarchingElement& element = table.elements[n];
    std::vector<PaperCell> row;
    row.push_back({joined({element.name.empty() ? element.unit : element.name, element.callSign}, ", "),
                   joined({element.people == 0 ? said("strength unknown") : fmt::format("{}", element.people),
                           metresText(element.headBehind), element.role},
                          ", "),
                   symbolOf(element.unit)});
    for (const MarchPoint& point : table.points) {
        row.push_back(
            {clock(table.when(point.elements[n].arrive), zone), clock(table.when(point.elements[n].clear), zone)});
    }
    return row;
}

std::vector<PaperCell> wholeRow(const MarchTable& table, TimeZone zone) {
    std::vector<PaperCell> row{{said(table.elements.empty() ? "Head" : "Whole column"),
                                said(table.elements.empty() ? "no column is in the plan" : "its head, its last man")}};
    for (const MarchPoint& point : table.points) {
        row.push_back({clock(table.when(point.column.arrive), zone),
                       table.elements.empty() ? "" : clock(table.when(point.column.clear), zone)});
    }
    return row;
}

/// The head in Zulu; under it from the H-hour, where there is one.
std::vector<PaperCell> zuluRow(const MarchTable& table) {
    std::vector<PaperCell> row{{said("Head, Zulu"), table.hHour ? said("from the H-hour") : ""}};
    for (const MarchPoint& point : table.points) {
        const auto toHHour = table.toHHour(point.column.arrive);
        row.push_back({clock(table.when(point.column.arrive), TimeZone{}),
                       toHHour ? movement::hHourText(*toHHour) : std::string{}});
    }
    return row;
}

std::vector<CardNote> notesOf(const plan::Plan& plan, const MarchTable& table, const MarchFacts& given) {
    const TimeZone zone = plan.heading().zone;
    std::vector<CardNote> notes{
        {said("In a cell:"),
         said("arrives (its first man), and under it clear (its last man). Beside an element: its people, and "
              "how far its head is behind the column's.")}};
    std::vector<std::string> steps;
    for (const movement::PreparationTime& one : table.before) {
        steps.push_back(said("%1 %2 to %3", {one.name, clock(one.from, zone), clock(one.until, zone)}));
    }
    if (!steps.empty()) {
        std::string text = joined(steps, ", ");
        if (const auto left = given.known ? movement::timeBeforeOrders(table, *given.known) : std::nullopt) {
            text += said(left->value() < 0 ? "; %1 too late from %2 on until the first of them"
                                           : "; %1 left from %2 on until the first of them",
                         {movement::timeText(abs(*left)), dateTimeGroup(*given.known, zone)});
        }
        notes.push_back({said("Before the start:"), text + '.'});
    }
    return notes;
}

}  // namespace

PaperTable marchPaper(const plan::Plan& plan, const movement::RouteFigures& figures, const MarchTable& table,
                      const MarchFacts& facts) {
    const TimeZone zone = plan.heading().zone;
    PaperTable paper;
    paper.head.title = movement::routeTitle(table.routeName);
    paper.head.purpose =
        said("%1, %2 m, zone %3",
             {said(movement::useText(table.use)), whole(figures.groundDistance.value()), std::string(1, zone.letter)});
    paper.head.kind = said("MARCH TABLE");
    paper.head.marking = plan.heading().marking;
    paper.head.left = leftFacts(plan, table);
    paper.head.right = rightFacts(plan, figures, table, facts);
    for (CardFact& fact : lightFacts(cardLight(plan, figures))) {
        paper.head.left.push_back(std::move(fact));
    }
    paper.columns = columnsOf(table);
    paper.kept = 1;
    for (std::size_t n = 0; n < table.elements.size(); ++n) {
        paper.rows.push_back(elementRow(table, n, zone));
    }
    paper.rows.push_back(wholeRow(table, zone));
    paper.rows.push_back(zuluRow(table));
    paper.notes = notesOf(plan, table, facts);
    paper.head.source = said(
        "The column moves as one body; times are ground metres over the rate, the halt of the hour inside the rate, "
        "planned halts added, rounded to the minute from the exact ones. Planning and training aid.");
    return paper;
}

}  // namespace crosstick::press
