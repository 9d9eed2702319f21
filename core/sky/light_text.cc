#include "core/sky/light_text.h"

#include <cmath>

#include <fmt/format.h>

namespace crosstick::sky {
namespace {

std::string momentText(const Light& light, const Moment& moment, const ZoneRules& zone) {
    if (moment.certainty == Certainty::NotQuite) {
        return "uncertain";
    }
    const Instant shown = std::min(moment.at, light.until - std::chrono::seconds(31));
    return clockTime(shown, zone.at(moment.at)) + (moment.certainty == Certainty::Uncertain ? " uncertain" : "");
}

}  // namespace

std::array<LightRow, 9> rowsOf(const Light& light) {
    return {{{"nautical_dawn", "nautical dawn", &light.nauticalDawn},
             {"civil_dawn", "civil dawn", &light.civilDawn},
             {"sunrise", "sunrise", &light.sunrise},
             {"transit", "transit", &light.transit},
             {"sunset", "sunset", &light.sunset},
             {"civil_dusk", "civil dusk", &light.civilDusk},
             {"nautical_dusk", "nautical dusk", &light.nauticalDusk},
             {"moonrise", "moonrise", &light.moonrise},
             {"moonset", "moonset", &light.moonset}}};
}

std::string eventText(const Light& light, const Event& event, const ZoneRules& zone) {
    if (!event.first) {
        return "none";
    }
    const std::string first = momentText(light, *event.first, zone);
    return event.second ? first + " and " + momentText(light, *event.second, zone) : first;
}

std::string moonLitText(double share) {
    return fmt::format("{:.0f} %", std::floor(share * 100 + 0.5));
}

}  // namespace crosstick::sky
