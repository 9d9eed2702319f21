#pragma once

#include <string>

#include "core/movement/route_figures.h"

namespace crosstick::movement {

/// Which rule made a route's times: "1.6 km/h, cross-country by night", "2.4 km/h cross-country by day, 1.6 km/h by
/// night from 1834, halts within", "not given". What comes after the last leg is not told.
[[nodiscard]] std::string rateText(const RouteFigures& figures, TimeZone zone);

/// "Naismith with Langmuir", "Tobler", "rate for the light".
[[nodiscard]] std::string_view ruleName(plan::TimeRule rule);

/// A rate as it stands in such a text: "1.6 km/h".
[[nodiscard]] std::string kilometresPerHourText(KilometresPerHour rate);

}  // namespace crosstick::movement
