#include "core/movement/typed_timing.h"

#include <algorithm>
#include <cmath>

#include "core/movement/faults.h"
#include "core/units/number_text.h"
#include "core/units/trimmed.h"

namespace crosstick::movement {
namespace {

constexpr double kFewestPaces = 30;
constexpr double kMostPaces = 150;
constexpr double kSlowest = 0.1;  // km/h
constexpr double kFastest = 20;
constexpr double kMostOffPace = 50;          // per cent
constexpr double kMostOffAzimuth = 45;       // degrees
constexpr double kLongest = 30.0 * 24 * 60;  // minutes

/// A number as people type it, with a comma or a point.
std::optional<double> numberIn(std::string_view typed, double least, double most) {
    std::string text(trimmed(typed));
    std::replace(text.begin(), text.end(), ',', '.');
    const auto number = parseNumber(text);
    return number && *number >= least && *number <= most ? number : std::nullopt;
}

/// Minutes since midnight of "2100" or "21:00".
std::optional<std::chrono::minutes> clockIn(std::string text) {
    std::erase(text, ':');
    const auto figures = parseWhole(text);
    const bool isClock = text.size() == 4 && text.find_first_not_of("0123456789") == std::string::npos && figures &&
                         *figures / 100 < 24 && *figures % 100 < 60;
    return isClock ? std::optional(std::chrono::minutes(*figures / 100 * 60 + *figures % 100)) : std::nullopt;
}

/// A list with what was typed in the place of one, added, or taken out.
template <class T>
void place(std::vector<T>& list, std::size_t at, std::optional<T> one) {
    if (at < list.size() && one) {
        list[at] = std::move(*one);
    } else if (at < list.size()) {
        list.erase(list.begin() + static_cast<std::ptrdiff_t>(at));
    } else if (one) {
        list.push_back(std::move(*one));
    }
}

KilometresPerHour& rateIn(plan::MarchRates& rates, PaceConditions conditions) {
    const bool byDay = conditions.light == plan::Light::Day;
    return conditions.ground == plan::Going::Road ? (byDay ? rates.roadByDay : rates.roadByNight)
                                                  : (byDay ? rates.crossCountryByDay : rates.crossCountryByNight);
}

}  // namespace

Result<Instant> momentTyped(const plan::Heading& heading, std::string_view typed, std::optional<Instant> notBefore) {
    const std::string text(trimmed(typed));
    const auto clock = heading.date.ok() ? clockIn(text) : std::nullopt;
    if (!clock) {
        const auto iso = parseIsoTime(text);
        return iso ? iso : parseDateTimeGroup(text);
    }
    const Instant that = std::chrono::sys_days(heading.date) - heading.zone.offset + *clock;
    return notBefore && that < *notBefore ? that + std::chrono::days(1) : that;
}

Result<Instant> momentNear(const plan::Heading& heading, std::string_view typed, std::optional<Instant> near) {
    auto that = momentTyped(heading, typed);
    if (that && near && clockIn(std::string(trimmed(typed)))) {
        constexpr std::chrono::hours kHalfADay{12};
        *that += std::chrono::floor<std::chrono::days>(*near + kHalfADay - *that);
    }
    return that;
}

std::optional<Instant> notBefore(const plan::Heading& heading, std::optional<Instant> start) {
    return heading.prepared ? heading.prepared : start;
}

Result<plan::Plan> withPaceTyped(const plan::Plan& plan, std::string_view typed) {
    const std::string text(trimmed(typed));
    if (text.find(' ') != std::string::npos) {
        return withCourseTyped(plan, plan.heading().courses.size(), text);
    }
    const auto count = numberIn(text, kFewestPaces, kMostPaces);
    if (!count) {
        return fail(kBadCount, {{"typed", text}});
    }
    return withHeading(plan, [&](plan::Heading& heading) {
        heading.pace = plan::PaceProfile{*count, {}, {}};
        heading.courses.clear();
    });
}

Result<plan::Plan> withCourseTyped(const plan::Plan& plan, std::size_t at, std::string_view typed) {
    std::optional<plan::PaceCourse> course;
    if (const std::string text(trimmed(typed)); !text.empty()) {
        auto read = parseCourse(text);
        if (!read) {
            return tl::unexpected(read.error());
        }
        course = std::move(*read);
    }
    return withHeading(plan, [&](plan::Heading& heading) { place(heading.courses, at, std::move(course)); });
}

Result<plan::Plan> withRateTyped(const plan::Plan& plan, std::string_view typed) {
    const auto rate = numberIn(typed, kSlowest, kFastest);
    if (!rate) {
        return fail(kBadRate, {{"typed", std::string(trimmed(typed))}});
    }
    return withHeading(plan, [&](plan::Heading& heading) {
        heading.rate = plan::MarchRate{KilometresPerHour(*rate), {}, {}};
        heading.timing.reset();
    });
}

Result<plan::Plan> withRateTyped(const plan::Plan& plan, PaceConditions conditions, std::string_view typed) {
    const auto rate = trimmed(typed).empty() ? std::optional(rateFor(plan::MarchRates{}, conditions).value())
                                             : numberIn(typed, kSlowest, kFastest);
    if (!rate) {
        return fail(kBadRate, {{"typed", std::string(trimmed(typed))}});
    }
    return withHeading(plan, [&](plan::Heading& heading) {
        heading.timing = heading.timing.value_or(plan::Timing{});
        rateIn(heading.timing->rates, conditions) = KilometresPerHour(*rate);
    });
}

KilometresPerHour rateFor(const plan::MarchRates& rates, PaceConditions conditions) {
    plan::MarchRates all = rates;
    return rateIn(all, conditions);
}

std::optional<Minutes> parseLength(std::string_view typed) {
    const std::string text(trimmed(typed));
    const auto colon = text.find(':');
    if (colon == std::string::npos) {
        const auto minutes = numberIn(text, 0, kLongest);
        return minutes ? std::optional(Minutes(*minutes)) : std::nullopt;
    }
    const auto hours = parseWhole(text.substr(0, colon));
    const auto minutes = parseWhole(text.substr(colon + 1));
    if (!hours || !minutes || *hours < 0 || *hours > 24 * 30 || *minutes < 0 || *minutes > 59) {
        return std::nullopt;
    }
    return Minutes(static_cast<double>(*hours * 60 + *minutes));
}

std::optional<plan::Preparation> parsePreparation(std::string_view typed) {
    const std::string text(trimmed(typed));
    const auto parts = text.find_last_of("= ");
    if (parts == std::string::npos || parts == 0) {
        return std::nullopt;
    }
    const auto lasts = parseLength(text.substr(parts + 1));
    const std::string name(trimmed(text.substr(0, parts)));
    return lasts && !name.empty() ? std::optional(plan::Preparation{name, *lasts}) : std::nullopt;
}

std::string preparationText(const plan::Preparation& preparation) {
    return preparation.name + ' ' + numberText(preparation.lasts.value());
}

Result<plan::Plan> withPreparationTyped(const plan::Plan& plan, std::size_t at, std::string_view typed) {
    const std::string text(trimmed(typed));
    auto preparation = parsePreparation(text);
    if (!preparation && !text.empty()) {
        return fail(kBadPreparation, {{"typed", text}});
    }
    return withHeading(plan, [&](plan::Heading& heading) { place(heading.preparations, at, std::move(preparation)); });
}

Result<plan::Plan> withNavigatorTyped(const plan::Plan& plan, std::string_view typed) {
    std::string text(trimmed(typed));
    if (text.empty()) {
        return withHeading(plan, [](plan::Heading& heading) { heading.navigator.reset(); });
    }
    for (const std::string_view sign : {"%", "\u00b0"}) {
        for (std::size_t at = text.find(sign); at != std::string::npos; at = text.find(sign)) {
            text.replace(at, sign.size(), " ");
        }
    }
    const std::string_view figures = trimmed(text);
    const std::size_t apart = std::min(figures.find(' '), figures.size());
    const auto pace = numberIn(figures.substr(0, apart), 0, kMostOffPace);
    const auto compass = numberIn(figures.substr(apart), 0, kMostOffAzimuth);
    if (!pace || !compass) {
        return fail(kBadNavigator, {{"typed", std::string(trimmed(typed))}});
    }
    return withHeading(plan, [&](plan::Heading& heading) {
        heading.navigator = heading.navigator.value_or(plan::NavigatorErrors{});
        heading.navigator->pace = *pace / 100;
        heading.navigator->compass = Degrees(*compass);
    });
}

std::string navigatorText(const plan::NavigatorErrors& errors) {
    constexpr double kFine = 1e6;  // a hundredth of what was typed and multiplied back
    return numberText(std::round(errors.pace * 100 * kFine) / kFine) + " % " + numberText(errors.compass.value()) +
           "\u00b0";
}

Result<plan::Plan> withHHourTyped(const plan::Plan& plan, std::string_view typed) {
    std::optional<Instant> when;
    if (!trimmed(typed).empty()) {
        const auto start = plan.routes().empty() ? std::nullopt : plan.routes().front()->start;
        const auto read = momentTyped(plan.heading(), typed, notBefore(plan.heading(), start));
        if (!read) {
            return tl::unexpected(read.error());
        }
        when = *read;
    }
    return withHeading(plan, [&](plan::Heading& heading) { heading.hHour = when; });
}

Result<plan::Plan> withStartTyped(const plan::Plan& plan, const plan::ItemId& route, std::string_view typed) {
    if (trimmed(typed).empty()) {
        return withStart(plan, route, std::nullopt);
    }
    return momentTyped(plan.heading(), typed).map([&](Instant when) { return withStart(plan, route, when); });
}

namespace {

plan::Plan withTimes(const plan::Plan& plan, const plan::ItemId& id, std::optional<Instant> start,
                     std::optional<Instant> notLaterThan) {
    const plan::RoutePtr held = plan.route(id);
    if (!held) {
        return plan;
    }
    plan::Route route = *held;
    route.start = start;
    route.notLaterThan = notLaterThan;
    return std::move(plan::PlanBuilder(plan).put(std::move(route))).build();
}

}  // namespace

plan::Plan withStart(const plan::Plan& plan, const plan::ItemId& route, std::optional<Instant> start) {
    return withTimes(plan, route, start, std::nullopt);
}

plan::Plan withStartInTime(const plan::Plan& plan, const plan::ItemId& route, Instant start, Instant notLaterThan) {
    return withTimes(plan, route, start, notLaterThan);
}

}  // namespace crosstick::movement
