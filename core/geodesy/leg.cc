#include "core/geodesy/leg.h"

#include "core/geodesy/geodesic.h"
#include "core/geodesy/plane_angles.h"

namespace crosstick::geodesy {
namespace {

/// The same place in another zone, to the last digit where it is that zone's already.
Result<GridPoint> inZone(const GridPoint& point, Zone zone) {
    if (point.zone == zone) {
        return point;
    }
    return geographic(point).and_then([&](GeoPoint place) { return gridPoint(place, zone); });
}

PlanePoint halfWay(PlanePoint a, PlanePoint b) {
    return {a.easting + (b.easting - a.easting) / 2, a.northing + (b.northing - a.northing) / 2};
}

Bearing bearing(Degrees azimuth) {
    return {azimuth, backAzimuth(azimuth)};
}

}  // namespace

Result<Norths> norths(const GridPoint& point, const MagneticModel& model, CalendarDate date, Metres height) {
    const auto place = geographic(point);
    const auto grid = factors(point);
    if (!place || !grid) {
        return tl::unexpected(place ? grid.error() : place.error());
    }
    Norths found{*grid, {}, {}, {}, date, height};
    if (const auto declination = model.at(*place, date, height)) {
        found.declination = *declination;
        found.gmAngle = gmAngle(declination->declination, grid->convergence);
    } else {
        found.noDeclination = declination.error();
    }
    return found;
}

Result<Leg> legBetween(const GridPoint& from, const GridPoint& to, const MagneticModel& model, CalendarDate date) {
    const auto end = inZone(to, from.zone);
    if (!end) {
        return tl::unexpected(end.error());
    }
    const auto middle = norths({from.zone, halfWay(from.at, end->at)}, model, date, Metres(0));
    const auto startPlace = geographic(from);
    const auto endPlace = geographic(*end);
    if (!middle || !startPlace || !endPlace) {
        return tl::unexpected(!middle ? middle.error() : !startPlace ? startPlace.error() : endPlace.error());
    }
    Leg leg{from, *end, {}, {}, {}, planeDistance(from.at, end->at), {}, *middle};
    if (from.at == end->at) {
        return leg;
    }
    const Geodesic line = geodesic(*startPlace, *endPlace);
    leg.groundDistance = line.distance;
    leg.grid = bearing(planeAzimuth(from.at, end->at));
    leg.trueNorth = Bearing{line.azimuthAtStart, backAzimuth(line.azimuthAtEnd)};
    if (middle->gmAngle) {
        leg.magnetic = bearing(magneticAzimuth(leg.grid->forward, *middle->gmAngle));
    }
    return leg;
}

}  // namespace crosstick::geodesy
