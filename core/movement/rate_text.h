#pragma once

#include <string>

#include "core/movement/route_figures.h"

namespace crosstick::movement {

/// Which rule made a route's times: "1.6 km/h, cross-country by night", "2.4 km/h cross-country by day, 1.6 km/h by
/// night from 1834, halts within", "not given". What comes after the last leg is not told.
[[nodiscard]] std::string rateText(const RouteFigures& figures, TimeZone zone);

/// By what a route's paces were counted: "74 double per 100 m, open hill, night", "81.4 double per 100 m cross-country
/// by night, 74.0 by cross-country day x 1.1 for the night, our own factor", "not given".
[[nodiscard]] std::string paceText(const RouteFigures& figures);
/// The same in few words: "74 paces per 100 m, yours", "58 and 81.4 paces per 100 m, our factor in it".
[[nodiscard]] std::string shortPaceText(const RouteFigures& figures);

/// "Naismith with Langmuir", "Tobler", "rate for the light".
[[nodiscard]] std::string_view ruleName(plan::TimeRule rule);

/// A rate as it stands in such a text: "1.6 km/h".
[[nodiscard]] std::string kilometresPerHourText(KilometresPerHour rate);

}  // namespace crosstick::movement
