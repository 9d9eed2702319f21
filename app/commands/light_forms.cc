#include "app/commands/light_forms.h"

#include "core/units/number_text.h"

namespace crosstick::app {
namespace {

std::optional<std::string> timeOf(const std::optional<sky::Moment>& moment, const ZoneRules& zone) {
    const bool happens = moment && moment->certainty != sky::Certainty::NotQuite;
    return happens ? std::optional(isoTime(moment->at, zone.at(moment->at))) : std::nullopt;
}

Json timeJson(const std::optional<sky::Moment>& moment, const ZoneRules& zone) {
    const auto time = timeOf(moment, zone);
    return time ? Json(*time) : Json();
}

}  // namespace

void putLight(Json& json, const sky::Light& light, const ZoneRules& zone) {
    Json uncertain = Json::array();
    Json second = Json::object();
    for (const sky::LightRow& row : sky::rowsOf(light)) {
        const std::string key(row.key);
        json[key] = timeJson(row.event->first, zone);
        if (row.event->first && row.event->first->certainty != sky::Certainty::Sure) {
            uncertain.push_back(key);
        }
        if (row.event->second) {
            second[key] = timeJson(row.event->second, zone);
        }
    }
    json["moon_illuminated_percent"] = number(light.moonLit * 100);
    json["moon_illuminated_at"] = isoTime(light.noon, zone.at(light.noon));
    json["uncertain"] = uncertain;
    json["second"] = second;
}

Json datedLightJson(const std::vector<movement::DatedLight>& lights, TimeZone zone) {
    Json list = Json::array();
    for (const movement::DatedLight& dated : lights) {
        Json json{{"date", isoDate(dated.date)}};
        putLight(json, dated.light, ZoneRules(zone));
        list.push_back(std::move(json));
    }
    return list;
}

std::vector<std::string> lightColumns() {
    const sky::Light none{};
    std::vector<std::string> columns;
    for (const sky::LightRow& row : sky::rowsOf(none)) {
        columns.emplace_back(row.key);
    }
    columns.emplace_back("moon_illuminated_percent");
    return columns;
}

std::vector<std::string> lightCells(const sky::Light& light, const ZoneRules& zone) {
    std::vector<std::string> cells;
    for (const sky::LightRow& row : sky::rowsOf(light)) {
        cells.push_back(timeOf(row.event->first, zone).value_or(""));
    }
    cells.push_back(numberText(light.moonLit * 100, 1));
    return cells;
}

}  // namespace crosstick::app
