// Lines that say how a route is walked: its start, its legs, and the contours that were read along it.
#include <algorithm>
#include <cmath>

#include "app/commands/line_parts.h"
#include "core/geodesy/grid_reference.h"
#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

Result<void> putNote(const PlanLine& line, const plan::Plan& plan, const std::string& clause, plan::LegNotes& notes) {
    if (const auto text = after(clause, "going")) {
        if (*text != "road" && *text != "cross-country" && *text != "none") {
            return misread(line, clause);
        }
        notes.going = *text == "none" ? std::nullopt
                                      : std::optional(*text == "road" ? plan::Going::Road : plan::Going::CrossCountry);
        return {};
    }
    if (const auto text = after(clause, "halt")) {
        return numberIn(line, *text, Least::Nothing).map([&](double minutes) {
            notes.halt = minutes > 0 ? std::optional(Minutes(minutes)) : std::nullopt;
        });
    }
    if (const auto text = after(clause, "rally")) {
        if (*text == "none") {
            notes.rally.reset();
            return {};
        }
        return measureIn(line, plan, *text).map([&](const plan::ItemId& id) { notes.rally = id; });
    }
    const std::pair<std::string_view, std::string plan::LegNotes::*> texts[]{
        {"catching", &plan::LegNotes::catching},
        {"contact", &plan::LegNotes::inContact},
        {"separated", &plan::LegNotes::ifSeparated},
        {"remark", &plan::LegNotes::remark}};
    for (const auto& [word, member] : texts) {
        if (const auto text = after(clause, word)) {
            notes.*member = *text;
            return {};
        }
    }
    return misread(line, clause);
}

/// "654270.5 5098060", metres of the plan's plane, or a place in any usual writing.
Result<geodesy::PlanePoint> placeIn(const PlanLine& line, const plan::Plan& plan, const std::string& text) {
    const std::size_t apart = std::min(text.find(' '), text.size());
    const auto easting = parseNumber(text.substr(0, apart));
    const auto northing = parseNumber(trimmed(std::string_view(text).substr(apart)));
    constexpr double kNoDegrees = 360;  // two numbers as small as that are latitude and longitude
    if (easting && northing && std::max(std::abs(*easting), std::abs(*northing)) > kNoDegrees) {
        return geodesy::PlanePoint{Metres(*easting), Metres(*northing)};
    }
    const auto place = geodesy::parsePoint(text)
                           .and_then([](const auto& grid) { return geodesy::geographic(grid.southWest); })
                           .and_then([&](auto point) { return geodesy::gridPoint(point, plan.heading().plane); });
    return place ? Result<geodesy::PlanePoint>(place->at) : misread(line, text);
}

/// "40 at 25T FL 5440 9860"
Result<plan::ContourSpot> contourIn(const PlanLine& line, const plan::Plan& plan, const std::string& clause) {
    constexpr double kLowest = -500;  // metres
    constexpr double kHighest = 9000;
    const std::size_t at = clause.find(" at ");
    const auto height = at == std::string::npos ? std::nullopt : parseNumber(trimmed(clause.substr(0, at)));
    if (!height || *height < kLowest || *height > kHighest) {
        return misread(line, clause);
    }
    return placeIn(line, plan, trimmed(clause.substr(at + 4))).map([&](geodesy::PlanePoint place) {
        return plan::ContourSpot{place, Metres(*height)};
    });
}

}  // namespace

LineTaken takeStart(const PlanLine& line, const plan::Plan& plan, IdSource& /*ids*/) {
    const auto id = routeIn(line, plan, line.name);
    if (!id) {
        return tl::unexpected(id.error());
    }
    plan::Route route = *plan.route(*id);
    route.start.reset();
    route.notLaterThan.reset();
    for (const std::string& clause : saysNone(line) ? std::vector<std::string>{} : line.clauses) {
        const auto closed = after(clause, "closed");
        const auto moment = momentIn(line, closed ? *closed : clause);
        if (!moment) {
            return tl::unexpected(moment.error());
        }
        (closed ? route.notLaterThan : route.start) = *moment;
    }
    return std::move(plan::PlanBuilder(plan).put(std::move(route))).build();
}

LineTaken takeLeg(const PlanLine& line, const plan::Plan& plan, IdSource& /*ids*/) {
    const auto to = line.name.find(" to ");
    if (to == std::string::npos) {
        return misread(line, line.name);
    }
    const auto id = routeIn(line, plan, trimmed(std::string_view(line.name).substr(0, to)));
    const auto point = measureIn(line, plan, trimmed(std::string_view(line.name).substr(to + 4)));
    if (!id || !point) {
        return tl::unexpected(id ? point.error() : id.error());
    }
    plan::Route route = *plan.route(*id);
    const auto stop = std::find_if(route.stops.begin(), route.stops.end(),
                                   [&](const plan::Stop& one) { return one.measure == *point; });
    if (stop == route.stops.end()) {
        return misread(line, line.name);
    }
    if (saysNone(line)) {
        stop->leg = {};
    } else {
        for (const std::string& clause : line.clauses) {
            if (const auto put = putNote(line, plan, clause, stop->leg); !put) {
                return tl::unexpected(put.error());
            }
        }
    }
    return std::move(plan::PlanBuilder(plan).put(std::move(route))).build();
}

/// All contours of the route, in place of those it had.
LineTaken takeContours(const PlanLine& line, const plan::Plan& plan, IdSource& /*ids*/) {
    const auto id = routeIn(line, plan, line.name);
    if (!id) {
        return tl::unexpected(id.error());
    }
    plan::Route route = *plan.route(*id);
    route.contours.clear();
    for (const std::string& clause : saysNone(line) ? std::vector<std::string>{} : line.clauses) {
        const auto spot = contourIn(line, plan, clause);
        if (!spot) {
            return tl::unexpected(spot.error());
        }
        route.contours.push_back(*spot);
    }
    return std::move(plan::PlanBuilder(plan).put(std::move(route))).build();
}

}  // namespace crosstick::app
