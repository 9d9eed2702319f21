#include "core/film/new_plan.h"

#include <cmath>

#include "core/film/registration.h"
#include "core/geodesy/crs.h"

namespace crosstick::film {
namespace {

Result<geodesy::Zone> zoneOf(const plan::Sheet& sheet) {
    auto plane = geodesy::Plane::of(sheet.crs);
    if (!plane) {
        return tl::unexpected(plane.error());
    }
    const plan::Placement& p = sheet.placement;
    const double x = sheet.columns / 2.0;
    const double y = sheet.rows / 2.0;
    return plane
        ->grid({p.corner.easting + Metres(p.eastPerColumn * x + p.eastPerRow * y),
                p.corner.northing + Metres(p.northPerColumn * x + p.northPerRow * y)})
        .map([](const geodesy::GridPoint& point) { return point.zone; });
}

}  // namespace

Result<plan::Plan> planOnSheet(plan::Sheet sheet, plan::Heading heading, const Uuid& id) {
    const auto zone = zoneOf(sheet);
    if (!zone) {
        return tl::unexpected(zone.error());
    }
    heading.plane = *zone;
    plan::PlanBuilder builder{plan::Plan{}};
    builder.id(id).heading(std::move(heading)).put(std::move(sheet));
    plan::Plan plan = std::move(builder).build();
    auto registration = proposeRegistration(plan);
    if (!registration) {
        return tl::unexpected(registration.error());
    }
    plan::PlanBuilder placed(plan);
    placed.registration(std::move(*registration));
    return std::move(placed).build();
}

plan::Plan planOnGrid(const geodesy::GridPoint& middle, Scale scale, plan::Heading heading, const Uuid& id) {
    // What is left of a lying A4 inside its edge, with the block beside the window.
    constexpr PaperMm kWide(200);
    constexpr PaperMm kHigh(140);
    heading.plane = middle.zone;
    const double interval = gridInterval(scale).value();
    const auto tenth = [&](Metres at) { return Metres(std::round(at.value() / (interval / 10)) * (interval / 10)); };
    plan::Registration window;
    window.southWest = {tenth(middle.at.easting - onGround(kWide, scale) / 2),
                        tenth(middle.at.northing - onGround(kHigh, scale) / 2)};
    window.northEast = {tenth(window.southWest.easting + onGround(kWide, scale)),
                        tenth(window.southWest.northing + onGround(kHigh, scale))};
    const auto up = [&](Metres at) { return Metres(std::ceil(at.value() / interval + 0.05) * interval); };
    const auto down = [&](Metres at) { return Metres(std::floor(at.value() / interval - 0.05) * interval); };
    for (const Metres easting : {up(window.southWest.easting), down(window.northEast.easting)}) {
        for (const Metres northing : {up(window.southWest.northing), down(window.northEast.northing)}) {
            window.ticks.push_back({easting, northing});
        }
    }
    plan::PlanBuilder builder{plan::Plan{}};
    builder.id(id).heading(std::move(heading)).registration(std::move(window));
    return std::move(builder).build();
}

}  // namespace crosstick::film
