#include "core/movement/march_table.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/movement/faults.h"
#include "core/movement/paper_figures.h"

namespace crosstick::movement {
namespace {

/// Where the table has its columns of times, before they are known.
std::vector<MarchPoint> placesOf(const RouteFigures& figures, const std::vector<Crossing>& met) {
    using Kind = MarchPoint::Kind;
    std::vector<MarchPoint> points;
    const auto routePoint = [&](const plan::ItemId& item, const std::string& label, std::string_view without,
                                Metres ground, std::optional<Minutes> halt) {
        points.push_back({Kind::RoutePoint, item, label.empty() ? std::string(without) : label, ground, halt, {}, {}});
    };
    if (!figures.legs.empty()) {
        routePoint(figures.legs.front().from, figures.legs.front().fromLabel, "start", Metres(0), {});
    }
    for (const Leg& leg : figures.legs) {
        for (const Crossing& crossing : met) {
            if (crossing.leg == leg.number) {
                points.push_back({Kind::Line, crossing.line, crossing.label, crossing.groundSoFar, {}, {}, {}});
            }
        }
        routePoint(leg.to, leg.toLabel, "end", leg.groundSoFar, leg.notes.halt);
    }
    if (figures.onward) {
        points.push_back({Kind::Onward,
                          figures.onward->to,
                          figures.onward->toLabel,
                          figures.groundDistance + figures.onward->piece.groundDistance,
                          {},
                          {},
                          {}});
    }
    return points;
}

std::vector<MarchingElement> elementsOf(const plan::Force& force, const plan::Column& column,
                                        const ColumnFigures& figures, const Progress& progress) {
    std::vector<MarchingElement> elements;
    for (std::size_t n = 0; n < figures.elements.size(); ++n) {
        const ElementFigures& lying = figures.elements[n];
        const plan::Element* element = force.element(lying.element);
        MarchingElement one{lying.element,        {}, {}, {}, column.serials[n].role, 0, lying.length, lying.headBehind,
                            lying.intervalBehind, {}};
        if (element != nullptr) {
            one.unit = element->unit;
            one.name = element->name;
            one.callSign = element->callSign;
            one.people = element->people;
        }
        one.passTime = progress.at(lying.length);
        elements.push_back(std::move(one));
    }
    return elements;
}

Passing passing(const Progress& progress, Metres point, Metres headBehind, Metres length) {
    return {progress.at(point + headBehind), progress.at(point + headBehind + length)};
}

/// Backwards from the start: what is done last ends there.
std::vector<PreparationTime> before(const std::vector<plan::Preparation>& all, std::optional<Instant> start) {
    std::vector<PreparationTime> times;
    Minutes left{0};
    for (auto one = all.rbegin(); one != all.rend(); ++one) {
        PreparationTime time{one->name, one->lasts, {}, {}};
        time.until = arrivalAfter(start, -left);
        left += one->lasts;
        time.from = arrivalAfter(start, -left);
        times.push_back(std::move(time));
    }
    std::reverse(times.begin(), times.end());
    return times;
}

}  // namespace

std::optional<Minutes> MarchTable::closed() const {
    return points.empty() ? std::nullopt : points.back().column.clear;
}

std::optional<Minutes> MarchTable::toHHour(std::optional<Minutes> sinceStart) const {
    if (!start || !hHour || !sinceStart) {
        return std::nullopt;
    }
    return Minutes(static_cast<double>((*start - *hHour).count()) / 60) + *sinceStart;
}

Result<MarchTable> marchTable(const plan::Plan& plan, const RouteFigures& figures, const plan::Column* column) {
    const auto met = crossings(plan, figures);
    if (!met) {
        return tl::unexpected(met.error());
    }
    MarchTable table;
    table.route = figures.route;
    table.routeName = figures.name;
    table.use = figures.use;
    table.start = figures.start;
    table.hHour = plan.heading().hHour;
    table.before = before(plan.heading().preparations, figures.start);
    if (column != nullptr) {
        const ColumnFigures lying = columnFigures(plan.force(), *column);
        table.columnName = column->name;
        table.elements = elementsOf(plan.force(), *column, lying, figures.progress);
        table.people = lying.people;
        table.length = lying.length;
    }
    table.passTime = figures.progress.at(table.length);
    table.points = placesOf(figures, *met);
    for (MarchPoint& point : table.points) {
        point.column = passing(figures.progress, point.ground, Metres(0), table.length);
        for (const MarchingElement& element : table.elements) {
            point.elements.push_back(passing(figures.progress, point.ground, element.headBehind, element.length));
        }
    }
    return table;
}

Result<std::optional<Instant>> latestStart(Instant notLaterThan, const ClosingAfter& closing) {
    using std::chrono::seconds;
    const auto closesInTime = [&](Instant start) -> Result<std::optional<bool>> {
        return closing(start).map([&](std::optional<Minutes> lasts) {
            return lasts ? std::optional(start + seconds(std::llround(std::ceil(lasts->value() * 60))) <= notLaterThan)
                         : std::nullopt;
        });
    };
    seconds early = std::chrono::days(31);  // before the time: in time, once it has been looked
    seconds late{-1};                       // too late
    const auto first = closesInTime(notLaterThan - early);
    if (!first || !*first) {
        return first ? Result<std::optional<Instant>>(std::nullopt) : tl::unexpected(first.error());
    }
    if (!**first) {
        return fail(kTooLong);
    }
    while (early - late > seconds(1)) {
        const seconds middle = late + (early - late) / 2;
        const auto good = closesInTime(notLaterThan - middle);
        if (!good) {
            return tl::unexpected(good.error());
        }
        (good->value_or(false) ? early : late) = middle;
    }
    return std::optional(notLaterThan - early);
}

std::optional<Minutes> timeBeforeOrders(const MarchTable& table, Instant known) {
    const auto begin = table.before.empty() ? table.start : table.before.front().from;
    return begin ? std::optional(Minutes(static_cast<double>((*begin - known).count()) / 60)) : std::nullopt;
}

std::string hHourText(Minutes toHHour) {
    const double minutes = std::floor(toHHour.value() + 0.5);
    return minutes == 0 ? "H" : fmt::format("H{}{}", minutes < 0 ? '-' : '+', timeText(abs(Minutes(minutes))));
}

}  // namespace crosstick::movement
