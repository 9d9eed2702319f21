#include "core/sky/light.h"

#include <cmath>

#include "core/sky/crossings.h"
#include "core/sky/faults.h"

namespace crosstick::sky {
namespace {

constexpr Degrees kSunOnHorizon{-50.0 / 60};
constexpr Degrees kMoonOnHorizon{-34.0 / 60};
constexpr Degrees kCivil{-6};
constexpr Degrees kNautical{-12};
constexpr Degrees kGrazing{0.02};
// What happens just before or after the date may show that an event of the date only grazes.
constexpr Seconds kMargin{3 * 3600.0};
constexpr Degrees kTurnOfHour{15.0};

constexpr Instant kFirst{std::chrono::sys_days(std::chrono::year(1970) / 1 / 1)};
constexpr Instant kLast{std::chrono::sys_days(std::chrono::year(2051) / 1 / 2)};

std::optional<Error> fault(Instant from, Instant until) {
    if (from < kFirst - std::chrono::days(1) || until > kLast || until <= from) {
        return fail(kDateOutside, {{"date", isoDate(localDate(from, TimeZone{}))}}).value();
    }
    return std::nullopt;
}

/// One date's window with its middle.
struct Window {
    Instant from, until, middle;
    [[nodiscard]] Seconds begin() const { return from - middle; }
    [[nodiscard]] Seconds end() const { return until - middle; }

    [[nodiscard]] std::optional<Moment> moment(Seconds at, Certainty certainty) const {
        const Instant when = middle + std::chrono::seconds(std::llround(at.count()));
        return when >= from && when < until ? std::optional(Moment{when, certainty}) : std::nullopt;
    }
};

void add(Event& event, std::optional<Moment> moment) {
    if (moment) {
        (event.first ? event.second : event.first) = moment;
    }
}

Certainty certaintyOf(Kind kind) {
    switch (kind) {
        case Kind::Sure:
            return Certainty::Sure;
        case Kind::Grazes:
            return Certainty::Uncertain;
        case Kind::FallsShort:
            return Certainty::NotQuite;
    }
    return Certainty::Sure;
}

/// A curve of the date with its knots: one search serves all levels.
class Search {
  public:
    Search(Curve curve, const Window& window)
        : curve_(std::move(curve)),
          knots_(knotsOf(curve_, window.begin() - kMargin, window.end() + kMargin)),
          window_(window) {}

    [[nodiscard]] Event event(Degrees level, Way way) const {
        Event event;
        for (const Crossing& crossing : crossingsOf(curve_, knots_, level, way, kGrazing)) {
            add(event, window_.moment(crossing.at, certaintyOf(crossing.kind)));
        }
        return event;
    }

  private:
    Curve curve_;
    std::vector<Knot> knots_;
    Window window_;
};

/// The hour angle grows all but evenly: a few steps of its mean rate find where it is nothing.
Event transitOf(const Bodies& bodies, const Window& window) {
    const auto after = [&](Seconds at) { return Seconds((bodies.sunHourAngle(at) / kTurnOfHour) * 3600); };
    Event event;
    for (Seconds at = window.begin() - after(window.begin()); at <= window.end() + Seconds(60); at += Seconds(86400)) {
        Seconds found = at;
        for (int step = 0; step < 4; ++step) {
            const Seconds past = after(found);
            found -= past > Seconds(43200) ? past - Seconds(86400) : past;
        }
        add(event, window.moment(found, Certainty::Sure));
    }
    return event;
}

}  // namespace

Result<Light> lightBetween(geodesy::GeoPoint place, Instant from, Instant until) {
    if (auto outside = fault(from, until)) {
        return tl::unexpected(*outside);
    }
    const Window window{from, until, from + (until - from) / 2};
    const Bodies bodies(place, window.middle, window.end() + kMargin);
    const Search sun([&](Seconds at) { return bodies.sunAltitude(at); }, window);
    const Search moon([&](Seconds at) { return bodies.moonLimbAltitude(at); }, window);
    Light light;
    light.from = from;
    light.until = until;
    light.nauticalDawn = sun.event(kNautical, Way::Up);
    light.civilDawn = sun.event(kCivil, Way::Up);
    light.sunrise = sun.event(kSunOnHorizon, Way::Up);
    light.transit = transitOf(bodies, window);
    light.sunset = sun.event(kSunOnHorizon, Way::Down);
    light.civilDusk = sun.event(kCivil, Way::Down);
    light.nauticalDusk = sun.event(kNautical, Way::Down);
    light.moonrise = moon.event(kMoonOnHorizon, Way::Up);
    light.moonset = moon.event(kMoonOnHorizon, Way::Down);
    light.noon = window.middle;
    light.moonLit = bodies.moonLit(Seconds(0));
    return light;
}

Result<Light> lightOn(geodesy::GeoPoint place, CalendarDate date, TimeZone zone) {
    if (!date.ok()) {
        return fail(kDateOutside, {{"date", isoDate(date)}});
    }
    const Instant midnight = Instant(std::chrono::sys_days(date)) - zone.offset;
    return lightBetween(place, midnight, midnight + std::chrono::days(1));
}

Result<Sky> skyAt(geodesy::GeoPoint place, Instant when) {
    if (auto outside = fault(when, when + std::chrono::seconds(1))) {
        return tl::unexpected(*outside);
    }
    const Bodies bodies(place, when, Seconds(3600));
    const Seconds now(0);
    return Sky{bodies.sunAltitude(now), bodies.sunAzimuth(now), bodies.moonAltitude(now), bodies.moonAzimuth(now),
               bodies.moonLit(now)};
}

}  // namespace crosstick::sky
