#include "core/units/time.h"

#include <algorithm>
#include <array>
#include <cctype>

#include <fmt/format.h>

#include "core/units/faults.h"

namespace crosstick {
namespace {

using std::chrono::day;
using std::chrono::days;
using std::chrono::floor;
using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::month;
using std::chrono::seconds;
using std::chrono::sys_days;
using std::chrono::year;

constexpr std::array<std::string_view, 12> kMonths{"JAN", "FEB", "MAR", "APR", "MAY", "JUN",
                                                   "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"};

char upper(char c) {
    return static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
}

/// Reads a text from the left, one fixed piece after the other; once a piece does not fit, nothing fits any more.
class Reader {
  public:
    explicit Reader(std::string_view text) : rest_(text) {}

    /// Exactly so many digits.
    int digits(std::size_t count) {
        int value = 0;
        if (rest_.size() < count) {
            good_ = false;
            return 0;
        }
        for (std::size_t i = 0; i < count; ++i) {
            if (std::isdigit(static_cast<unsigned char>(rest_[i])) == 0) {
                good_ = false;
                return 0;
            }
            value = value * 10 + (rest_[i] - '0');
        }
        rest_.remove_prefix(count);
        return value;
    }
    void expect(char c) {
        if (!take(c)) {
            good_ = false;
        }
    }
    bool take(char c) {
        if (rest_.empty() || rest_.front() != c) {
            return false;
        }
        rest_.remove_prefix(1);
        return true;
    }
    char letter() {
        if (rest_.empty()) {
            good_ = false;
            return ' ';
        }
        const char c = rest_.front();
        rest_.remove_prefix(1);
        return c;
    }
    [[nodiscard]] bool atEnd() const { return rest_.empty(); }
    [[nodiscard]] bool good() const { return good_; }

