#pragma once

#include <map>
#include <optional>
#include <string>

#include "core/units/quantity.h"

namespace crosstick::plan {

/// Fields that this version does not know, kept as they came: key to JSON text. A newer program's data survive a save.
using UnknownFields = std::map<std::string, std::string>;

/// What a leg runs over; doctrine has a rate for each.
enum class Going { CrossCountry, Road };

/// By which a count or a rate holds.
enum class Light { Day, Night };

/// Rates of march on foot with the halt of ten minutes in the hour inside, which is therefore never added to them
/// (trade.md 5: FM 21-18; 4.0, 3.2 and 1.6 as a review quotes them, 2.4 from memory where the review has 2.5 to 2.6).
struct MarchRates {
    KilometresPerHour roadByDay{4.0};
    KilometresPerHour roadByNight{3.2};
    KilometresPerHour crossCountryByDay{2.4};
    KilometresPerHour crossCountryByNight{1.6};
    friend bool operator==(const MarchRates&, const MarchRates&) = default;
};

/// By which rule times on the move are made. A formation is never quicker than doctrine: a hiking rule counts where it
/// is the slower one.
enum class TimeRule {
    ByLight,   ///< the rate of march for ground and light
    Naismith,  ///< with Langmuir's corrections of the descent
    Tobler
};

/// How a plan's times are made; a plan without it has its one rate.
struct Timing {
    TimeRule rule = TimeRule::ByLight;
    Going going = Going::CrossCountry;  ///< of legs that do not say their own
    MarchRates rates;
    UnknownFields unknown = {};
    friend bool operator==(const Timing&, const Timing&) = default;
};

/// By how much somebody's pace count and compass are usually out. 5 % and 2 degrees are our own defaults, from no
/// publication: who has walked a measured course on a known azimuth puts in his own.
struct NavigatorErrors {
    double pace = 0.05;  ///< share of the distance counted, 0 to 0.5
    Degrees compass{2};  ///< 0 to 45
    UnknownFields unknown = {};
    friend bool operator==(const NavigatorErrors&, const NavigatorErrors&) = default;
};

/// Something that is done before the start and ends where the next one begins: orders, rehearsal, inspection, rest.
struct Preparation {
    std::string name;
    Minutes lasts;
    UnknownFields unknown = {};
    friend bool operator==(const Preparation&, const Preparation&) = default;
};

}  // namespace crosstick::plan
