#include "core/movement/drift.h"

#include <cmath>
#include <limits>

#include "core/units/number_text.h"

namespace crosstick::movement {
namespace {

/// Square metres, to east and north.
struct Covariance {
    double east = 0, north = 0, both = 0;
    void add(double eastward, double northward) {
        east += eastward * eastward;
        north += northward * northward;
        both += eastward * northward;
    }
};

DriftEllipse ellipseOf(const Covariance& c) {
    const double middle = (c.east + c.north) / 2;
    const double swing = std::hypot((c.north - c.east) / 2, c.both);
    const double azimuth = std::atan2(2 * c.both, c.north - c.east) / 2;
    const Degrees turned = fullCircle(degrees(Radians(azimuth)));
    return {Metres(std::sqrt(middle + swing)), Metres(std::sqrt(std::max(0.0, middle - swing))),
            turned >= Degrees(180) ? turned - Degrees(180) : turned};
}

double acrossShare(NavigatorErrors errors) {
    return std::sin(radians(errors.compass).value());
}

/// What the plan says of the point that a leg ends at; nothing for a text that is no number over 0.
std::optional<Metres> ownFoundWithin(const plan::Plan& plan, const plan::ItemId& point) {
    const auto measure = plan.measure(point);
    if (!measure) {
        return std::nullopt;
    }
    const auto field = measure->fields.find("found_within");
    const auto metres = field == measure->fields.end() ? std::nullopt : parseNumber(field->second);
    return metres && *metres > 0 ? std::optional(Metres(*metres)) : std::nullopt;
}

}  // namespace

DriftEllipse driftOf(const std::vector<Piece>& pieces, NavigatorErrors errors) {
    Covariance covariance;
    double east = 0;
    double north = 0;
    for (const Piece& piece : pieces) {
        if (!isFinite(piece.gridAzimuth)) {
            continue;  // no length
        }
        const double azimuth = radians(piece.gridAzimuth).value();
        const double length = piece.groundDistance.value();
        const double across = length * acrossShare(errors);
        covariance.add(across * std::cos(azimuth), -across * std::sin(azimuth));
        east += length * std::sin(azimuth);
        north += length * std::cos(azimuth);
    }
    covariance.add(errors.pace * east, errors.pace * north);
    return ellipseOf(covariance);
}

Metres longestSafeLeg(NavigatorErrors errors, Metres foundWithin) {
    const double share = std::max(errors.pace, acrossShare(errors));
    return share > 0 ? foundWithin / share : Metres(std::numeric_limits<double>::infinity());
}

RouteDrift routeDrift(const plan::Plan& plan, const RouteFigures& figures, std::optional<NavigatorErrors> asked,
                      Metres foundWithin) {
    const NavigatorErrors errors = asked ? *asked : plan.heading().navigator.value_or(NavigatorErrors{});
    RouteDrift drift{errors, foundWithin, longestSafeLeg(errors, foundWithin), {}};
    for (const Leg& leg : figures.legs) {
        const auto own = ownFoundWithin(plan, leg.to);
        drift.legs.push_back(
            {leg.number, driftOf(leg.pieces, errors), own.value_or(foundWithin), own ? FoundBy::Plan : FoundBy::Asked});
    }
    return drift;
}

}  // namespace crosstick::movement
