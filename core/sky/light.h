#pragma once

#include <optional>

#include "core/geodesy/points.h"
#include "core/units/result.h"
#include "core/units/time.h"

namespace crosstick::sky {

enum class Certainty {
    Sure,
    Uncertain,  ///< the body turns within 0.02 degree of the horizon asked for: a hill or the air decides
    NotQuite,   ///< uncertain likewise; it is reckoned to turn just before it gets there, at that time
};
struct Moment {
    Instant at;  ///< the nearest second
    Certainty certainty = Certainty::Sure;
    friend bool operator==(const Moment&, const Moment&) = default;
};
/// What happens on a date: as a rule once, near the poles not at all or twice.
struct Event {
    std::optional<Moment> first, second;
    friend bool operator==(const Event&, const Event&) = default;
};

/// The light of one date, over the plane of the horizon.
///
/// Sunrise and sunset: the sun's centre at -0:50 (34' of refraction and 16' of half diameter, the upper limb on the
/// horizon); civil and nautical twilight: its centre at -6 and -12 degrees, where BMNT and EENT are the nautical ones;
/// transit: its centre on the meridian (US Naval Observatory, Rise, Set, and Twilight Definitions; trade.md 8.1).
/// Moonrise and moonset: the upper limb at -0:34. Altitudes are those seen from the place at height 0.
struct Light {
    Instant from, until;  ///< the date: events lie in [from, until)
    Event nauticalDawn, civilDawn, sunrise, transit, sunset, civilDusk, nauticalDusk;
    Event moonrise, moonset;
    Instant noon;        ///< the middle of the date
    double moonLit = 0;  ///< share of the moon's disc that is lit at noon, 0 to 1
    friend bool operator==(const Light&, const Light&) = default;
};

/// The light of the time between two midnights.
///
/// Against an ephemeris of its own, over a year from latitude -70 to 80, times agree within some seconds, near the
/// poles altitudes within 0.003 degree (tests/sky/light_test.cc). A fraction of a millisecond.
/// @param from, until  19 to 29 hours apart: a date on which clocks change is shorter or longer
/// Errors: sky/date-outside unless both lie between 1970 and 2050.
/// Thread: any.
[[nodiscard]] Result<Light> lightBetween(geodesy::GeoPoint place, Instant from, Instant until);
/// The light of a zone's calendar date.
[[nodiscard]] Result<Light> lightOn(geodesy::GeoPoint place, CalendarDate date, TimeZone zone);

/// Where sun and moon stand at one moment, their centres seen from the place, without refraction.
struct Sky {
    Degrees sunAltitude, sunAzimuth;    ///< azimuths true, [0, 360)
    Degrees moonAltitude, moonAzimuth;  ///< negative altitudes: below the horizon
    double moonLit = 0;                 ///< 0 to 1
};
/// Which light it is where a date has no dawn and no dusk: by the sun's altitude. Errors: sky/date-outside.
[[nodiscard]] Result<Sky> skyAt(geodesy::GeoPoint place, Instant when);

}  // namespace crosstick::sky
