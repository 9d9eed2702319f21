#include "app/commands/answers.h"
#include "app/commands/light_forms.h"
#include "app/commands/march_forms.h"
#include "core/movement/paper_figures.h"
#include "core/movement/rate_text.h"
#include "core/movement/route_light.h"

namespace crosstick::app {
namespace {

using movement::MarchPoint;
using movement::MarchTable;

Json time(const std::optional<Instant>& when, TimeZone zone) {
    return when ? Json(isoTime(*when, zone)) : Json();
}

std::string_view kindName(MarchPoint::Kind kind) {
    return kind == MarchPoint::Kind::RoutePoint ? "route point" : kind == MarchPoint::Kind::Line ? "line" : "onward";
}

/// A time in the plan's zone, in Zulu, from the H-hour and from the start.
void putTime(Json& json, const std::string& name, const MarchTable& table, const std::optional<Minutes>& since,
             TimeZone zone) {
    json[name] = time(table.when(since), zone);
    json[name + "_zulu"] = time(table.when(since), TimeZone{});
    json[name + "_h_minutes"] = number(table.toHHour(since));
    json[name + "_minutes"] = number(since);
}

Json passingJson(const MarchTable& table, const movement::Passing& passing, TimeZone zone) {
    Json json;
    putTime(json, "arrive", table, passing.arrive, zone);
    putTime(json, "clear", table, passing.clear, zone);
    return json;
}

Json pointJson(const MarchTable& table, const MarchPoint& point, TimeZone zone) {
    Json json{{"point", point.label},
              {"kind", kindName(point.kind)},
              {"ground_distance_so_far_m", number(point.ground)},
              {"halt_minutes", number(point.halt)}};
    json.update(passingJson(table, point.column, zone));
    json["elements"] = Json::array();
    for (std::size_t n = 0; n < point.elements.size(); ++n) {
        Json element{{"element", table.elements[n].name}};
        element.update(passingJson(table, point.elements[n], zone));
        json["elements"].push_back(std::move(element));
    }
    return json;
}

Json elementJson(const movement::MarchingElement& element) {
    return {{"element", element.name},
            {"unit", element.unit},
            {"call_sign", element.callSign},
            {"role", element.role},
            {"people", element.people == 0 ? Json() : Json(element.people)},
            {"length_m", number(element.length)},
            {"head_behind_m", number(element.headBehind)},
            {"interval_behind_m", number(element.intervalBehind)},
            {"pass_minutes", number(element.passTime)}};
}

Json ratesJson(const movement::RouteFigures& figures, TimeZone zone) {
    Json list = Json::array();
    for (const movement::RateSpan& span : figures.progress.spans) {
        list.push_back({{"from", time(movement::arrivalAfter(figures.start, span.since), zone)},
                        {"ground_distance_so_far_m", number(span.from)},
                        {"minutes_so_far", number(span.since)},
                        {"going", span.going == plan::Going::Road ? "road" : "cross-country"},
                        {"light", span.light == plan::Light::Night ? "night" : "day"},
                        {"rate_kmh", number(span.rate)}});
    }
    return list;
}

Json beforeJson(const MarchTable& table, TimeZone zone) {
    Json list = Json::array();
    for (const movement::PreparationTime& one : table.before) {
        list.push_back({{"name", one.name},
                        {"minutes", number(one.lasts)},
                        {"from", time(one.from, zone)},
                        {"until", time(one.until, zone)}});
    }
    return list;
}

Json routeJson(const plan::Plan& plan, const MarchContent& content) {
    const MarchTable& table = content.table;
    const TimeZone zone = plan.heading().zone;
    Json json{{"route", table.routeName},
              {"use", movement::useText(table.use)},
              {"column", table.columnName},
              {"people", table.people},
              {"column_length_m", number(table.length)},
              {"pass_minutes", number(table.passTime)},
              {"h_hour", time(table.hHour, zone)}};
    putTime(json, "start", table, Minutes(0), zone);
    putTime(json, "closed", table, table.closed(), zone);
    json["not_later_than"] = time(content.facts.notLaterThan, zone);
    json["latest_start"] = time(content.facts.latestStart, zone);
    json["rate"] = movement::rateText(content.figures, zone);
    json["rates"] = ratesJson(content.figures, zone);
    json["light"] = datedLightJson(movement::routeLight(plan, content.figures), zone);
    json["elements"] = Json::array();
    for (const movement::MarchingElement& element : table.elements) {
        json["elements"].push_back(elementJson(element));
    }
    json["points"] = Json::array();
    for (const MarchPoint& point : table.points) {
        json["points"].push_back(pointJson(table, point, zone));
    }
    json["before"] = beforeJson(table, zone);
    const auto left = content.facts.known ? movement::timeBeforeOrders(table, *content.facts.known) : std::nullopt;
    json["known"] = time(content.facts.known, zone);
    json["left_before_orders_minutes"] = number(left);
    return json;
}

}  // namespace

std::string marchJson(const plan::Plan& plan, const std::vector<MarchContent>& routes) {
    Json all = Json::array();
    for (const MarchContent& content : routes) {
        all.push_back(routeJson(plan, content));
    }
    return all.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace crosstick::app