  private:
    std::string_view rest_;
    bool good_ = true;
};

struct TimeOfDay {
    int hour = 0;
    int minute = 0;
    int second = 0;
    [[nodiscard]] bool isGood() const { return hour < 24 && minute < 60 && second < 60; }
};

Instant instant(CalendarDate date, TimeOfDay time, minutes offset) {
    return Instant(sys_days(date)) + hours(time.hour) + minutes(time.minute) + seconds(time.second) - offset;
}

CalendarDate calendarDate(int y, int m, int d) {
    return {year(y), month(static_cast<unsigned>(m)), day(static_cast<unsigned>(d))};
}

struct LocalTime {
    CalendarDate date;
    TimeOfDay time;
};

LocalTime localTime(Instant when, TimeZone zone) {
    const Instant local = when + zone.offset;
    const auto midnight = floor<days>(local);
    const auto past = local - midnight;
    const auto count = static_cast<int>(past.count());
    return {CalendarDate(midnight), {count / 3600, count / 60 % 60, count % 60}};
}

/// "Z", "+hh:mm", "-hh:mm"; nothing where it is none of them.
std::optional<minutes> readOffset(Reader& reader) {
    if (reader.take('Z') || reader.take('z')) {
        return minutes(0);
    }
    const bool west = reader.take('-');
    if (!west) {
        reader.expect('+');
    }
    const int h = reader.digits(2);
    reader.take(':');
    const int m = reader.digits(2);
    if (!reader.good() || h > 14 || m > 59) {
        return std::nullopt;
    }
    const minutes size = hours(h) + minutes(m);
    return west ? -size : size;
}

std::optional<int> monthNumber(std::string_view letters) {
    const auto* const found = std::find(kMonths.begin(), kMonths.end(), letters);
    if (found == kMonths.end()) {
        return std::nullopt;
    }
    return static_cast<int>(found - kMonths.begin()) + 1;
}

}  // namespace

Result<TimeZone> timeZone(char letter) {
    const char c = upper(letter);
    if (c < 'A' || c > 'Z' || c == 'J') {
        return fail(kNoSuchZone, {{"text", std::string(1, letter)}});
    }
    int offset = 0;
    if (c >= 'A' && c <= 'I') {
        offset = c - 'A' + 1;
    } else if (c >= 'K' && c <= 'M') {
        offset = c - 'K' + 10;
    } else if (c >= 'N' && c <= 'Y') {
        offset = -(c - 'N' + 1);
    }
    return TimeZone{c, hours(offset)};
}

std::string dateTimeGroup(Instant when, TimeZone zone) {
    const auto [date, time] = localTime(when, zone);
    const auto monthIndex = static_cast<unsigned>(date.month()) - 1;
    const int twoDigits = ((static_cast<int>(date.year()) % 100) + 100) % 100;
    return fmt::format("{:02}{:02}{:02}{}{}{:02}", static_cast<unsigned>(date.day()), time.hour, time.minute,
                       zone.letter, kMonths[monthIndex], twoDigits);
}

Result<Instant> parseDateTimeGroup(std::string_view text) {
    std::string packed;
    for (const char c : text) {
        if (c != ' ') {
            packed += upper(c);
        }
    }
    const auto bad = [&] { return fail(kBadDateTimeGroup, {{"text", std::string(text)}}); };
    if (packed.size() != 12) {
        return bad();
    }
    Reader reader(packed);
    const int d = reader.digits(2);
    TimeOfDay time;
    time.hour = reader.digits(2);
    time.minute = reader.digits(2);
    const auto zone = timeZone(reader.letter());
    const auto m = monthNumber(std::string_view(packed).substr(7, 3));
    Reader tail(std::string_view(packed).substr(10));
    const int y = 2000 + tail.digits(2);
    if (!reader.good() || !tail.good() || !m || !time.isGood()) {
        return bad();
    }
    if (!zone) {
        return tl::unexpected(zone.error());
    }
    const CalendarDate date = calendarDate(y, *m, d);
    if (!date.ok()) {
        return bad();
    }
    return instant(date, time, zone->offset);
}

Result<Instant> parseIsoTime(std::string_view text) {
    const auto bad = [&] { return fail(kBadTime, {{"text", std::string(text)}}); };
    if (text.size() < 17) {
        return bad();
    }
    const auto date = parseIsoDate(text.substr(0, 10));
    if (!date) {
        return bad();
    }
    Reader reader(text.substr(10));
    if (!reader.take('t')) {
        reader.expect('T');
    }
    TimeOfDay time;
    time.hour = reader.digits(2);
    reader.expect(':');
    time.minute = reader.digits(2);
    if (reader.take(':')) {
        time.second = reader.digits(2);
    }
    const auto offset = readOffset(reader);
    if (!reader.good() || !reader.atEnd() || !offset || !time.isGood()) {
        return bad();
    }
    return instant(*date, time, *offset);
}

std::string isoTime(Instant when, TimeZone zone) {
    const auto [date, time] = localTime(when, zone);
    std::string out = fmt::format("{}T{:02}:{:02}:{:02}", isoDate(date), time.hour, time.minute, time.second);
    if (zone.offset == minutes(0)) {
        return out + 'Z';
    }
    const auto size = std::chrono::abs(zone.offset).count();
    return out + fmt::format("{}{:02}:{:02}", zone.offset < minutes(0) ? '-' : '+', size / 60, size % 60);
}

Result<CalendarDate> parseIsoDate(std::string_view text) {
    Reader reader(text);
    const int y = reader.digits(4);
    reader.expect('-');
    const int m = reader.digits(2);
    reader.expect('-');
    const int d = reader.digits(2);
    const CalendarDate date = calendarDate(y, m, d);
    if (!reader.good() || !reader.atEnd() || !date.ok()) {
        return fail(kBadDate, {{"text", std::string(text)}});
    }
    return date;
}

std::string isoDate(CalendarDate date) {
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                       static_cast<unsigned>(date.day()));
}

CalendarDate localDate(Instant when, TimeZone zone) {
    return localTime(when, zone).date;
}

std::string clockTime(Instant when, TimeZone zone) {
    const auto [date, time] = localTime(when + seconds(30), zone);
    return fmt::format("{:02}{:02}", time.hour, time.minute);
}

double decimalYear(CalendarDate date) {
    const sys_days first(date.year() / std::chrono::January / 1);
    const double past = static_cast<double>((sys_days(date) - first).count());
    return static_cast<int>(date.year()) + past / (date.year().is_leap() ? 366.0 : 365.0);
}

}  // namespace crosstick
