#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "core/movement/route_figures.h"
#include "core/sky/light.h"

namespace crosstick::movement {

struct DatedLight {
    CalendarDate date{};  ///< in the plan's zone
    sky::Light light;
    friend bool operator==(const DatedLight&, const DatedLight&) = default;
};

/// The light that a route is walked in, at its middle: of the date on which the head starts and, where it arrives on
/// another, of that one; of the plan's date where no start is given. Nothing for a plan without either and for dates
/// that light is not reckoned for.
[[nodiscard]] std::vector<DatedLight> routeLight(const plan::Plan& plan, const RouteFigures& figures);

/// The light of the date of a moment, of the first date where the moment is not known; null where there is none.
[[nodiscard]] const DatedLight* lightAt(const std::vector<DatedLight>& lights, std::optional<Instant> when,
                                        TimeZone zone);

struct LightFigure {
    std::string_view name;  ///< "BMNT"
    std::string text;       ///< "0517", "none", "0103 uncertain", "27 %"
};
/// Begin and end of nautical and of civil twilight as the trade shortens them (BMNT, BMCT, EECT, EENT: from memory,
/// trade.md 8.1), sun, moon, and how much of the moon is lit at the date's noon.
[[nodiscard]] std::array<LightFigure, 9> lightFigures(const sky::Light& light, TimeZone zone);
/// "BMNT 0517, BMCT 0551, sunrise 0621, sunset 1807, EECT 1837, EENT 1911, moonrise 0812, moonset none, moon lit 27 %"
[[nodiscard]] std::string lightText(const sky::Light& light, TimeZone zone);

}  // namespace crosstick::movement
