#include <array>

#include "app/wording/wording.h"

namespace crosstick::app {
namespace {

constexpr std::array kWords{
    Words{"units/no-such-zone",
          "\"{text}\" is no time zone with an offset: give a letter A to Z; J (local time) has none to reckon with."},
    Words{"units/no-zone-named",
          "\"{text}\" is no time zone: give a letter A to Z, an offset such as +02:00, or a name such as Europe/Oslo."},
    Words{"units/bad-dtg",
          "\"{text}\" is no date-time group: write day, hours and minutes, zone letter, month, year, as 131200OMAR27."},
    Words{"units/bad-time",
          "\"{text}\" is no time: write date, time and offset from UTC, as 2027-03-13T15:00:00-02:00."},
    Words{"units/bad-date", "\"{text}\" is no date: write year, month and day, as 2027-03-13."},
};

}  // namespace

std::span<const Words> unitsWords() {
    return kWords;
}

}  // namespace crosstick::app
