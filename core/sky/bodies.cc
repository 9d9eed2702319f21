#include "core/sky/bodies.h"

#include <cmath>
#include <numbers>

#include <erfa.h>
#include <erfam.h>

namespace crosstick::sky {
namespace {

constexpr double kAu = ERFA_DAU / 1000;  // kilometres
constexpr double kMoonRadius = 1738.09;  // kilometres: 0.2725076 equatorial radii (IAU, as Meeus has it)
constexpr Seconds kDay{86400};
constexpr Seconds kDynamicalAhead{69.2};  // TT - UT1 of 2025 to 2030
// The earth's turn against the equinox in a second of UT: 1.00273790935 to the day (IAU 1982).
constexpr double kTurn = 2 * std::numbers::pi * 1.00273790935 / 86400;

/// A day in the two pieces that ERFA adds.
struct JulianDate {
    double whole, rest;
};

JulianDate julianDate(Instant when, Seconds later) {
    const auto day = std::chrono::floor<std::chrono::days>(when);
    return {2440587.5 + static_cast<double>(day.time_since_epoch().count()), (Seconds(when - day) + later) / kDay};
}

/// ERFA's matrix as a value.
struct Turn {
    double rows[3][3];
};

/// Into the true equator and equinox, in kilometres; in ERFA's frame and in AU before.
Vector ofDate(Turn& turn, double (&place)[3]) {
    Vector out{};
    eraRxp(turn.rows, place, out.data());
    for (double& along : out) {
        along *= kAu;
    }
    return out;
}

Vector sunAt(JulianDate when, Turn& turn) {
    double earth[2][3];
    double earthInSpace[2][3];
    eraEpv00(when.whole, when.rest, earth, earthInSpace);
    double towards[3];
    double velocity[3];  // in that of light
    const double distance = eraPm(earth[0]);
    eraSxp(-1 / distance, earth[0], towards);
    eraSxp(ERFA_AULT / ERFA_DAYSEC, earthInSpace[1], velocity);
    const double speed = eraPm(velocity);
    double apparent[3];
    eraAb(towards, velocity, distance, std::sqrt(1 - speed * speed), apparent);
    eraSxp(distance, apparent, apparent);
    return ofDate(turn, apparent);
}

Vector moonAt(JulianDate when, Turn& turn) {
    double moon[2][3];
    eraMoon98(when.whole, when.rest, moon);
    return ofDate(turn, moon[0]);
}

double length(const Vector& v) {
    return std::hypot(v[0], v[1], v[2]);
}

double dot(const Vector& a, const Vector& b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

Vector operator-(const Vector& a, const Vector& b) {
    return {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
}

Degrees angle(double radians) {
    return degrees(Radians(radians));
}

Degrees altitude(const Vector& seen) {
    return angle(std::atan2(seen[2], std::hypot(seen[0], seen[1])));
}

Degrees azimuth(const Vector& seen) {
    return fullCircle(angle(std::atan2(seen[0], seen[1])));
}

}  // namespace

Seconds Track::nodeAt(Seconds reach, std::size_t n) {
    return reach * (2.0 * static_cast<double>(n) / (kNodes - 1) - 1);
}

Vector Track::at(Seconds sinceMiddle) const {
    const double at = (sinceMiddle / reach_ + 1) / 2 * (kNodes - 1);
    Vector out{};
    for (std::size_t node = 0; node < kNodes; ++node) {
        double weight = 1;  // Lagrange's
        for (std::size_t other = 0; other < kNodes; ++other) {
            if (other != node) {
                const auto k = static_cast<double>(other);
                weight *= (at - k) / (static_cast<double>(node) - k);
            }
        }
        for (std::size_t axis = 0; axis < 3; ++axis) {
            out[axis] += weight * nodes_[node][axis];
        }
    }
    return out;
}

Bodies::Bodies(geodesy::GeoPoint place, Instant middle, Seconds reach) : place_(place) {
    double onEarth[3];
    eraGd2gc(ERFA_WGS84, radians(place.longitude).value(), radians(place.latitude).value(), 0, onEarth);
    for (std::size_t axis = 0; axis < 3; ++axis) {
        observer_[axis] = onEarth[axis] / 1000;
    }
    const JulianDate ut = julianDate(middle, Seconds(0));
    const JulianDate tt = julianDate(middle, kDynamicalAhead);
    siderealTime_ = Radians(eraGst00b(ut.whole, ut.rest));
    Turn turn{};
    eraPnm00b(tt.whole, tt.rest, turn.rows);
    std::array<Vector, Track::kNodes> suns{};
    std::array<Vector, Track::kNodes> moons{};
    for (std::size_t n = 0; n < Track::kNodes; ++n) {
        const JulianDate then = julianDate(middle, kDynamicalAhead + Track::nodeAt(reach, n));
        suns[n] = sunAt(then, turn);
        moons[n] = moonAt(then, turn);
    }
    sun_ = Track(reach, suns);
    moon_ = Track(reach, moons);
}

Vector Bodies::overTheEarth(const Vector& body, Seconds sinceMiddle) const {
    const double turned = siderealTime_.value() + kTurn * sinceMiddle.count();
    const double c = std::cos(turned);
    const double s = std::sin(turned);
    return {body[0] * c + body[1] * s, body[1] * c - body[0] * s, body[2]};
}

Vector Bodies::seen(const Vector& body, Seconds sinceMiddle) const {
    const Vector sight = overTheEarth(body, sinceMiddle) - observer_;
    const double phi = radians(place_.latitude).value();
    const double lambda = radians(place_.longitude).value();
    const Vector east{-std::sin(lambda), std::cos(lambda), 0};
    const Vector north{-std::sin(phi) * std::cos(lambda), -std::sin(phi) * std::sin(lambda), std::cos(phi)};
    const Vector up{std::cos(phi) * std::cos(lambda), std::cos(phi) * std::sin(lambda), std::sin(phi)};
    return {dot(sight, east), dot(sight, north), dot(sight, up)};
}

Degrees Bodies::sunAltitude(Seconds sinceMiddle) const {
    return altitude(seen(sun(sinceMiddle), sinceMiddle));
}

Degrees Bodies::moonAltitude(Seconds sinceMiddle) const {
    return altitude(seen(moon(sinceMiddle), sinceMiddle));
}

Degrees Bodies::moonLimbAltitude(Seconds sinceMiddle) const {
    const Vector sight = seen(moon(sinceMiddle), sinceMiddle);
    return altitude(sight) + angle(std::asin(kMoonRadius / length(sight)));
}

Degrees Bodies::sunAzimuth(Seconds sinceMiddle) const {
    return azimuth(seen(sun(sinceMiddle), sinceMiddle));
}

Degrees Bodies::moonAzimuth(Seconds sinceMiddle) const {
    return azimuth(seen(moon(sinceMiddle), sinceMiddle));
}

Degrees Bodies::sunHourAngle(Seconds sinceMiddle) const {
    const Vector body = overTheEarth(sun(sinceMiddle), sinceMiddle);
    return fullCircle(place_.longitude - angle(std::atan2(body[1], body[0])));
}

double Bodies::moonLit(Seconds sinceMiddle) const {
    const Vector moon = this->moon(sinceMiddle);
    const Vector toSun = sun(sinceMiddle) - moon;
    return (1 - dot(toSun, moon) / (length(toSun) * length(moon))) / 2;
}

}  // namespace crosstick::sky
