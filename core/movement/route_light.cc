#include "core/movement/route_light.h"

#include "core/geodesy/crs.h"
#include "core/sky/light_text.h"

namespace crosstick::movement {

std::vector<DatedLight> routeLight(const plan::Plan& plan, const RouteFigures& figures) {
    const plan::Heading& heading = plan.heading();
    const auto plane = geodesy::Plane::of(figures.gridCrs);
    const auto place = plane ? plane->geographic(figures.gm.middle) : tl::unexpected(plane.error());
    if (!place) {
        return {};
    }
    std::vector<CalendarDate> dates{figures.start ? localDate(*figures.start, heading.zone) : heading.date};
    if (figures.start && figures.arrival) {
        const CalendarDate last = localDate(*figures.arrival, heading.zone);
        if (last != dates.front()) {
            dates.push_back(last);
        }
    }
    std::vector<DatedLight> lights;
    for (const CalendarDate date : dates) {
        if (const auto light = sky::lightOn(*place, date, heading.zone)) {
            lights.push_back({date, *light});
        }
    }
    return lights;
}

const DatedLight* lightAt(const std::vector<DatedLight>& lights, std::optional<Instant> when, TimeZone zone) {
    if (lights.empty()) {
        return nullptr;
    }
    if (!when) {
        return &lights.front();
    }
    const auto found = std::find_if(lights.begin(), lights.end(),
                                    [&](const DatedLight& light) { return light.date == localDate(*when, zone); });
    return found == lights.end() ? nullptr : &*found;
}

std::array<LightFigure, 9> lightFigures(const sky::Light& light, TimeZone zone) {
    const ZoneRules rules(zone);
    const auto figure = [&](std::string_view name, const sky::Event& event) {
        return LightFigure{name, sky::eventText(light, event, rules)};
    };
    return {figure("BMNT", light.nauticalDawn),
            figure("BMCT", light.civilDawn),
            figure("sunrise", light.sunrise),
            figure("sunset", light.sunset),
            figure("EECT", light.civilDusk),
            figure("EENT", light.nauticalDusk),
            figure("moonrise", light.moonrise),
            figure("moonset", light.moonset),
            LightFigure{"moon lit", sky::moonLitText(light.moonLit)}};
}

std::string lightText(const sky::Light& light, TimeZone zone) {
    std::string text;
    for (const LightFigure& figure : lightFigures(light, zone)) {
        text += (text.empty() ? "" : ", ") + std::string(figure.name) + ' ' + figure.text;
    }
    return text;
}

}  // namespace crosstick::movement
