#pragma once

#include <array>
#include <string>
#include <vector>

#include "app/commands/answers.h"
#include "core/movement/route_light.h"
#include "core/sky/light_text.h"

namespace crosstick::app {

/// nautical_dawn to moonset as ISO 8601 with offset or null, moon_illuminated_percent and moon_illuminated_at,
/// uncertain (names) and second (name to time, where an event happens twice). What is uncertain and falls short of its
/// horizon is null.
void putLight(Json& json, const sky::Light& light, const ZoneRules& zone);

/// An array, an object a date.
[[nodiscard]] Json datedLightJson(const std::vector<movement::DatedLight>& lights, TimeZone zone);

/// The same for a table's row: names, and cells with nothing for what does not happen.
[[nodiscard]] std::vector<std::string> lightColumns();
[[nodiscard]] std::vector<std::string> lightCells(const sky::Light& light, const ZoneRules& zone);

}  // namespace crosstick::app
