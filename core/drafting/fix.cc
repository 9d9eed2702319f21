#include "core/drafting/fix.h"

#include <algorithm>
#include <cmath>

#include "core/drafting/faults.h"
#include "core/geodesy/plane_angles.h"

namespace crosstick::drafting {
namespace {

using geodesy::PlanePoint;

constexpr Degrees kParallel{1};

double east(const Sight& sight) {
    return std::sin(radians(sight.gridAzimuth).value());
}
double north(const Sight& sight) {
    return std::cos(radians(sight.gridAzimuth).value());
}

Degrees cutOf(const Sight& a, const Sight& b) {
    const double turn = east(a) * north(b) - north(a) * east(b);
    return degrees(Radians(std::asin(std::min(1.0, std::abs(turn)))));
}

/// Where two lines of sight meet, which is to lie ahead on both.
Result<PlanePoint> meeting(const std::vector<Sight>& sights, std::size_t first, std::size_t second) {
    const Sight& a = sights[first];
    const Sight& b = sights[second];
    const std::vector<Argument> which{{"first", static_cast<std::int64_t>(first + 1)},
                                      {"second", static_cast<std::int64_t>(second + 1)}};
    if (cutOf(a, b) < kParallel) {
        return fail(kSightsAlong, which);
    }
    const auto met = crossing(a.from, polarPlace(a.from, a.gridAzimuth, Metres(1)), b.from,
                              polarPlace(b.from, b.gridAzimuth, Metres(1)));
    if (!met) {
        return fail(kSightsAlong, which);
    }
    if (met->ofFirst < 0 || met->ofSecond < 0) {
        return fail(kSightsPart, which);
    }
    return polarPlace(a.from, a.gridAzimuth, Metres(met->ofFirst));
}

/// The place from which the sum of the squared distances to the lines is least: two normal equations.
PlanePoint leastSquares(const std::vector<Sight>& sights) {
    const PlanePoint origin = sights.front().from;
    double ee = 0;
    double en = 0;
    double nn = 0;
    double e = 0;
    double n = 0;
    for (const Sight& sight : sights) {
        const double acrossEast = north(sight);
        const double acrossNorth = -east(sight);
        const double off = acrossEast * (sight.from.easting - origin.easting).value() +
                           acrossNorth * (sight.from.northing - origin.northing).value();
        ee += acrossEast * acrossEast;
        en += acrossEast * acrossNorth;
        nn += acrossNorth * acrossNorth;
        e += acrossEast * off;
        n += acrossNorth * off;
    }
    const double size = ee * nn - en * en;
    return {origin.easting + Metres((nn * e - en * n) / size), origin.northing + Metres((ee * n - en * e) / size)};
}

}  // namespace

PlanePoint polarPlace(PlanePoint from, Degrees gridAzimuth, Metres mapDistance) {
    const double angle = radians(gridAzimuth).value();
    return {from.easting + mapDistance * std::sin(angle), from.northing + mapDistance * std::cos(angle)};
}

Result<Fix> fixBy(const std::vector<Sight>& sights) {
    if (sights.size() < 2) {
        return fail(kTooFewSights);
    }
    Fix fix;
    Line corners;
    for (std::size_t a = 0; a < sights.size(); ++a) {
        for (std::size_t b = a + 1; b < sights.size(); ++b) {
            const auto met = meeting(sights, a, b);
            if (!met) {
                return tl::unexpected(met.error());
            }
            corners.push_back(*met);
            fix.cut = std::max(fix.cut, cutOf(sights[a], sights[b]));
        }
    }
    if (corners.size() == 1) {
        fix.at = corners.front();
        return fix;
    }
    fix.at = leastSquares(sights);
    for (const PlanePoint& a : corners) {
        for (const PlanePoint& b : corners) {
            fix.longestSide = std::max(fix.longestSide, geodesy::planeDistance(a, b));
        }
    }
    fix.triangle = std::move(corners);
    return fix;
}

}  // namespace crosstick::drafting
