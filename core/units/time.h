#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

#include "core/units/result.h"

namespace crosstick {

using Instant = std::chrono::sys_seconds;  ///< UTC
using CalendarDate = std::chrono::year_month_day;

/// The zone a plan's times are written in: its letter on paper and its offset from UTC.
/// Letters (ACP 121 family, from memory): A to I +1 to +9, K to M +10 to +12, N to Y -1 to -12, Z 0; J is local time,
/// whose offset the letter does not tell.
struct TimeZone {
    char letter = 'Z';
    std::chrono::minutes offset{0};
    friend constexpr bool operator==(TimeZone, TimeZone) = default;
};

/// Errors: units/no-such-zone for anything but a letter A to Z; J is refused here because it has no offset.
[[nodiscard]] Result<TimeZone> timeZone(char letter);

/// "131200OMAR27": day, hour, minute, zone letter, month, year.
[[nodiscard]] std::string dateTimeGroup(Instant when, TimeZone zone);
/// "131200OMAR27" or "131200O MAR 27"; two-digit years are 2000 to 2099. Errors: units/bad-dtg.
[[nodiscard]] Result<Instant> parseDateTimeGroup(std::string_view text);

/// "2027-03-13T15:00:00-02:00"; also "Z", and without seconds. Errors: units/bad-time.
[[nodiscard]] Result<Instant> parseIsoTime(std::string_view text);
[[nodiscard]] std::string isoTime(Instant when, TimeZone zone);  ///< "2027-03-13T15:00:00-02:00"; Z for offset 0
/// "2027-03-13". Errors: units/bad-date.
[[nodiscard]] Result<CalendarDate> parseIsoDate(std::string_view text);
[[nodiscard]] std::string isoDate(CalendarDate date);

[[nodiscard]] CalendarDate localDate(Instant when, TimeZone zone);
/// "2141", hours and minutes in the zone, rounded to the nearest minute (half up).
[[nodiscard]] std::string clockTime(Instant when, TimeZone zone);

/// year + (day of year - 1) / days in year (NOAA's convention, trade 9c). The date must be a valid one.
[[nodiscard]] double decimalYear(CalendarDate date);

}  // namespace crosstick
