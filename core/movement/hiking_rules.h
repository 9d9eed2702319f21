#pragma once

#include "core/units/quantity.h"

namespace crosstick::movement {

/// Time over one even slope by Naismith's rule: 1 h for 5 km and 1 h for 600 m of climb, with Langmuir's corrections of
/// the descent: 10 min less for 300 m where it is 5 to 12 degrees steep, 10 min more where steeper, nothing where
/// gentler. No halt is inside. (trade.md 6, from a review of such rules.)
/// @param ground  along the map, over 0
/// @param rise    negative downhill
[[nodiscard]] Minutes naismith(Metres ground, Metres rise);

/// Tobler's rate on a slope, rise over run: 6 exp(-3.5 |slope + 0.05|) km/h, on a path (trade.md 6, from memory).
[[nodiscard]] KilometresPerHour toblerRate(double slope);
[[nodiscard]] Minutes tobler(Metres ground, Metres rise);

}  // namespace crosstick::movement
