#include "core/movement/work_grid.h"

#include <cmath>

#include <fmt/format.h>

namespace crosstick::movement {

Result<WorkGrid> WorkGrid::of(const plan::Plan& plan) {
    const std::string crs = plan.sheets().empty() ? plan.planeCrs() : plan.sheets().front()->crs;
    auto plane = geodesy::Plane::of(crs);
    if (!plane) {
        return tl::unexpected(plane.error());
    }
    auto link = geodesy::PlaneLink::between(plan.planeCrs(), crs);
    if (!link) {
        return tl::unexpected(link.error());
    }
    return WorkGrid(std::move(*plane), std::move(*link));
}

std::string WorkGrid::gridText(geodesy::PlanePoint onGrid) const {
    const geodesy::CrsFacts& facts = plane_.facts();
    if (facts.onWgs84 && (facts.utm || facts.authority == "EPSG:5041" || facts.authority == "EPSG:5042")) {
        const auto grid = plane_.grid(onGrid);
        const auto parts = grid ? geodesy::mgrsParts(*grid, geodesy::Digits::Ten) : tl::unexpected(grid.error());
        if (parts) {
            return parts->square + ' ' + parts->easting + ' ' + parts->northing;
        }
    }
    const auto tens = [](Metres m) { return static_cast<std::int64_t>(std::floor(m.value() / 10)); };
    return fmt::format("{:05} {:05}", tens(onGrid.easting), tens(onGrid.northing));
}

}  // namespace crosstick::movement
