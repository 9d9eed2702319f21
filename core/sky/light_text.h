#pragma once

#include <array>
#include <string>
#include <string_view>

#include "core/sky/light.h"
#include "core/units/zone_rules.h"

namespace crosstick::sky {

struct LightRow {
    std::string_view key;   ///< "nautical_dawn", as JSON and CSV have it
    std::string_view name;  ///< "nautical dawn"
    const Event* event;     ///< of the light that was asked; never null
};
/// The events of a date in the order in which they are written everywhere; they point into the light.
[[nodiscard]] std::array<LightRow, 9> rowsOf(const Light& light);

/// As a paper says it, in hours and minutes: "0517", "none", "0003 and 2358", "0103 uncertain"; only "uncertain" where
/// the body is reckoned to turn just before it gets there. What happens in the date's last half minute is written in
/// its last minute.
[[nodiscard]] std::string eventText(const Light& light, const Event& event, const ZoneRules& zone);
/// "27 %"
[[nodiscard]] std::string moonLitText(double share);

}  // namespace crosstick::sky
