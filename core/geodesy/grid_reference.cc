#include "core/geodesy/grid_reference.h"

#include <GeographicLib/MGRS.hpp>
#include <GeographicLib/UTMUPS.hpp>

#include "core/geodesy/faults.h"
#include "core/units/number_text.h"

namespace crosstick::geodesy {
namespace {

using GeographicLib::MGRS;
using GeographicLib::UTMUPS;

Degrees normalLongitude(double longitude) {
    const double turned = std::remainder(longitude, 360.0);
    return Degrees(turned >= 180.0 ? turned - 360.0 : turned);
}

struct Projected {
    int zone;
    bool north;
    double easting, northing, convergence, scale;
};

Result<Projected> project(GeoPoint point, int zone) {
    if (!(std::abs(point.latitude.value()) <= 90)) {
        return fail(kBadLatitude, {{"found", point.latitude.value()}});
    }
    Projected p{};
    try {
        UTMUPS::Forward(point.latitude.value(), point.longitude.value(), p.zone, p.north, p.easting, p.northing,
                        p.convergence, p.scale, zone);
    } catch (const GeographicLib::GeographicErr&) {
        return fail(kOutsideZone, {{"zone", std::int64_t{zone}}});
    }
    if (!std::isfinite(p.easting)) {
        return fail(kBadLongitude, {{"found", point.longitude.value()}});
    }
    return p;
}

std::string square(const std::string& reference, std::size_t letters) {
    return reference.substr(letters, 2);
}

}  // namespace

Result<GridPoint> gridPoint(GeoPoint point) {
    return project(point, UTMUPS::STANDARD).map([](const Projected& p) {
        return GridPoint{{p.zone, p.north ? Hemisphere::North : Hemisphere::South},
                         {Metres(p.easting), Metres(p.northing)}};
    });
}

// A plane crosses the equator: the southern half's false northing is taken off or put on, so that one zone stays one
// plane.
Result<GridPoint> gridPoint(GeoPoint point, Zone zone) {
    return project(point, zone.number).map([&](const Projected& p) {
        double northing = p.northing;
        if (zone.number != 0 && p.north != (zone.hemisphere == Hemisphere::North)) {
            northing += p.north ? UTMUPS::UTMShift() : -UTMUPS::UTMShift();
        }
        return GridPoint{zone, {Metres(p.easting), Metres(northing)}};
    });
}

Result<GeoPoint> geographic(const GridPoint& point) {
    double latitude = 0;
    double longitude = 0;
    try {
        UTMUPS::Reverse(point.zone.number, point.zone.hemisphere == Hemisphere::North, point.at.easting.value(),
                        point.at.northing.value(), latitude, longitude);
    } catch (const GeographicLib::GeographicErr&) {
        return fail(kOffGrid, {{"easting", numberText(point.at.easting.value())},
                               {"northing", numberText(point.at.northing.value())},
                               {"zone", std::int64_t{point.zone.number}}});
    }
    return GeoPoint{Degrees(latitude), normalLongitude(longitude)};
}

Result<PlaneFactors> factors(const GridPoint& point) {
    double latitude = 0;
    double longitude = 0;
    PlaneFactors found;
    double convergence = 0;
    try {
        UTMUPS::Reverse(point.zone.number, point.zone.hemisphere == Hemisphere::North, point.at.easting.value(),
                        point.at.northing.value(), latitude, longitude, convergence, found.scale);
    } catch (const GeographicLib::GeographicErr&) {
        return fail(kOffGrid, {{"easting", numberText(point.at.easting.value())},
                               {"northing", numberText(point.at.northing.value())},
                               {"zone", std::int64_t{point.zone.number}}});
    }
    found.convergence = Degrees(convergence);
    return found;
}

Result<std::string> mgrs(const GridPoint& point, Digits digits) {
    std::string reference;
    try {
        MGRS::Forward(point.zone.number, point.zone.hemisphere == Hemisphere::North, point.at.easting.value(),
                      point.at.northing.value(), static_cast<int>(digits), reference);
    } catch (const GeographicLib::GeographicErr&) {
        return fail(kNoMgrs, {{"easting", numberText(point.at.easting.value())},
                              {"northing", numberText(point.at.northing.value())}});
    }
    return reference;
}

Result<MgrsParts> mgrsParts(const GridPoint& point, Digits digits) {
    return mgrs(point, digits).map([&](const std::string& reference) {
        const std::size_t zoneLetters = point.zone.number == 0 ? 1 : 3;
        const auto half = static_cast<std::size_t>(digits);
        const std::size_t figures = zoneLetters + 2;
        return MgrsParts{reference.substr(0, zoneLetters), square(reference, zoneLetters),
                         reference.substr(figures, half), reference.substr(figures + half, half)};
    });
}

}  // namespace crosstick::geodesy
