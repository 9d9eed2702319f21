#include "core/film/new_plan.h"

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

}  // namespace crosstick::film
