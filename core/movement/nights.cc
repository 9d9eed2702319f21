#include "core/movement/nights.h"

#include <algorithm>

#include "core/sky/light.h"

namespace crosstick::movement {
namespace {

constexpr Degrees kCivil{-6};

struct Change {
    Instant at;
    plan::Light to;
};

void take(std::vector<Change>& changes, const sky::Event& event, plan::Light to) {
    for (const auto& moment : {event.first, event.second}) {
        if (moment && moment->certainty != sky::Certainty::NotQuite) {
            changes.push_back({moment->at, to});
        }
    }
}

/// Dawns and dusks of every date that the time touches, in their order.
std::optional<std::vector<Change>> changesBetween(geodesy::GeoPoint place, Instant from, Instant until) {
    std::vector<Change> changes;
    const auto last = std::chrono::floor<std::chrono::days>(until);
    for (auto date = std::chrono::floor<std::chrono::days>(from); date <= last; date += std::chrono::days(1)) {
        const auto light = sky::lightOn(place, CalendarDate(date), TimeZone{});
        if (!light) {
            return std::nullopt;
        }
        take(changes, light->civilDawn, plan::Light::Day);
        take(changes, light->civilDusk, plan::Light::Night);
    }
    std::sort(changes.begin(), changes.end(), [](const Change& a, const Change& b) { return a.at < b.at; });
    return changes;
}

}  // namespace

std::optional<std::vector<Night>> nightsBetween(geodesy::GeoPoint place, Instant from, Instant until) {
    const auto now = sky::skyAt(place, from);
    const auto changes = now ? changesBetween(place, from, until) : std::nullopt;
    if (!changes) {
        return std::nullopt;
    }
    std::vector<Night> nights;
    bool isNight = now->sunAltitude < kCivil;
    Instant since = from;
    for (const Change& change : *changes) {
        if (change.at <= from || change.at >= until || isNight == (change.to == plan::Light::Night)) {
            continue;
        }
        if (isNight) {
            nights.push_back({since, change.at});
        }
        isNight = !isNight;
        since = change.at;
    }
    if (isNight && since < until) {
        nights.push_back({since, until});
    }
    return nights;
}

}  // namespace crosstick::movement
