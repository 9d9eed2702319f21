#include "core/units/zone_rules.h"

#include <cctype>

#include <date/tz.h>

#include "core/units/faults.h"

namespace crosstick {
namespace {

using std::chrono::hours;
using std::chrono::minutes;

TimeZone withLetter(minutes offset) {
    for (char letter = 'A'; letter <= 'Z'; ++letter) {
        const auto zone = timeZone(letter);
        if (zone && zone->offset == offset) {
            return *zone;
        }
    }
    return {'J', offset};
}

/// "+02:00", "+0200", "+02": nothing where it is none.
std::optional<minutes> offsetIn(std::string_view text) {
    if (text.size() < 3 || (text[0] != '+' && text[0] != '-')) {
        return std::nullopt;
    }
    std::string digits(text.substr(1));
    if (digits.size() == 5 && digits[2] == ':') {
        digits.erase(2, 1);
    }
    if (digits.size() == 2) {
        digits += "00";
    }
    const auto isDigit = [](char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; };
    if (digits.size() != 4 || !std::all_of(digits.begin(), digits.end(), isDigit)) {
        return std::nullopt;
    }
    const auto pair = [&](std::size_t at) { return (digits[at] - '0') * 10 + digits[at + 1] - '0'; };
    const minutes size = hours(pair(0)) + minutes(pair(2));
    if (size > hours(14) || pair(2) > 59) {
        return std::nullopt;
    }
    return text[0] == '-' ? -size : size;
}

/// The database's folder also holds the machine's own zone and copies that count leap seconds.
bool isRefused(std::string_view name) {
    return name.empty() || name == "localtime" || name == "posixrules" || name == "Factory" ||
           name.starts_with("posix/") || name.starts_with("right/");
}

}  // namespace

struct ZoneRules::Named {
    const date::time_zone* zone;
};

Result<ZoneRules> ZoneRules::parse(std::string_view text, std::optional<TimeZone> local) {
    if (text.size() == 1) {
        if ((text[0] == 'J' || text[0] == 'j') && local) {
            return ZoneRules(*local);
        }
        return timeZone(text[0]).map([](TimeZone zone) { return ZoneRules(zone); });
    }
    if (const auto offset = offsetIn(text)) {
        return ZoneRules(withLetter(*offset));
    }
    const auto unknown = fail(kNoZoneNamed, {{"text", std::string(text)}});
    if (isRefused(text)) {
        return unknown;
    }
    try {
        return ZoneRules(std::make_shared<const Named>(Named{date::locate_zone(text)}));
    } catch (const std::exception&) {
        return unknown;
    }
}

TimeZone ZoneRules::at(Instant when) const {
    if (!named_) {
        return fixed_;
    }
    return withLetter(std::chrono::floor<minutes>(named_->zone->get_info(when).offset));
}

Instant ZoneRules::startOf(CalendarDate date) const {
    const std::chrono::sys_days midnight(date);
    if (!named_) {
        return Instant(midnight) - fixed_.offset;
    }
    const date::local_seconds local(Instant(midnight).time_since_epoch());
    return named_->zone->to_sys(local, date::choose::earliest);
}

}  // namespace crosstick
